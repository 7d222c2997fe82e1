import { type Board, emptyBoard, type Part } from '../../../shared-types/board.ts';
import type { Nozzle, Plan, TicketDocument } from '../../../shared-types/plan.ts';
import { planForTargets } from '../../../shared-types/rules/new-plan.ts';
import { part } from '../../unit/main/heat/support.ts';
import { uniforms } from './random.ts';

/** Class, body in mm; invented, of everyday sizes. */
const KINDS: [string, string, [number, number, number]][] = [
  ['C', 'chip-capacitor', [1.6, 0.8, 0.8]],
  ['C', 'chip-capacitor-large', [3.2, 2.5, 2]],
  ['R', 'chip-resistor', [1, 0.5, 0.35]],
  ['U', 'so', [5, 4, 1.5]],
  ['U', 'qfp', [10, 10, 1.4]],
  ['U', 'qfn', [5, 5, 0.9]],
  ['L', 'power-inductor', [7, 7, 4]],
  ['J', 'connector-pbt', [15, 6, 8]],
  ['E', 'electrolytic-small', [6.3, 6.3, 5.8]],
];

type Draw = () => number;
const between = (draw: Draw, from: number, to: number): number => from + (to - from) * draw();
const oneOf = <T>(draw: Draw, all: readonly T[]): T => all[Math.floor(draw() * all.length)]!;

function nozzleOf(draw: Draw, bodyMm: number): Nozzle {
  const held = { standOffMm: between(draw, 6, 18), tiltDeg: between(draw, 0, 25), headingDeg: between(draw, 0, 360) };
  const open = { ...held, sweepRadiusMm: draw() < 0.5 ? 0 : between(draw, 2, 8) };
  const size = { lengthMm: bodyMm + 3, widthMm: bodyMm + 3, turnDeg: 0 };
  if (draw() < 0.6) return { kind: 'round', diameterMm: between(draw, 6, 14), ...open };
  if (draw() < 0.5) return { kind: 'rectangular', ...size, ...open };
  return { kind: 'hood', ...size, ...held, standOffMm: 1, filmAt30LMin: 100, rimGapMm: 1, leak: 0.2 };
}

/** Parts on the squares of a 9 mm raster, both sides, a third of the squares empty; none near the target's. */
function scattered(draw: Draw, widthMm: number, heightMm: number, target: Part): Part[] {
  const parts: Part[] = [];
  for (const side of ['top', 'bottom'] as const) {
    for (let y = 6; y < heightMm - 5; y += 9) {
      for (let x = 6; x < widthMm - 5; x += 9) {
        const [letter, id, size] = oneOf(draw, KINDS);
        const near = Math.max(Math.abs(x - target.x), Math.abs(y - target.y)) < target.package.lengthMm / 2 + 5;
        if (draw() < 0.35 || (side === 'top' && near) || size[0] > 9) continue;
        parts.push(
          part(`${letter}${parts.length + 1}`, x + between(draw, -1, 1), y + between(draw, -1, 1), size, {
            class: id,
            side,
          }),
        );
      }
    }
  }
  return parts;
}

/** A ticket nobody drew: board, parts, layers, station and profile from a seed. */
export function randomTicket(seed: number): TicketDocument & { name: string } {
  const draw = uniforms(seed);
  const [widthMm, heightMm] = [Math.round(between(draw, 50, 110)), Math.round(between(draw, 40, 90))];
  const bodyMm = Math.round(between(draw, 8, 24));
  const target = part(
    'U100',
    between(draw, 0.35, 0.65) * widthMm,
    between(draw, 0.35, 0.65) * heightMm,
    [bodyMm, bodyMm, 1.5],
    { class: 'bga' },
  );
  const empty = emptyBoard(`random ${seed}`, widthMm, heightMm);
  const board: Board = {
    ...empty,
    laminate: { ...empty.laminate, thicknessMm: between(draw, 0.8, 2.2), layersKnown: draw() < 0.5 },
    parts: [target, ...scattered(draw, widthMm, heightMm, target)],
  };
  const plan: Plan = planForTargets(board, `R-${seed}`, [target.refdes]);
  return {
    name: board.name,
    board,
    plan: {
      ...plan,
      station: {
        ...plan.station,
        ...{ nozzle: nozzleOf(draw, bodyMm), gasReads: draw() < 0.5 ? 'setting' : 'outlet' },
        preheater: {
          ...plan.station.preheater,
          kind: oneOf(draw, ['ceramic', 'quartz', 'halogen', 'hot-air'] as const),
        },
      },
    },
  };
}
