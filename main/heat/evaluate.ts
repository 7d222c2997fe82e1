import type { Board } from '../../shared-types/board.ts';
import type { Evaluation, FaceFields } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import type { TermSteps } from '../../shared-types/uncertainty.ts';
import { notEvaluated, worstExposure } from './exposures.ts';
import { type FinishedRun, finishRun } from './finished-run.ts';
import { cellAt } from './grid.ts';
import { prepareRun, type TicketRun } from './heat-run.ts';
import { evaluationNotices } from './notices.ts';
import { type Playback, type PlaybackRecorder, recordPlayback } from './playback.ts';
import { presences } from './presence.ts';
import { rememberedStarts } from './remembered-starts.ts';
import type { RunMemory } from './run-memory.ts';
import { placesToShare, type ShareRuns } from './share-runs.ts';
import { sharedStarts } from './shared-starts.ts';
import { calibratedSteps } from './uncertainty/calibrated.ts';

/** Cell (m) and step (s) of the two phases (heat-model.md, sections 2 and 6). */
const PHASES = { coarse: { cellM: 0.002, stepS: 1 }, fine: { cellM: 0.001, stepS: 0.5 } } as const;

export type EvaluateOptions = {
  phase: 'coarse' | 'fine';
  /** Revision of the document, handed through. */
  revision?: number;
  /** Share of the work done, 0 to 1; called now and then. */
  onProgress?: (share: number) => void;
  /** Asked before every sub-step; the evaluation then ends with the problem 'cancelled'. */
  isCancelled?: () => boolean;
  /** Numbers of earlier evaluations, to start from where nothing changed; the results are the same without it. */
  memory?: RunMemory;
  /** Given what plays the evaluation back; without it nothing is kept. Not together with `memory`: that skips steps. */
  onPlayback?: (playback: Playback) => void;
  /** The model's uncertain terms, moved from the station's values: what a band is made of. */
  steps?: TermSteps;
  /** Gives heat runs away to another thread; not together with `onPlayback`, whose frames stay where they are made. */
  share?: ShareRuns;
};

/** Sub-steps between two tellings of progress. */
const STEPS_A_LOOK = 8;

function keepHighest(into: Float32Array, from: Float32Array): void {
  for (let cell = 0; cell < into.length; cell++) if (from[cell]! > into[cell]!) into[cell] = from[cell]!;
}

/** What stands in the way of an evaluation before any step is taken. */
function obstacle(board: Board, plan: Plan, runs: readonly TicketRun[]): Problem | null {
  if (plan.heatRuns.length === 0) return fail('no-heat-run', { where: 'plan' }).problem;
  if (board.parts.length === 0)
    return fail('evaluation-failed', { detail: { reason: 'the board has no parts' } }).problem;
  const [first] = runs;
  if (!first) return null;
  const { grid } = first.simulation.state;
  if (!grid.exists.includes(1)) {
    return fail('evaluation-failed', { where: 'outline', detail: { reason: 'the outline holds no cell' } }).problem;
  }
  const sensor = first.scene.preheater?.sensor;
  if (!sensor || cellAt(grid, sensor.xM, sensor.yM) >= 0) return null;
  const detail = { reason: 'the board sensor is not on the board', todo: 'Move it onto the board or take it away.' };
  return fail('invalid-field', { where: 'station, preheater sensor', detail }).problem;
}

/** Prepares the heat runs with these places in the plan; the first that does not fit comes back as a problem. */
function prepareAll(
  board: Board,
  plan: Plan,
  { phase, memory, steps }: EvaluateOptions,
  places: readonly number[],
): Result<TicketRun[]> {
  const { cellM, stepS } = PHASES[phase];
  const diluted = [steps?.dilution, calibratedSteps(board, plan).dilution];
  const footprintKey = JSON.stringify([cellM, board.outline, board.cutouts, plan.station.nozzle, diluted]);
  const footprints = memory?.footprints(footprintKey) ?? new Map();
  const runs: TicketRun[] = [];
  const all = presences(board, plan);
  for (const place of places) {
    const prepared = prepareRun(board, plan, all[place]!, cellM, stepS, footprints, steps);
    if (!prepared.ok) return prepared;
    runs.push(prepared.value);
  }
  const wrong = obstacle(board, plan, runs);
  return wrong ? { ok: false, problem: wrong } : succeed(runs);
}

