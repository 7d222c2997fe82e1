import { useState } from 'react';
import type { HeatRun, TicketDocument } from '../../../../shared-types/plan.ts';
import type { SearchAnswer, SearchPoint } from '../../../../shared-types/profile-search.ts';
import { rounded } from '../../../../shared-types/words/measures.ts';
import { searchWords } from '../../../../shared-types/words/profile-search.ts';
import { searchSectionWords as words } from '../../../../shared-types/words/window/search.ts';
import { setSegments } from '../../../editing/heat-runs.ts';
import { useApp, useDocument } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { ProfileChart } from '../ProfileChart.tsx';
import { Comparison } from './Comparison.tsx';
import { FrontChart } from './FrontChart.tsx';

type FoundProps = { run: HeatRun; found: { answer: SearchAnswer; document: TicketDocument } };

const HEAT_KEYS = ['station', 'sites', 'heatRuns', 'tags'] as const;

/** What a search found: a chart to pick from, and the picked profile beside the present one. */
export function SearchFound({ run, found: { answer, document } }: FoundProps) {
  const { measures: m } = useUnits();
  const now = useDocument();
  const { best, nearest, front, present, leftOut, riseLimitKPerS } = answer;
  const points = pointsToPick(answer);
  const [chosen, setChosen] = useState<SearchPoint | null>(null);
  const picked = points.find((point) => point === chosen) ?? best ?? points.at(-1) ?? null;
  const isTaken = picked !== null && JSON.stringify(picked.segments) === JSON.stringify(run.segments);
  const isStale =
    !isTaken && (now.board !== document.board || HEAT_KEYS.some((key) => now.plan[key] !== document.plan[key]));
  return (
    <div className="search-found">
      {isStale && <p role="status">{words.stale}</p>}
      {answer.banded && <p className="soft">{searchWords.banded}</p>}
      <Misses title={words.missesPresent} point={present} />
      {picked && (
        <>
          <FrontChart present={present} points={points} best={best} picked={picked} onPick={setChosen} />
          <Comparison present={present} picked={picked} title={picked === best ? words.best : words.picked} />
          <ProfileChart run={{ ...run, id: 'picked', segments: picked.segments }} />
          <Take run={run} picked={picked} isTaken={isTaken} />
          {picked.atBounds.length > 0 && <p className="soft">{searchWords.atBounds(picked.atBounds)}</p>}
        </>
      )}
      {!best && front.length > 0 && <p role="status">{searchWords.notFine}</p>}
      {nearest && (
        <>
          <Misses title={searchWords.none} point={nearest} />
          <Comparison present={present} picked={nearest} title={words.nearest} />
          {nearest.atBounds.length > 0 && <p className="soft">{searchWords.atBounds(nearest.atBounds)}</p>}
        </>
      )}
      <p className="soft">{searchWords.riseLimit(riseLimitKPerS, m)}</p>
      {leftOut.length > 0 && <p className="soft">{searchWords.leftOut(leftOut)}</p>}
      <p className="soft">{words.tried(rounded(answer.tried))}</p>
    </div>
  );
}

/** The front with the confirmed best in the place of the coarse one that it came from. */
export function pointsToPick({ best, front }: Pick<SearchAnswer, 'best' | 'front'>): SearchPoint[] {
  if (!best) return [...front];
  const others = front.filter((point) => point.toPeakS < best.toPeakS && (point.marginK ?? 0) < (best.marginK ?? 0));
  return [...others, best];
}

function Misses({ title, point }: { title: string; point: SearchPoint }) {
  const { measures } = useUnits();
  if (point.misses.length === 0) return null;
  return (
    <>
      <p>{title}</p>
      <ul className="search-misses">
        {point.misses.map((miss) => (
          <li key={`${miss.code} ${miss.refdes}`}>{searchWords.miss(miss, measures)}</li>
        ))}
      </ul>
    </>
  );
}

function Take({ run, picked, isTaken }: { run: HeatRun; picked: SearchPoint; isTaken: boolean }) {
  const app = useApp();
  const take = () => app.bench.apply(words.taken, (document) => setSegments(document, run.id, picked.segments));
  return (
    <div className="station-acts">
      <Button small look="primary" disabled={isTaken} onPress={take}>
        {words.take}
      </Button>
      <span className="soft">
        {isTaken ? words.isPresent : picked.grid === 'fine' ? words.fineNote : words.coarseNote}
      </span>
    </div>
  );
}
