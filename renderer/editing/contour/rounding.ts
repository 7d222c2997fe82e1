import type { Contour, Corner } from '../../../shared-types/geometry.ts';
import { wrapped } from './corners.ts';
import { withoutDoubles } from './shapes.ts';

/** What a corner gives away on both of its edges when it is rounded by a radius of 1 mm; null: it cannot be rounded. */
function setbackPerMm(contour: Contour, index: number): { setback: number; bulge: number } | null {
  const before = contour[wrapped(contour, index - 1)];
  const at = contour[wrapped(contour, index)];
  const after = contour[wrapped(contour, index + 1)];
  if (before.bulge || at.bulge) return null;
  const turn = Math.atan2(
    (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x),
    (at.x - before.x) * (after.x - at.x) + (at.y - before.y) * (after.y - at.y),
  );
  if (Math.abs(turn) < 1e-6 || Math.abs(turn) > Math.PI - 1e-6) return null;
  return { setback: Math.abs(Math.tan(turn / 2)), bulge: Math.tan(turn / 4) };
}

/** Corners between two straight edges, which can be rounded. */
export const roundable = (contour: Contour, indices: readonly number[]): number[] =>
  indices.filter((index) => setbackPerMm(contour, index) !== null);

/** Largest radius that the corners can all be rounded by, mm; 0: none of them can. */
export function largestRounding(contour: Contour, indices: readonly number[]): number {
  const chosen = new Set(roundable(contour, indices));
  let largest = Infinity;
  contour.forEach((from, index) => {
    const to = contour[wrapped(contour, index + 1)];
    const needs = [index, wrapped(contour, index + 1)]
      .filter((end) => chosen.has(end))
      .reduce((sum, end) => sum + (setbackPerMm(contour, end)?.setback ?? 0), 0);
    if (needs > 0) largest = Math.min(largest, Math.hypot(to.x - from.x, to.y - from.y) / needs);
  });
  return Number.isFinite(largest) ? largest : 0;
}

/** The corners turned into arcs that leave both of their edges along them; null: the radius does not fit. */
export function roundCorners(contour: Contour, indices: readonly number[], radiusMm: number): Contour | null {
  const chosen = new Set(roundable(contour, indices));
  if (chosen.size === 0 || radiusMm > largestRounding(contour, indices) + 1e-9) return null;
  const next = contour.flatMap((at, index): Corner[] => {
    const round = chosen.has(index) ? setbackPerMm(contour, index) : null;
    if (!round) return [at];
    const towards = (other: Corner): Corner => {
      const share = (round.setback * radiusMm) / Math.hypot(other.x - at.x, other.y - at.y);
      return { x: at.x + (other.x - at.x) * share, y: at.y + (other.y - at.y) * share };
    };
    return [
      { ...towards(contour[wrapped(contour, index - 1)]), bulge: round.bulge },
      towards(contour[wrapped(contour, index + 1)]),
    ];
  });
  return withoutDoubles(next);
}
