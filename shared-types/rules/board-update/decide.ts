import type { Board } from '../../board.ts';
import type { BoardChanges, CoverChange, PartAspect, PartChange } from './types.ts';

/** What is decided otherwise than usual. `ticks`: by key, whether a change is taken; `stay`: parts that are gone and stay all the same. */
export type Decisions = {
  readonly ticks: Readonly<Record<string, boolean>>;
  readonly stay: readonly string[];
};
export const usualDecisions: Decisions = { ticks: {}, stay: [] };

export const WHOLE_KEYS = ['outline', 'fiducials', 'layers', 'revision'] as const;
export type WholeKey = (typeof WHOLE_KEYS)[number];

export const aspectKey = (aspect: PartAspect, refdes: string): string => `${aspect} ${refdes}`;
export const addedKey = (refdes: string): string => `added ${refdes}`;
export const coverKey = (id: string): string => `cover ${id}`;

/**
 * Whether a change of a part is taken unless somebody says otherwise: what was measured or marked by hand (a height, a
 * mark of pin 1, a package of the board's own) stays, and so does a connector that may only be given by another point;
 * everything else follows the files.
 */
export function usuallyTaken(board: Board, { before, originDoubt }: PartChange, aspect: PartAspect): boolean {
  if (aspect === 'place') return !originDoubt;
  if (aspect === 'height') return before.package.heightMm === null;
  if (aspect === 'pins') return before.pin1 === undefined;
  if (aspect === 'size' || aspect === 'package')
    return !board.packages.some(({ name }) => name === before.package.name);
  return true;
}

export const takesAspect = (board: Board, change: PartChange, aspect: PartAspect, { ticks }: Decisions): boolean =>
  ticks[aspectKey(aspect, change.refdes)] ?? usuallyTaken(board, change, aspect);

export const takesAdded = (refdes: string, { ticks }: Decisions): boolean => ticks[addedKey(refdes)] ?? true;

/** A cover that the ticket has was drawn or corrected by hand: it stays unless it is ticked. */
export const takesCover = ({ cover, kind }: CoverChange, { ticks }: Decisions): boolean =>
  ticks[coverKey(cover.id)] ?? kind !== 'moved';

/** Layers that somebody counted and fiducials that the files do not know stay unless they are ticked. */
export function takesWhole(board: Board, changes: BoardChanges, key: WholeKey, { ticks }: Decisions): boolean {
  const known = new Set(changes.fiducials?.map(({ id }) => id));
  const usual: Record<WholeKey, boolean> = {
    outline: true,
    fiducials: board.fiducials.every(({ id }) => known.has(id)),
    layers: !board.laminate.layersKnown,
    revision: true,
  };
  return changes[key] !== null && (ticks[key] ?? usual[key]);
}
