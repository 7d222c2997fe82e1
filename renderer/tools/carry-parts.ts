import type { Part } from '../../shared-types/board.ts';
import type { Point } from '../../shared-types/geometry.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { moveParts } from '../editing/move-parts.ts';
import type { Pick } from '../state/canvas-model.ts';
import { snap } from './snapping.ts';
import type { Effect, PointerFacts, ToolView } from './tool.ts';

/** Parts on their way: they are drawn where they would lie and moved when the pointer lets go. */
export type Carry = {
  refdes: readonly string[];
  /** Those of the shown side, and their names. */
  parts: readonly Part[];
  names: ReadonlySet<string>;
  /** The part that was taken hold of: it snaps, the others keep their place beside it. */
  held: Part;
  from: Point;
};

type Pressed = { board: Point; pick: Pick | null; grip: unknown };

/**
 * What a press would carry: the part under it, with all selected ones when it is selected. Only in the stage Board;
 * null anywhere else, and where Shift or Ctrl mean the selection.
 */
export function carryFrom(state: Pressed, event: PointerFacts, view: ToolView): Carry | null {
  const { boardOpen, selection, document, shownSide } = view.model();
  if (!boardOpen || state.grip || state.pick?.kind !== 'part' || event.modifiers.ctrl) return null;
  const { refdes } = state.pick;
  const wanted = selection.has(refdes) ? selection : new Set([refdes]);
  const parts = document.board.parts.filter((part) => wanted.has(part.refdes));
  const held = parts.find((part) => part.refdes === refdes);
  if (!held || held.side !== shownSide) return null;
  const shown = parts.filter((part) => part.side === shownSide);
  const names = new Set(shown.map((part) => part.refdes));
  return { refdes: parts.map((part) => part.refdes), parts: shown, names, held, from: state.board };
}

const ROW_PX = 6;

/** How far the parts are carried: on the grid or to the rows of neighbours; Alt lets go of both, Shift keeps one axis. */
export function carriedTo(carry: Carry, event: PointerFacts, view: ToolView): { by: Point; guides: [Point, Point][] } {
  const { document, placing, shownSide } = view.model();
  const way = { x: event.board.x - carry.from.x, y: event.board.y - carry.from.y };
  if (event.modifiers.shift) {
    if (Math.abs(way.x) >= Math.abs(way.y)) way.y = 0;
    else way.x = 0;
  }
  const free = { x: carry.held.x + way.x, y: carry.held.y + way.y };
  if (event.modifiers.alt) return { by: way, guides: [] };
  const { at, guides } = snap(free, {
    gridMm: placing.gridMm,
    rows: placing.rows && !event.modifiers.shift,
    parts: document.board.parts,
    side: shownSide,
    like: carry.held.package.name,
    without: new Set(carry.refdes),
    reachMm: ROW_PX / view.zoom(),
  });
  // The locked axis stays exactly where it was, also off the grid.
  const x = event.modifiers.shift && way.x === 0 ? 0 : at.x - carry.held.x;
  const y = event.modifiers.shift && way.y === 0 ? 0 : at.y - carry.held.y;
  return { by: { x, y }, guides };
}

/** The parts drawn where they would lie. */
export function carried(carry: Carry, event: PointerFacts, view: ToolView): Effect[] {
  const { parts, names } = carry;
  const { by, guides } = carriedTo(carry, event, view);
  return [{ do: 'sketch', sketch: { kind: 'carried', parts, names, by, guides } }];
}

export const dropped = ({ refdes }: Carry, by: Point): Effect[] => [
  { do: 'sketch', sketch: null },
  { do: 'apply', label: partEditWords.move(refdes), edit: (document) => moveParts(document, refdes, by) },
];
