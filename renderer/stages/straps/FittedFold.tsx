import { RotateCcw } from 'lucide-react';
import { markingFits, mostlyUnmarked } from '../../../shared-types/rules/markings.ts';
import { type PositionNow, positionsNow } from '../../../shared-types/rules/straps/positions.ts';
import { STRAP_EVIDENCE, type StrapTick } from '../../../shared-types/straps.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { tickPosition } from '../../editing/straps.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** What stands in each position, as found or as left: ticked, it wins over the drawing and the code is read again. */
export function FittedFold() {
  const { board, plan } = useDocument();
  const { ticked } = plan.straps;
  const all = board.straps.flatMap((group) => positionsNow(board, ticked, group));
  const positions = all.filter((one, index) => all.findIndex((other) => other.refdes === one.refdes) === index);
  const done = positions.filter((position) => position.ticked).length;
  return (
    <Fold title={words.fitted} summary={words.fittedCount(done, positions.length)}>
      <ul className="strap-ticks">
        {positions.map((position) => (
          <TickRow key={position.refdes} position={position} />
        ))}
      </ul>
    </Fold>
  );
}

const EVIDENCE = STRAP_EVIDENCE.map((id) => ({ id, label: words.evidence[id] }));

function TickRow({ position }: { position: PositionNow }) {
  const app = useApp();
  const { refdes, fitted, value, ticked, part } = position;
  const kept = useDocument().plan.straps.ticked.find((one) => one.refdes === refdes);
  const put = (fields: Partial<StrapTick>) => {
    const start: StrapTick = { refdes, fitted, value, evidence: 'not-checked', marking: '' };
    app.bench.apply(strapEdits.tick, (before) => tickPosition(before, refdes, { ...start, ...kept, ...fields }));
  };
  const unmarked = part !== null && mostlyUnmarked(part.package.lengthMm, part.package.widthMm);
  return (
    <li data-ticked={ticked ? '' : undefined}>
      <div className="tick-line">
        <Check on={fitted} onChange={(on) => put({ fitted: on })}>
          <span className="name">{refdes}</span>
        </Check>
        <TextEntry
          bare
          mono
          label={words.valueOf(refdes)}
          value={value}
          placeholder={words.value}
          longest={50}
          onDone={(next) => put({ value: next })}
        />
        {ticked && (
          <IconButton
            icon={RotateCcw}
            small
            label={words.untick(refdes)}
            onPress={() => app.bench.apply(strapEdits.tick, (before) => tickPosition(before, refdes, null))}
          />
        )}
      </div>
      {kept?.fitted && (
        <div className="tick-line">
          <Choice
            bare
            label={words.evidenceOf(refdes)}
            value={kept.evidence}
            items={EVIDENCE}
            onChange={(evidence) => put({ evidence })}
          />
          {kept.evidence === 'marking' && (
            <TextEntry
              bare
              mono
              label={words.markingOf(refdes)}
              value={kept.marking}
              placeholder={words.marking}
              longest={20}
              onDone={(marking) => put({ marking })}
            />
          )}
        </div>
      )}
      {kept?.fitted && <MarkingNote tick={kept} ohms={position.ohms} unmarked={unmarked} />}
    </li>
  );
}

function MarkingNote({ tick, ohms, unmarked }: { tick: StrapTick; ohms: number | null; unmarked: boolean }) {
  if (unmarked && tick.evidence === 'not-checked') return <p className="soft">{words.unmarked}</p>;
  if (tick.evidence !== 'marking' || tick.marking === '' || ohms === null) return null;
  const fit = markingFits(tick.marking, ohms);
  return fit === 'fits' ? null : <p className="soft">{`${tick.marking} ${words.markingFits[fit]}.`}</p>;
}
