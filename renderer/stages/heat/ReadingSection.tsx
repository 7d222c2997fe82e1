import { Fragment } from 'react';
import type { RunNumbers, WatchReading } from '../../../shared-types/evaluation.ts';
import { bandWords } from '../../../shared-types/words/uncertainty.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { useAppState, useDocument } from '../../state/use-app.ts';
import { type Units, useUnits } from '../../state/use-units.ts';
import { Section } from '../../widgets/Section.tsx';

/** What the bench should show: thermocouple peaks of each run, and the numbers to act on. */
export function ReadingSection() {
  const assessment = useAppState((state) => state.evaluation.assessment);
  if (!assessment) return null;
  return (
    <>
      <ActSection numbers={assessment.runNumbers} />
      <WatchTable />
    </>
  );
}

function WatchTable() {
  const { measures } = useUnits();
  const { heatRuns } = useDocument().plan;
  const runs = useAppState((state) => state.evaluation.assessment?.evaluation.runs) ?? [];
  const shown = runs.filter((run) => run.watch.length > 0);
  if (shown.length === 0) return null;
  const names = shown[0].watch.map((reading) => reading.name);
  return (
    <Section title={words.readings}>
      <table className="target-table">
        <thead>
          <tr>
            <th>{words.readingHead.name}</th>
            {shown.map((run) => (
              <th key={run.runId}>{heatRuns.find((one) => one.id === run.runId)?.name ?? run.runId}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {names.map((name, index) => (
            <tr key={name}>
              <th scope="row" className="mono">
                {name}
              </th>
              {shown.map((run) => (
                <td key={run.runId}>{peakWords(run.watch[index], measures)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
}

/** A reading's peak with its band; nothing where the run has none. */
function peakWords(reading: WatchReading | undefined, m: Units['measures']): string {
  if (!reading) return '';
  const band = reading.peakBandK === undefined ? '' : ` ${bandWords.plusMinus(m.difference(reading.peakBandK))}`;
  return `${m.degrees(reading.peakC)}${band}`;
}

/** When to start the gas, when it should be molten, when to stop: for the shown run, or for all. */
function ActSection({ numbers }: { numbers: readonly RunNumbers[] }) {
  const { measures } = useUnits();
  const { heatRuns } = useDocument().plan;
  const shownRunId = useAppState((state) => state.view.shownRunId);
  const shown = numbers.filter((one) => !shownRunId || one.runId === shownRunId);
  const said = shown.map((one) => ({ one, lines: actLines(one, measures) })).filter(({ lines }) => lines.length > 0);
  if (said.length === 0) return null;
  return (
    <Section title={words.act.title}>
      <dl className="act-list">
        {said.map(({ one, lines }) => (
          <Fragment key={`${one.runId} ${one.siteId}`}>
            <dt>
              <span className="mono">{one.refdes}</span> {heatRuns.find((run) => run.id === one.runId)?.name}
            </dt>
            {lines.map(([label, figure]) => (
              <dd key={label}>
                <span className="soft">{label}</span>
                <span className="figure">{figure}</span>
              </dd>
            ))}
          </Fragment>
        ))}
      </dl>
    </Section>
  );
}

function actLines(one: RunNumbers, m: Units['measures']): [string, string][] {
  const act = words.act;
  const lines: [string, string][] = [];
  const within = (band: number | undefined, words: (value: number) => string) =>
    band === undefined ? '' : ` ${bandWords.plusMinus(words(band))}`;
  if (one.startGasAtC !== undefined)
    lines.push([act.startGas, m.temperature(one.startGasAtC) + within(one.startGasBandK, m.difference)]);
  if (one.moltenAtS !== undefined)
    lines.push([act.molten, m.seconds(one.moltenAtS) + within(one.moltenBandS, m.seconds)]);
  if (one.notMoltenByS !== undefined) lines.push([act.stop, m.seconds(one.notMoltenByS)]);
  if (one.abortAtC !== undefined)
    lines.push([
      act.abort(one.abortOn ?? 'site', one.abortFor ?? ''),
      m.temperature(one.abortAtC) + within(one.abortBandK, m.difference),
    ]);
  if (one.secondsToSpare !== undefined && one.firstOver)
    lines.push([
      act.spare(one.firstOver, one.secondsToSpare < 0),
      m.seconds(Math.abs(one.secondsToSpare)) + within(one.spareBandS, m.seconds),
    ]);
  return lines;
}
