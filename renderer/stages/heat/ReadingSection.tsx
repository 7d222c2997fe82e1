import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Section } from '../../widgets/Section.tsx';

/** What each thermocouple is expected to read at its peak, in the shown run or in each. */
export function ReadingSection() {
  const { measures } = useUnits();
  const runs = useAppState((state) => state.evaluation.assessment?.evaluation.runs);
  const shownRunId = useAppState((state) => state.view.shownRunId);
  const names = useAppState((state) => state.ticket?.document.plan.heatRuns);
  const shown = (runs ?? []).filter((run) => run.watch.length > 0 && (!shownRunId || run.runId === shownRunId));
  if (shown.length === 0) return null;
  return (
    <Section title={words.readings}>
      {shown.map((run) => (
        <div key={run.runId} className="readings">
          <h4 className="soft">{names?.find((one) => one.id === run.runId)?.name}</h4>
          <dl className="lines">
            {run.watch.map((reading) => (
              <div key={reading.tagId} style={{ display: 'contents' }}>
                <dt className="mono">{reading.name}</dt>
                <dd className="figure">
                  {measures.temperature(reading.peakC)}{' '}
                  <span className="soft">
                    {words.readingHead.at} {measures.seconds(reading.peakAtS)}
                  </span>
                </dd>
              </div>
            ))}
          </dl>
        </div>
      ))}
    </Section>
  );
}
