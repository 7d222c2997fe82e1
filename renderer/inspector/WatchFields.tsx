import type { TagOf } from '../../shared-types/tags.ts';
import { bandWords } from '../../shared-types/words/uncertainty.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { planWords } from '../../shared-types/words/window/plan.ts';
import { setTagFields } from '../editing/tags.ts';
import { moveWatchPoint } from '../editing/watch-points.ts';
import { useApp, useAppState, useDocument, useTypedEdit } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { Section } from '../widgets/Section.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';
import { TagNote } from './TagDetail.tsx';

/** A thermocouple: its name and place, and what it is expected to read. */
export function WatchFields({ tag }: { tag: TagOf<'watchPoint'> }) {
  const app = useApp();
  const name = useTypedEdit(
    `${editLabels.watchFields} ${tag.id}`,
    (value) => (document) => setTagFields(document, tag.id, 'watchPoint', { name: value }),
  );
  const move = (at: { x: number; y: number }) =>
    app.bench.apply(editLabels.watchFields, (document) => moveWatchPoint(document, tag.id, at, tag.refdes));
  return (
    <Section title={words.watch}>
      <Readings tagId={tag.id} />
      <TextEntry label={planWords.watchName} value={tag.name} longest={20} mono {...name} />
      <LengthEntry label={words.x} value={tag.x} onChange={(x) => x !== null && move({ x, y: tag.y })} />
      <LengthEntry label={words.y} value={tag.y} onChange={(y) => y !== null && move({ x: tag.x, y })} />
      <TagNote tag={tag} />
    </Section>
  );
}

function Readings({ tagId }: { tagId: string }) {
  const { measures } = useUnits();
  const { heatRuns } = useDocument().plan;
  const runs = useAppState((state) => state.evaluation.assessment?.evaluation.runs) ?? [];
  const readings = runs.flatMap((run) => {
    const reading = run.watch.find((one) => one.tagId === tagId);
    return reading ? [{ run, reading }] : [];
  });
  return (
    <dl className="lines">
      {readings.map(({ run, reading }) => (
        <div key={run.runId} style={{ display: 'contents' }}>
          <dt>{words.expectedIn(heatRuns.find((one) => one.id === run.runId)?.name ?? run.runId)}</dt>
          <dd className="figure">
            {measures.temperature(reading.peakC)}{' '}
            {reading.peakBandK !== undefined && bandWords.plusMinus(measures.difference(reading.peakBandK))}{' '}
            <span className="soft">{measures.seconds(reading.peakAtS)}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
