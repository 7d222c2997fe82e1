import type { PartExposure } from '../../shared-types/evaluation.ts';
import { ACTION_NAMES, actionLimit, actionReason } from '../../shared-types/words/planning.ts';
import { bandWords } from '../../shared-types/words/uncertainty.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { asSentence } from '../../shared-types/words/window/sentence.ts';
import { type PartRow, partRows } from '../state/part-rows.ts';
import { useAppState, useDocument } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { shownState } from '../table/shown-state.ts';
import { Section } from '../widgets/Section.tsx';
import { StateMark } from '../widgets/StateMark.tsx';
import { type BarFigures, barScale, barsOf, marginWords, shareTip, shareWords } from './exposure-words.ts';

/** What the part gets: verdict first, then the peaks against their limits, then where the heat comes from. */
export function ExposureSection({ refdes }: { refdes: string }) {
  const document = useDocument();
  const { measures } = useUnits();
  const assessment = useAppState((state) => state.evaluation.assessment);
  const row = partRows(document, assessment).find((one) => one.part.refdes === refdes);
  if (!row) return null;
  const { exposure, notEvaluated } = row;
  if (!exposure)
    return (
      <Section title={words.exposure}>
        <p className="empty">{notEvaluated ? words.notEvaluated[notEvaluated] : words.noFigures}</p>
      </Section>
    );
  const limit = row.action && actionLimit(row.action, measures);
  return (
    <Section title={words.exposure}>
      <Verdict row={row} exposure={exposure} />
      <Bars exposure={exposure} />
      {limit && <p className="limit-source">{asSentence(limit)}</p>}
      <Facts exposure={exposure} />
    </Section>
  );
}

function Verdict({ row, exposure }: { row: PartRow; exposure: PartExposure }) {
  const { measures } = useUnits();
  const state = shownState(row);
  const band = exposure.bandK === null ? words.band : words.bandOf(measures.difference(exposure.bandK));
  return (
    <div className="verdict-line">
      {state && <StateMark state={state} />}
      <div>
        {row.action && <strong>{ACTION_NAMES[row.action.action]}. </strong>}
        {marginWords(exposure, measures)}, <span className="soft">{band}</span>
        {row.action && <span className="why">{asSentence(actionReason(row.action, measures))}</span>}
      </div>
    </div>
  );
}

function Bars({ exposure }: { exposure: PartExposure }) {
  const bars = barsOf(exposure);
  const scale = barScale(bars);
  return (
    <div className="bars">
      {bars.map((bar) => (
        <Bar key={bar.judged} bar={bar} scale={scale} />
      ))}
    </div>
  );
}

function Bar({ bar, scale }: { bar: BarFigures; scale: { fromC: number; toC: number } }) {
  const { measures } = useUnits();
  const place = (celsius: number) =>
    `${Math.max(0, Math.min(100, ((celsius - scale.fromC) / (scale.toC - scale.fromC)) * 100))}%`;
  const { peakC, limitC, shieldedC } = bar;
  const within = limitC === null ? peakC : Math.min(peakC, limitC);
  return (
    <>
      <span className="label">{words[bar.judged]}</span>
      <span className="bar" aria-hidden="true">
        <span className="track" />
        <span className="peak" style={{ width: place(within) }} />
        {limitC !== null && peakC > limitC && (
          <span className="beyond" style={{ left: place(limitC), right: `calc(100% - ${place(peakC)})` }} />
        )}
        {limitC !== null && <span className="limit" style={{ left: place(limitC) }} />}
        <span className="shielded" style={{ left: place(shieldedC) }} />
      </span>
      <span className="figure">
        {measures.degrees(peakC)}
        <span className="soft">{limitC === null ? '' : ` / ${measures.degrees(limitC)}`}</span>
      </span>
    </>
  );
}

function Facts({ exposure }: { exposure: PartExposure }) {
  const { measures } = useUnits();
  const run = useDocument().plan.heatRuns.find((one) => one.id === exposure.worstRunId);
  const reflow = `${words.reflows[exposure.reflow]}${exposure.reflows > 0 ? `, ${words.reflowRuns(exposure.reflows)}` : ''}`;
  const shielded = measures.temperature(exposure.ifShielded[`${exposure.governedBy}MaxC`]);
  return (
    <div className="exposure-facts">
      <span title={shareTip(exposure)}>{shareWords(exposure)}</span>
      <span>{exposure.clearanceMm > 0 ? words.clearance(measures.length(exposure.clearanceMm)) : words.inside}</span>
      <span>{reflow}</span>
      <span>{words.across(measures.difference(exposure.acrossK))}</span>
      <span>{words.rise(measures.rate(exposure.riseKPerS))}</span>
      <span>
        <span className="shielded-key" aria-hidden="true">
          ○
        </span>{' '}
        {words.ifShielded} {shielded}
      </span>
      {run && <span>{words.worstIn(run.name)}</span>}
      {exposure.bands && <span>{bandWords.leastSure(exposure.bands.mostly)}</span>}
    </div>
  );
}
