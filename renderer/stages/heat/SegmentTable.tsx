import { Button as BareButton, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { HeatRun } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { startingSegments } from '../../../shared-types/rules/new-plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords } from '../../../shared-types/words/window/heat.ts';
import * as editing from '../../editing/segments.ts';
import type { Edit } from '../../state/canvas-model.ts';
import { useApp, useDocument, useTypedEdit } from '../../state/use-app.ts';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { TemperatureEntry } from '../../widgets/UnitEntry.tsx';
import { FlowCell } from './FlowCell.tsx';

const words = heatWords.segments;

/** Columns of figures; their widths are given, the name takes the rest. */
const COLUMNS = ['seconds', 'below from', 'below to', 'gas from', 'gas to', 'flow'] as const;

/** The segments of a run, each figure editable where it stands. */
export function SegmentTable({ run }: { run: HeatRun }) {
  return (
    <table className="segment-table" aria-label={words.title}>
      <colgroup>
        <col className="of-number" />
        <col />
        {COLUMNS.map((name) => (
          <col key={name} className="of-figure" />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th colSpan={2} className="start">
            {words.name}
          </th>
          <th>{words.seconds}</th>
          <th colSpan={2}>{words.below}</th>
          <th colSpan={2}>{words.gas}</th>
          <th>{words.flow}</th>
        </tr>
      </thead>
      <tbody>
        {run.segments.map((segment, index) => (
          // A segment is nothing but its place in the run.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
          <SegmentRow key={index} run={run} segment={segment} index={index} />
        ))}
      </tbody>
    </table>
  );
}

type RowProps = { run: HeatRun; segment: Segment; index: number };

function SegmentRow({ run, segment, index }: RowProps) {
  const app = useApp();
  const set = (fields: Partial<Segment>) =>
    app.bench.apply(editLabels.segment, (document) => editing.setSegment(document, run.id, index, fields));
  const name = useTypedEdit(
    `${editLabels.segment} ${run.id} ${index}`,
    (value) => (document) => editing.setSegment(document, run.id, index, { name: value }),
  );
  const label = (what: keyof typeof words.what) => words.label(segment.name, words.what[what]);
  return (
    <tr>
      <td>
        <SegmentMenu run={run} segment={segment} index={index} />
      </td>
      <td>
        <TextEntry bare label={label('name')} value={segment.name} longest={100} needed {...name} />
      </td>
      <td>
        <NumberEntry
          bare
          label={label('seconds')}
          value={segment.seconds}
          least={1}
          most={7200}
          decimals={0}
          onChange={(value) => value && set({ seconds: value })}
        />
      </td>
      <Ramp
        ramp={segment.preheater}
        labels={[label('belowFrom'), label('belowTo')]}
        onChange={(preheater) => set({ preheater })}
      />
      <GasCells
        segment={segment}
        labels={[label('gasFrom'), label('gasTo'), label('flow')]}
        set={set}
        onOn={() => app.bench.apply(editLabels.segment, gasOn(run, index))}
      />
    </tr>
  );
}

/** Gas as the run's other segments have it; the first of a run begins with the figures of the starting profile. */
const gasOn =
  (run: HeatRun, index: number): Edit =>
  (document) => {
    const siteId = run.siteIds[0] ?? null;
    const model = [...run.segments, ...startingSegments('removal', siteId)].find((segment) => segment.gas);
    if (!model?.gas) return document;
    return editing.setGas(document, run.id, index, { celsius: model.gas.endC, flowLMin: model.flowLMin, siteId });
  };

type RampProps = {
  ramp: Segment['preheater'];
  labels: [string, string];
  onChange: (ramp: Segment['preheater']) => void;
};

function Ramp({ ramp, labels, onChange }: RampProps) {
  return (
    <>
      <td>
        <TemperatureEntry
          bare
          label={labels[0]}
          value={ramp.startC}
          least={-40}
          most={1200}
          onChange={(value) => value !== null && onChange({ ...ramp, startC: value })}
        />
      </td>
      <td>
        <TemperatureEntry
          bare
          label={labels[1]}
          value={ramp.endC}
          least={-40}
          most={1200}
          onChange={(value) => value !== null && onChange({ ...ramp, endC: value })}
        />
      </td>
    </>
  );
}

type GasProps = {
  segment: Segment;
  labels: [string, string, string];
  set: (fields: Partial<Segment>) => void;
  onOn: () => void;
};

function GasCells({ segment, labels, set, onOn }: GasProps) {
  if (!segment.gas)
    return (
      <td colSpan={3}>
        <BareButton className="gas-off" aria-label={`${words.gasOn}: ${segment.name}`} onPress={onOn}>
          {words.off}
        </BareButton>
      </td>
    );
  return (
    <>
      <Ramp ramp={segment.gas} labels={[labels[0], labels[1]]} onChange={(gas) => set({ gas })} />
      <td>
        <FlowCell label={labels[2]} flowLMin={segment.flowLMin} set={set} />
      </td>
    </>
  );
}

/** The number of a segment opens what can be done with it. */
function SegmentMenu({ run, segment, index }: RowProps) {
  const app = useApp();
  const { sites } = useDocument().plan;
  const edit = (label: string, change: Edit) => app.bench.apply(label, change);
  const served = sites.filter((site) => run.siteIds.includes(site.id));
  const acts: { id: string; label: string; run: () => void }[] = [
    {
      id: 'after',
      label: words.after,
      run: () => edit(editLabels.addSegment, (d) => editing.addSegmentAfter(d, run.id, index, words.newName)),
    },
    {
      id: 'copy',
      label: heatWords.duplicate,
      run: () => edit(editLabels.addSegment, (d) => editing.duplicateSegment(d, run.id, index)),
    },
    segment.gas
      ? {
          id: 'gas',
          label: words.gasOff,
          run: () => edit(editLabels.segment, (d) => editing.setGas(d, run.id, index, null)),
        }
      : { id: 'gas', label: words.gasOn, run: () => edit(editLabels.segment, gasOn(run, index)) },
    ...(segment.gas && served.length > 1
      ? served
          .filter((site) => site.id !== segment.siteId)
          .map((site) => ({
            id: `at ${site.id}`,
            label: words.at(site.name),
            run: () => edit(editLabels.segment, (d) => editing.setSegment(d, run.id, index, { siteId: site.id })),
          }))
      : []),
    ...(index > 0
      ? [
          {
            id: 'up',
            label: heatWords.moveUp,
            run: () => edit(editLabels.segment, (d) => editing.moveSegment(d, run.id, index, index - 1)),
          },
        ]
      : []),
    ...(index < run.segments.length - 1
      ? [
          {
            id: 'down',
            label: heatWords.moveDown,
            run: () => edit(editLabels.segment, (d) => editing.moveSegment(d, run.id, index, index + 1)),
          },
        ]
      : []),
    ...(run.segments.length > 1
      ? [
          {
            id: 'remove',
            label: heatWords.remove,
            run: () => edit(editLabels.removeSegment, (d) => editing.removeSegment(d, run.id, index)),
          },
        ]
      : []),
  ];
  return (
    <MenuTrigger>
      <BareButton className="number-button" aria-label={words.menu(index + 1, segment.name)}>
        {index + 1}
      </BareButton>
      <Popover className="popover" placement="bottom start">
        <Menu className="menu" items={acts} onAction={(id) => acts.find((act) => act.id === id)?.run()}>
          {(act) => (
            <MenuItem id={act.id} className="menu-item">
              {act.label}
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
