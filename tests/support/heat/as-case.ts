import { arealProperties } from '../../../main/heat/layers.ts';
import type { Board, Part } from '../../../shared-types/board.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { Plan } from '../../../shared-types/plan.ts';

/** The same board and plan in the case form of `example heat`. */
export function asCase(board: Board, plan: Plan): object {
  const laminate = arealProperties(board.laminate);
  const { nozzle } = plan.station;
  if (nozzle.kind !== 'round') throw new Error('round nozzles only');
  const form = (one: Part) => {
    const { jointWm2K, heatCapacityJm3K, conductivityWmK } = classById(one.class);
    const { lengthMm, widthMm, heightMm } = one.package;
    const size = { l: lengthMm / 1000, w: widthMm / 1000, height: heightMm! / 1000 };
    const place = { ref: one.refdes, side: one.side, x: one.x / 1000, y: one.y / 1000, turn: one.turn };
    return { ...place, ...size, g: jointWm2K, rhoc: heatCapacityJm3K, k: conductivityWmK };
  };
  return {
    room: plan.station.roomC,
    entrained: plan.station.entrainedC,
    side: plan.heatRuns[0]!.side,
    board: {
      W: 0.06,
      H: 0.044,
      t: laminate.thicknessM,
      rhoc: laminate.volumetricHeat,
      kpar: laminate.inPlane,
      kthru: laminate.throughPlane,
      eps: 0.9,
      cutouts: [[0.004, 0.03, 0.012, 0.038]],
    },
    parts: board.parts.map(form),
    site: { x: 0.03, y: 0.022 },
    nozzle: { shape: 'round', D: 0.01, H: 0.012, sweep: 0.005, tilt: 10, heading: 90 },
    preheater: { x: 0.03, y: 0.022, l: 0.05, w: 0.04, h: 25, lag: 40 },
    shields: [],
    profile: plan.heatRuns[0]!.segments.map((one) => ({
      s: one.seconds,
      pre: [one.preheater.startC, one.preheater.endC],
      ...(one.gas ? { gas: [one.gas.startC, one.gas.endC], flow: one.flowLMin } : {}),
    })),
  };
}

/** The cutout of the case form in millimetres, for the board. */
export const caseCutout = [
  { x: 4, y: 30 },
  { x: 12, y: 30 },
  { x: 12, y: 38 },
  { x: 4, y: 38 },
];
