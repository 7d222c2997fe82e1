import svgpath from 'svgpath';
import { bezierShape } from '../drawing/shapes.ts';
import type { Shape } from '../drawing/types.ts';
import type { Point } from '../plane.ts';

/**
 * Shapes of a path's data, in its own axes; arcs stay arcs. What follows a mistake is not drawn (SVG 1.1, section F.2):
 * `broken` tells.
 */
export function pathShapes(data: string): { shapes: Shape[]; broken: boolean } {
  const path = svgpath(data).abs().unshort();
  const shapes: Shape[] = [];
  let first: Point = { x: 0, y: 0 };
  path.iterate((segment, _, x, y) => {
    const from = { x, y };
    const command = segment[0];
    const n = segment.slice(1) as number[];
    if (command === 'M') first = { x: n[0], y: n[1] };
    else if (command === 'L') shapes.push({ kind: 'line', from, to: { x: n[0], y: n[1] } });
    else if (command === 'H') shapes.push({ kind: 'line', from, to: { x: n[0], y } });
    else if (command === 'V') shapes.push({ kind: 'line', from, to: { x, y: n[0] } });
    else if (command === 'C' || command === 'Q') shapes.push(bezierShape([from, ...pairs(n)]));
    else if (command === 'A') shapes.push(arcShape(from, n));
    else if (command === 'Z') shapes.push({ kind: 'line', from, to: first });
  });
  return { shapes, broken: 'err' in path && Boolean(path.err) };
}

function pairs(numbers: readonly number[]): Point[] {
  return Array.from({ length: numbers.length / 2 }, (_, index) => ({
    x: numbers[2 * index],
    y: numbers[2 * index + 1],
  }));
}

/** From the ends of an elliptical arc to its middle (SVG 1.1, sections F.6.5 and F.6.6). */
export function arcShape(from: Point, [rx, ry, turn, large, sweepFlag, x, y]: readonly number[]): Shape {
  const to = { x, y };
  let [a, b] = [Math.abs(rx), Math.abs(ry)];
  if (a === 0 || b === 0 || (from.x === x && from.y === y)) return { kind: 'line', from, to };
  const angle = (turn * Math.PI) / 180;
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const half = { x: (from.x - x) / 2, y: (from.y - y) / 2 };
  const own = { x: cosine * half.x + sine * half.y, y: cosine * half.y - sine * half.x };
  const reach = (own.x / a) ** 2 + (own.y / b) ** 2;
  // Radii too small for the chord grow until they just reach.
  if (reach > 1) [a, b] = [a * Math.sqrt(reach), b * Math.sqrt(reach)];
  const factor = (large === sweepFlag ? -1 : 1) * Math.sqrt(Math.max(0, 1 / reach - 1));
  const middle = { x: (factor * a * own.y) / b, y: (-factor * b * own.x) / a };
  const start = Math.atan2((own.y - middle.y) / b, (own.x - middle.x) / a);
  const end = Math.atan2((-own.y - middle.y) / b, (-own.x - middle.x) / a);
  const turned = (((end - start) % FULL) + FULL) % FULL;
  return {
    kind: 'ellipse',
    centre: {
      x: cosine * middle.x - sine * middle.y + (from.x + x) / 2,
      y: sine * middle.x + cosine * middle.y + (from.y + y) / 2,
    },
    u: { x: a * cosine, y: a * sine },
    v: { x: -b * sine, y: b * cosine },
    start,
    sweep: sweepFlag ? turned : turned - FULL,
  };
}

const FULL = 2 * Math.PI;
