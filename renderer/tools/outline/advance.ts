import type { Board } from '../../../shared-types/board.ts';
import { edgeBetween } from '../../../shared-types/contour/edges.ts';
import { meetingsOf } from '../../../shared-types/contour/meetings.ts';
import type { Contour, Corner } from '../../../shared-types/geometry.ts';
import type { ContourFault, ContourId } from '../../../shared-types/rules/contour-faults.ts';
import type { LengthUnit } from '../../../shared-types/units.ts';
import { outlineEdits } from '../../../shared-types/words/window/outline.ts';
import { withNotch } from '../../editing/contour/notch.ts';
import { addCutout, faultOfChange, faultOfCutout, setContour } from '../../editing/outline.ts';
import type { Edit } from '../../state/canvas-model.ts';
import { bulgeOf, pencilOf, shapeOf, typedValue } from './draft.ts';
import { emptyDraft, type OutlineState, restarted } from './outline-state.ts';

/** What setting a point does: the tool's new state, and an edit once the shape is whole. */
export type Advance = { fields: Partial<OutlineState>; apply?: { label: string; edit: Edit } };

/**
 * Sets the next point of the shape where the pencil and the typed figures say. `bays`: a cutout over the edge of the board is
 * taken off the outline; else it is refused.
 */
export function advance(state: OutlineState, board: Board, unit: LengthUnit, bays = false): Advance {
  const { mode, draft } = state;
  const at = pencilOf(state, unit);
  if (mode === 'hole') return finish(state, shapeOf(state, unit)?.contour ?? null, board, unit, bays);
  if (draft.points.length === 0) return at ? setPoint(state, { x: at.x, y: at.y }) : { fields: {} };
  if (mode !== 'polygon') return finish(state, shapeOf(state, unit)?.contour ?? null, board, unit, bays);
  return draft.arcEnd || at ? nextCorner(state, board, unit) : { fields: {} };
}

/** What the shape under way will be on the board. */
const becomes = ({ target, mode }: OutlineState, board: Board): ContourId =>
  target === 'outline' && mode !== 'hole' && mode !== 'slot' ? 'outline' : board.cutouts.length;

const setPoint = ({ draft }: OutlineState, point: Corner): Advance => ({
  fields: {
    draft: { ...restarted(draft), pencil: { x: point.x, y: point.y }, points: [point], arc: draft.arc },
    refused: null,
  },
});

/** The next corner of a polygon; an arc first takes its end, then its bend. */
function nextCorner(state: OutlineState, board: Board, unit: LengthUnit): Advance {
  const { draft } = state;
  const last = draft.points[draft.points.length - 1];
  const end = draft.arcEnd ?? pencilOf(state, unit) ?? last;
  if (Math.hypot(end.x - last.x, end.y - last.y) < 1e-9) return { fields: {} };
  if (draft.arc && !draft.arcEnd)
    return { fields: { draft: { ...restarted(draft), points: draft.points, arc: true, arcEnd: end }, refused: null } };
  const bulge = draft.arcEnd ? bulgeOf(state, unit) : 0;
  const bent: Corner[] = [...draft.points.slice(0, -1), bulge ? { ...last, bulge } : last];
  const home = Math.hypot(end.x - bent[0].x, end.y - bent[0].y) < 1e-6;
  const refused = edgeFault(bent, end, home, becomes(state, board));
  if (refused) return { fields: { refused } };
  // The pencil stands on the new corner: a figure typed next starts from there, not from where the mouse was left.
  const next = { ...restarted(draft), pencil: { x: end.x, y: end.y }, arc: draft.arc };
  if (!home) return { fields: { draft: { ...next, points: [...bent, { x: end.x, y: end.y }] }, refused: null } };
  return finish({ ...state, draft: { ...next, points: bent } }, bent, board, unit);
}

/** Where a new edge would meet those already drawn; null: nowhere. */
function edgeFault(points: readonly Corner[], end: Corner, home: boolean, id: ContourId): ContourFault | null {
  const last = points.length - 1;
  const edge = edgeBetween(points[last], end, points[last].bulge ?? 0, last);
  for (let index = 0; index < last; index++) {
    const other = edgeBetween(points[index], points[index + 1], points[index].bulge ?? 0, index);
    const shared = [...(index === last - 1 ? [points[last]] : []), ...(home && index === 0 ? [points[0]] : [])];
    const [meeting] = meetingsOf(other, edge, shared);
    if (meeting) return { kind: 'self', id, ...meeting, edges: [index, last] };
  }
  return null;
}

/** Closes a polygon with a straight edge. */
export function closeShape(state: OutlineState, board: Board, unit: LengthUnit): Advance {
  const { points } = state.draft;
  const arcs = points.some((point) => point.bulge);
  if (state.mode !== 'polygon' || points.length < (arcs ? 2 : 3)) return { fields: {} };
  return finish(state, [...points], board, unit);
}

/** Takes the last point back; the first one ends the shape. */
export function takeBack({ draft }: OutlineState): Partial<OutlineState> {
  if (draft.arcEnd) return { draft: { ...restarted(draft), points: draft.points, arc: true }, refused: null };
  const kept = draft.points.slice(0, -1);
  const last = kept.at(-1);
  const points = last ? [...kept.slice(0, -1), { x: last.x, y: last.y }] : kept;
  return { draft: { ...restarted(draft), points, arc: draft.arc }, refused: null };
}

/** The outline with the bay that a cutout over its edge leaves in it; null: it lies inside, or that is no bay. */
function bayOf(cutout: Contour, board: Board): Contour | null {
  const fault = faultOfCutout(board, cutout);
  return fault?.kind === 'pair' && fault.other === 'outline' ? withNotch(board.outline, cutout) : null;
}

function finish(state: OutlineState, contour: Contour | null, board: Board, unit: LengthUnit, bays = false): Advance {
  if (!contour) return { fields: {} };
  const drawn = becomes(state, board);
  const bay = bays && drawn !== 'outline' ? bayOf(contour, board) : null;
  const id = bay ? 'outline' : drawn;
  const shape = bay ?? contour;
  const refused = id === 'outline' ? faultOfChange(board, 'outline', shape) : faultOfCutout(board, shape);
  if (refused) return { fields: { refused } };
  const keep = (field: 'diameter' | 'width' | 'radius', before: number) => typedValue(state, field, unit) ?? before;
  return {
    fields: {
      draft: { ...emptyDraft, pencil: state.draft.pencil },
      refused: null,
      wanted: null,
      picked: { id, part: 'whole', index: 0 },
      // What is drawn after an outline is a cutout.
      target: 'cutout',
      ...(state.mode === 'hole' && { holeMm: keep('diameter', state.holeMm) }),
      ...(state.mode === 'slot' && { slotMm: keep('width', state.slotMm) }),
      ...(state.mode === 'rectangle' && { cornerMm: keep('radius', state.cornerMm) }),
    },
    apply:
      id === 'outline'
        ? {
            label: bay ? outlineEdits.bay : outlineEdits.outline,
            edit: (document) => setContour(document, 'outline', shape),
          }
        : { label: outlineEdits.cutout, edit: (document) => addCutout(document, contour) },
  };
}
