import type { Board } from '../../board.ts';
import { boxOf, flattenContour } from '../../geometry.ts';
import type { Plan } from '../../plan.ts';
import { bodyEntries, nameEntries, overlapEntries } from './bodies.ts';
import { boardEntries, coverEntries, guessEntries, planEntries } from './data.ts';
import { placeEntries } from './places.ts';
import { HEALTH_KINDS, type HealthEntry, type HealthKind } from './types.ts';

export type HealthGroup = { kind: HealthKind; entries: readonly HealthEntry[] };

/** Everything odd about a board by itself: bodies, places, names, data. Not what a plan makes of it. */
export function boardHealth(board: Board): HealthEntry[] {
  const box = boxOf(flattenContour(board.outline, 0.1));
  const diagonalMm = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  return [
    ...overlapEntries(board.parts),
    ...placeEntries(board),
    ...nameEntries(board.parts),
    ...bodyEntries(board.parts, diagonalMm),
    ...coverEntries(board),
    ...guessEntries(board.parts),
    ...boardEntries(board),
  ];
}

/** The same with what a plan names that the board does not have. */
export const planHealth = (board: Board, plan: Plan): HealthEntry[] => planEntries(board, plan);

/** Entries by kind, the gravest kind first; kinds without an entry are left out. */
export function healthGroups(entries: readonly HealthEntry[]): HealthGroup[] {
  return HEALTH_KINDS.flatMap((kind): HealthGroup[] => {
    const own = entries.filter((entry) => entry.kind === kind);
    return own.length > 0 ? [{ kind, entries: own }] : [];
  });
}

/** How many things there are to look at: a part counts once whatever is odd about it, the rest by itself. */
export function openOfHealth(entries: readonly HealthEntry[]): number {
  return new Set(entries.map((entry) => entry.siteId ?? entry.tagId ?? entry.coverId ?? entry.refdes[0] ?? entry.kind))
    .size;
}
