import type { EvaluationNotice, FaceFields, FieldGrid, RunResult } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { RISE_WINDOW_S, type RunExposure, runExposure } from './exposures.ts';
import type { TicketRun } from './heat-run.ts';
import type { HeatState } from './heat-state.ts';
import { runNotices } from './notices.ts';
import { type BodyPeaks, bodyPeaks, createPeakScratch } from './part-peaks.ts';
import { segmentReadings, siteSeriesOf, watchReadings } from './readings.ts';
import type { HeatScene } from './scene.ts';
import { targetResults } from './target-results.ts';
import { riseRates } from './tracking.ts';

/** Peaks of the two faces as fields, seen by side of the board; NaN where there is none. */
function peakFields(state: HeatState, scene: HeatScene): FaceFields {
  const cells = state.grid.cellCount;
  const upper = new Float32Array(cells);
  const lower = new Float32Array(cells);
  for (let cell = 0; cell < cells; cell++) {
    upper[cell] = state.grid.exists[cell] ? state.peak[cell]! : Number.NaN;
    lower[cell] = state.grid.exists[cell] ? state.peak[cell + cells]! : Number.NaN;
  }
  return scene.workedSide === 'top' ? { top: upper, bottom: lower } : { top: lower, bottom: upper };
}

function fieldGrid(state: HeatState, wishedM: number): FieldGrid {
  const { columns, rows, cellM, originXM, originYM, grown } = state.grid;
  return {
    columns,
    rows,
    cellMm: cellM * 1000,
    originX: originXM * 1000,
    originY: originYM * 1000,
    grownFromMm: grown ? wishedM * 1000 : null,
  };
}

/** What a finished run leaves behind: plain data, whichever thread made it. */
export type FinishedRun = {
  /** Place of the run in the plan. */
  place: number;
  result: RunResult;
  exposures: Map<string, RunExposure>;
  notices: EvaluationNotice[];
  grid: FieldGrid;
};

/** Peaks of all bodies in the order of the entries. */
function allPeaks({ simulation: { state }, scene }: TicketRun): BodyPeaks[] {
  const scratch = createPeakScratch();
  return Array.from(state.entries.bodyOfScene, (index, order) =>
    bodyPeaks(state, scratch, scene.bodies[index]!, order),
  );
}

/** Gathers what a run leaves behind once all its steps are taken. */
export function finishRun(run: TicketRun, plan: Plan): FinishedRun {
  const { state } = run.simulation;
  const { ending } = run.simulation;
  ending.peaks ??= allPeaks(run);
  ending.rises ??= riseRates(run.simulation.tracking, RISE_WINDOW_S, run.scene.roomC);
  const { peaks: found, rises } = ending;
  const exposures = new Map<string, RunExposure>();
  const peaks = new Map<string, BodyPeaks>();
  const { parts } = run.presence;
  state.entries.bodyOfScene.forEach((index, order) => {
    const part = parts[index];
    if (!part) return;
    peaks.set(part.refdes, found[order]!);
    exposures.set(part.refdes, runExposure(run, part, order, found[order]!, rises[order]!));
  });
  const { run: heatRun } = run.presence;
  const result: RunResult = {
    runId: heatRun.id,
    seconds: heatRun.segments.reduce((sum, segment) => sum + segment.seconds, 0),
    siteSeries: siteSeriesOf(run),
    fields: peakFields(state, run.scene),
    targets: targetResults(run, (refdes) => peaks.get(refdes) ?? null),
    watch: watchReadings(run),
    segments: segmentReadings(run, plan.station),
  };
  const place = plan.heatRuns.findIndex(({ id }) => id === heatRun.id);
  return { place, result, exposures, notices: runNotices(run), grid: fieldGrid(state, run.cellM) };
}
