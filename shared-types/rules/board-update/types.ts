import type { Board, Cover, Part } from '../../board.ts';
import type { ImportFacts } from '../../import-report.ts';
import type { Frame } from '../board-frame.ts';

/** A board that was read from files, with what the files tell at all. */
export type UpdateSource = { readonly board: Board; readonly told: ImportFacts['told'] };

/** How the files' board lies on the ticket's. `votes` of `of` common parts lie where the files put them then. */
export type Alignment = {
  readonly frame: Frame;
  readonly by: 'references' | 'corner' | 'none' | 'chosen';
  readonly votes: number;
  readonly of: number;
};

/** What may differ of a part that both have. `pins`: pin 1, number of pins, area of the pads. */
export const PART_ASPECTS = ['place', 'turn', 'side', 'size', 'package', 'value', 'height', 'fitted', 'pins'] as const;
export type PartAspect = (typeof PART_ASPECTS)[number];

/** A part that both have and of which they say different things. `after`: the files' part in the ticket's frame and axes. */
export type PartChange = {
  readonly refdes: string;
  readonly before: Part;
  readonly after: Part;
  readonly aspects: readonly PartAspect[];
  readonly movedMm: number;
  /** Between -180 and 180. */
  readonly turnedDeg: number;
  /** The new place may be the origin of the part's drawing instead of its middle: files without pads cannot tell. */
  readonly originDoubt: boolean;
};

/** A designator that stands for several parts: which of them is the ticket's cannot be told. */
export type Question = { readonly part: Part; readonly candidates: readonly Part[] };

export type CoverChange = {
  readonly cover: Cover;
  /** `part`: the ticket has a part of this name; `moved`: a cover that lies or measures otherwise. */
  readonly kind: 'new' | 'part' | 'moved';
};

/** What an update would do to a ticket's board, in the ticket's frame. Nothing is changed by comparing. */
export type BoardChanges = {
  readonly alignment: Alignment;
  /** Parts that both have, and how many of those are the same in all. */
  readonly common: number;
  readonly same: number;
  readonly changed: readonly PartChange[];
  readonly added: readonly Part[];
  readonly gone: readonly Part[];
  /** Designator of a part that is gone -> that of a new one of its kind at its place. */
  readonly renamed: ReadonlyMap<string, string>;
  /** Parts on a side, or of a kind, about which the files say nothing. */
  readonly untold: number;
  readonly questions: readonly Question[];
  /** Parts that the files put at their pin 1: they did not move. */
  readonly atPin1: readonly string[];
  readonly outline: Pick<Board, 'outline' | 'cutouts'> | null;
  readonly cutouts: { readonly added: number; readonly gone: number };
  readonly covers: readonly CoverChange[];
  readonly fiducials: Board['fiducials'] | null;
  readonly layers: Board['laminate']['layers'] | null;
  readonly revision: string | null;
  readonly drawnFrom: string;
  /** Designators of a bill of materials that stand nowhere. */
  readonly unplaced: readonly string[];
};