/** Steps all runs to their ends, one after the other, and gathers their results. */
function runAll(plan: Plan, runs: TicketRun[], options: EvaluateOptions): Result<FinishedRun[]> {
  const finished: FinishedRun[] = [];
  const total = runs.reduce((sum, run) => sum + run.simulation.stepCount, 0);
  const starts = options.memory ? rememberedStarts(runs, options.memory) : sharedStarts(runs);
  const recorder: PlaybackRecorder | null = options.onPlayback && !options.memory ? recordPlayback(runs) : null;
  let done = 0;
  for (const [index, run] of runs.entries()) {
    const { simulation } = run;
    starts.begin(index);
    recorder?.begin(index, starts.origin(index));
    let over = simulation.stepsDone >= simulation.stepCount;
    while (!over) {
      if (options.isCancelled?.()) return fail('cancelled');
      const wanted = recorder?.stepsToTake(index, STEPS_A_LOOK) ?? STEPS_A_LOOK;
      over = simulation.advance(starts.stepsToTake(index, wanted), options.isCancelled);
      starts.keep(index);
      recorder?.keep(index);
      options.onProgress?.((done + simulation.stepsDone) / total);
    }
    done += simulation.stepCount;
    finished.push(finishRun(run, plan));
  }
  if (recorder) options.onPlayback?.(recorder.finish(options.revision ?? 0));
  return succeed(finished);
}

/** Evaluates some heat runs of a ticket, by their places in the plan. Problems: as `evaluate`. */
export function evaluateRuns(
  board: Board,
  plan: Plan,
  options: EvaluateOptions,
  places: readonly number[],
): Result<FinishedRun[]> {
  const prepared = prepareAll(board, plan, options, places);
  if (!prepared.ok) return prepared;
  try {
    return runAll(plan, prepared.value, options);
  } finally {
    for (const { simulation } of prepared.value) simulation.release();
  }
}

/** All heat runs in their order, some of them elsewhere if there is an elsewhere. */
function evaluateAll(board: Board, plan: Plan, options: EvaluateOptions): Result<FinishedRun[]> {
  const all = plan.heatRuns.map((_, place) => place);
  const away = options.share && !options.onPlayback ? placesToShare(plan) : [];
  if (!options.share || away.length === 0) return evaluateRuns(board, plan, options, all);
  const { phase, steps } = options;
  const collect = options.share({ board, plan, phase, steps, places: away });
  const here = all.filter((place) => !away.includes(place));
  const own = evaluateRuns(board, plan, options, here);
  if (!own.ok) return own;
  const others = collect() ?? evaluateRuns(board, plan, options, away);
  if (!others.ok) return others;
  return succeed([...own.value, ...others.value].sort((a, b) => a.place - b.place));
}

/**
 * Evaluates a ticket: every heat run of its plan on the board as it is then, every part judged by the worst of them.
 * Pure: the same ticket gives the same numbers. Bands: `uncertainty/band-runs.ts`.
 * Problems: no-heat-run, no-site, invalid-field (what in the plan), evaluation-failed, cancelled.
 */
export function evaluate(board: Board, plan: Plan, options: EvaluateOptions): Result<Evaluation> {
  const wrong = obstacle(board, plan, []);
  if (wrong) return { ok: false, problem: wrong };
  const made = evaluateAll(board, plan, options);
  return made.ok ? succeed(assembled(board, plan, options, made.value)) : made;
}

/**
 * The same on another thread: begins at once, and what it returns waits for the evaluation. Without another thread, or
 * when that went lost, it is made here while one waits.
 */
export function evaluateElsewhere(board: Board, plan: Plan, options: EvaluateOptions): () => Result<Evaluation> {
  const here = () => evaluate(board, plan, { ...options, share: undefined });
  if (!options.share || obstacle(board, plan, [])) return here;
  const { phase, steps, share } = options;
  const collect = share({ board, plan, phase, steps, places: plan.heatRuns.map((_, place) => place) });
  return () => {
    const made = collect();
    if (!made) return here();
    return made.ok ? succeed(assembled(board, plan, options, made.value)) : made;
  };
}

/** The evaluation of a ticket from its finished runs, in their order. */
function assembled(board: Board, plan: Plan, options: EvaluateOptions, finished: readonly FinishedRun[]): Evaluation {
  const parts = board.parts.flatMap((part) => {
    const through = finished.flatMap((run) => run.exposures.get(part.refdes) ?? []);
    return through.length > 0 ? worstExposure(part, plan, through) : [];
  });
  const [first, ...others] = finished.map((run) => run.result.fields);
  const fields: FaceFields = { top: first!.top.slice(), bottom: first!.bottom.slice() };
  for (const other of others) {
    keepHighest(fields.top, other.top);
    keepHighest(fields.bottom, other.bottom);
  }
  return {
    revision: options.revision ?? 0,
    phase: options.phase,
    grid: finished[0]!.grid,
    fields,
    runs: finished.map((run) => run.result),
    parts,
    notEvaluated: notEvaluated(board, plan, new Set(parts.map((part) => part.refdes))),
    notices: evaluationNotices(
      plan,
      finished.map((run) => run.notices),
    ),
    bands: 'not-computed',
  };
}
