import type { BandFields, Evaluation, FaceFields } from '../../../shared-types/evaluation.ts';
import { BAND_90, TERM_IDS } from '../../../shared-types/uncertainty.ts';
import type { Belief } from './priors.ts';
import { varianceOf } from './sensitivities.ts';

const OUTLET = TERM_IDS.indexOf('outlet');
const SIDES = ['top', 'bottom'] as const;

/** The same map of the runs with each term a deviation down and up. */
type Shifted = { down: FaceFields; up: FaceFields }[];

/** Half width of the 90 % band of each cell, K; NaN where there is no board. */
function bandField(base: FaceFields, shifted: Shifted, belief: Belief, repeat: number): FaceFields {
  const moves = new Array<number>(TERM_IDS.length);
  const fields: FaceFields = { top: new Float32Array(base.top.length), bottom: new Float32Array(base.bottom.length) };
  for (const side of SIDES) {
    for (let cell = 0; cell < fields[side].length; cell++) {
      for (const [term, { down, up }] of shifted.entries()) moves[term] = (up[side][cell]! - down[side][cell]!) / 2;
      fields[side][cell] = BAND_90 * Math.sqrt(varianceOf(moves, belief.correlation) + (repeat * moves[OUTLET]!) ** 2);
      if (Number.isNaN(base[side][cell]!)) fields[side][cell] = Number.NaN;
    }
  }
  return fields;
}

/** The maps of one evaluation, without all that it says of parts: of the worst, and of each heat run. */
export type Maps = { worst: FaceFields; runs: FaceFields[] };
export const mapsOf = ({ fields, runs }: Evaluation): Maps => ({ worst: fields, runs: runs.map((run) => run.fields) });

/**
 * Bands of the maps themselves, for points where no part lies: from the runs that bands are made of, on their grid. The
 * worst of all heat runs, and each run.
 */
export function bandFieldsOf(
  base: Evaluation,
  pairs: readonly { down: Maps; up: Maps }[],
  belief: Belief,
  repeat: number,
): BandFields {
  const of = (fields: (maps: Maps) => FaceFields) =>
    bandField(
      fields(mapsOf(base)),
      pairs.map(({ down, up }) => ({ down: fields(down), up: fields(up) })),
      belief,
      repeat,
    );
  return {
    grid: base.grid,
    worst: of(({ worst }) => worst),
    runs: base.runs.map(({ runId }, place) => ({ runId, fields: of(({ runs }) => runs[place]!) })),
  };
}
