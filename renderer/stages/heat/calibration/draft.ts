import type { CurveSet } from '../../../../shared-types/evaluation.ts';
import type { HeatRun, Plan } from '../../../../shared-types/plan.ts';
import { guessColumns, likelyStart, samplesFrom } from '../../../../shared-types/rules/log-columns.ts';
import type { Attachment, CalibrationOrder, LogTable } from '../../../../shared-types/study.ts';
import type { TagOf } from '../../../../shared-types/tags.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';

/** What has been set in the dialogue so far. */
export type Draft = {
  runId: string;
  /** A file's columns, or null: peaks are typed. */
  log: { name: string; table: LogTable } | null;
  startS: number;
  /** Per column of the log: the watch point it is of; null: not used. */
  columns: readonly (string | null)[];
  /** Per watch point that was typed. */
  peaks: Readonly<Record<string, number>>;
  /** Per watch point; absent: taped, the least sure of the three. */
  attachments: Readonly<Record<string, Attachment>>;
};

export type WatchPoint = TagOf<'watchPoint'>;

export const watchPointsOf = (plan: Plan): WatchPoint[] =>
  plan.tags.filter((tag): tag is WatchPoint => tag.kind === 'watchPoint');

export const attachmentOf = ({ attachments }: Draft, tagId: string): Attachment => attachments[tagId] ?? 'taped';

export const emptyDraft = (runId: string): Draft => ({
  ...{ runId, log: null, startS: 0, columns: [], peaks: {}, attachments: {} },
});

export const secondsOf = (run: HeatRun): number => run.segments.reduce((sum, { seconds }) => sum + seconds, 0);

/** The draft with a log read: columns are guessed, and the run whose length is nearest to the log's is taken. */
export function withLog(draft: Draft, name: string, table: LogTable, plan: Plan): Draft {
  const off = (run: HeatRun) => Math.abs(secondsOf(run) - table.seconds);
  const ofBeads = plan.heatRuns.filter((run) => run.kind !== 'site-preparation');
  const runs = ofBeads.length > 0 ? ofBeads : plan.heatRuns;
  const run = runs.reduce((best, one) => (off(one) < off(best) ? one : best));
  return {
    ...draft,
    runId: run.id,
    log: { name, table },
    startS: 0,
    columns: guessColumns(table.columns, watchPointsOf(plan)),
  };
}

/** What is to be fitted, or the sentence that says what is missing. */
export function orderOf(draft: Draft, plan: Plan): { order: CalibrationOrder } | { missing: string } {
  const { log, columns, startS, runId } = draft;
  const points = watchPointsOf(plan);
  const wanted: CalibrationOrder['points'] = [];
  for (const { id, name } of points) {
    const attachment = attachmentOf(draft, id);
    if (!log) {
      const peakC = draft.peaks[id];
      if (peakC !== undefined) wanted.push({ tagId: id, attachment, samples: null, peakC });
      continue;
    }
    const found = columns.flatMap((tagId, index) => (tagId === id ? [log.table.columns[index]!] : []));
    if (found.length > 1) return { missing: words.twice(name) };
    if (found.length === 0) continue;
    const samples = samplesFrom(found[0]!.samples, startS);
    if (samples.atS.length === 0) return { missing: words.needSamples(name) };
    wanted.push({ tagId: id, attachment, samples, peakC: null });
  }
  if (wanted.length === 0) return { missing: words.needOne };
  return { order: { runId, logName: log?.name ?? words.typedPeaks, points: wanted } };
}

/** Second of the log at which the run likely began, by the readings that the evaluation expects; null: not known. */
export function startGuess({ log, columns }: Pick<Draft, 'log' | 'columns'>, curves: CurveSet): number | null {
  if (!log) return null;
  const pairs = columns.flatMap((tagId, index) => {
    const said = curves.points.find((point) => point.tagId === tagId)?.celsius;
    if (!said) return [];
    const atS = Array.from(said, (_, step) => step * curves.stepS);
    return [{ read: log.table.columns[index]!.samples, said: { atS, celsius: said } }];
  });
  return likelyStart(pairs);
}
