import { useMemo } from 'react';
import type { Plan } from '../../../../shared-types/plan.ts';
import { ATTACHMENTS } from '../../../../shared-types/study.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { TemperatureEntry } from '../../../widgets/UnitEntry.tsx';
import type { CurveStyle } from '../curve-lines.ts';
import { attachmentOf, type Draft, secondsOf, type WatchPoint, watchPointsOf } from './draft.ts';
import { type ChartLine, LineChart } from './LineChart.tsx';

const attachments = ATTACHMENTS.map((id) => ({ id, label: words.attachments[id] }));
const NOT_USED = 'not used';

type SettingProps = { plan: Plan; draft: Draft; change: (fields: Partial<Draft>) => void };
type WholeProps = SettingProps & { likelyS: number | null };

/** Which run, when it began, and which column or typed peak is of which bead. */
export function LogSetting({ plan, draft, change, likelyS }: WholeProps) {
  const { measures } = useUnits();
  const { log } = draft;
  const runs = plan.heatRuns.map((run) => ({
    ...{ id: run.id, label: run.name, more: measures.seconds(secondsOf(run)) },
  }));
  return (
    <>
      <div className="log-setting">
        <Choice label={words.run} value={draft.runId} items={runs} onChange={(runId) => change({ runId })} />
        {log && (
          <div className="log-start">
            <NumberEntry
              label={words.start}
              value={draft.startS}
              unit="s"
              decimals={0}
              least={0}
              most={Math.floor(log.table.seconds)}
              onChange={(startS) => startS !== null && change({ startS })}
            />
            {likelyS !== null && likelyS !== draft.startS && (
              <Button small look="quiet" onPress={() => change({ startS: likelyS })}>
                {words.startLikely(measures.seconds(likelyS))}
              </Button>
            )}
            {likelyS !== null && likelyS === draft.startS && <span className="soft">{words.startGuessed}</span>}
          </div>
        )}
      </div>
      {log && <LogPicture plan={plan} draft={draft} />}
      {log ? (
        <Columns plan={plan} draft={draft} change={change} />
      ) : (
        <Peaks plan={plan} draft={draft} change={change} />
      )}
      <p className="soft">{words.attachmentNote}</p>
    </>
  );
}

const USED: CurveStyle = { ink: 'ink', width: 1.5, dash: [] };
const UNUSED: CurveStyle = { ink: 'soft', width: 1, dash: [2, 3] };

function LogPicture({ plan, draft: { log, columns, startS, runId } }: Omit<SettingProps, 'change'>) {
  const lines = useMemo(
    (): ChartLine[] =>
      (log?.table.columns ?? []).map(({ name, samples }, index) => ({
        ...{ name, seconds: samples.atS, celsius: samples.celsius, style: columns[index] ? USED : UNUSED },
      })),
    [log, columns],
  );
  const run = plan.heatRuns.find((one) => one.id === runId);
  const seconds = run ? secondsOf(run) : 0;
  const at = useMemo(() => [startS, startS + seconds], [startS, seconds]);
  return <LineChart label={words.logChart} lines={lines} at={at} height={150} />;
}

function Columns({ plan, draft, change }: SettingProps) {
  const { measures } = useUnits();
  const points = watchPointsOf(plan);
  const items = [
    { id: NOT_USED, label: words.notUsed },
    ...points.map(({ id, name, refdes }) => ({ id, label: name, more: refdes ?? undefined })),
  ];
  const assign = (column: number, tagId: string) =>
    change({
      columns: draft.columns.map((one, index) => (index === column ? (tagId === NOT_USED ? null : tagId) : one)),
    });
  return (
    <table className="log-columns">
      <thead>
        <tr>
          <th>{words.heads.column}</th>
          <th className="figure-head">{words.heads.peak}</th>
          <th className="figure-head">{words.heads.gaps}</th>
          <th>{words.heads.point}</th>
          <th>{words.heads.attachment}</th>
        </tr>
      </thead>
      <tbody>
        {draft.log?.table.columns.map(({ name, gaps, samples }, index) => {
          const point = points.find(({ id }) => id === draft.columns[index]);
          const highest = samples.celsius.reduce((high, one) => Math.max(high, one), Number.NEGATIVE_INFINITY);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: columns stay where they are and may share a name
            <tr key={index}>
              <th scope="row">{name}</th>
              <td className="figure">{measures.degrees(highest)}</td>
              <td className="figure">{gaps}</td>
              <td>
                <Choice
                  label={words.pointOf(name)}
                  bare
                  value={point?.id ?? NOT_USED}
                  items={items}
                  onChange={(tagId) => assign(index, tagId)}
                />
              </td>
              <td>{point && <Attachment point={point} draft={draft} change={change} />}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Peaks({ plan, draft, change }: SettingProps) {
  return (
    <table className="log-columns">
      <thead>
        <tr>
          <th>{words.heads.point}</th>
          <th className="figure-head">{words.heads.typed}</th>
          <th>{words.heads.attachment}</th>
        </tr>
      </thead>
      <tbody>
        {watchPointsOf(plan).map((point) => (
          <tr key={point.id}>
            <th scope="row">
              {point.name} <span className="soft">{point.refdes}</span>
            </th>
            <td className="figure">
              <TemperatureEntry
                label={words.peakOf(point.name)}
                bare
                value={draft.peaks[point.id] ?? null}
                least={0}
                most={500}
                emptyIs="–"
                onChange={(peakC) => {
                  const { [point.id]: _, ...others } = draft.peaks;
                  change({ peaks: peakC === null ? others : { ...others, [point.id]: peakC } });
                }}
              />
            </td>
            <td>
              <Attachment point={point} draft={draft} change={change} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Attachment({ point: { id, name }, draft, change }: Omit<SettingProps, 'plan'> & { point: WatchPoint }) {
  return (
    <Choice
      label={words.attachmentOf(name)}
      bare
      value={attachmentOf(draft, id)}
      items={attachments}
      onChange={(attachment) => change({ attachments: { ...draft.attachments, [id]: attachment } })}
    />
  );
}
