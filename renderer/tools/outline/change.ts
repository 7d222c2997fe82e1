import type { Contour, Point } from '../../../shared-types/geometry.ts';
import { contourName, outlineEdits } from '../../../shared-types/words/window/outline.ts';
import {
  deleteCorner,
  insertCorner,
  moveContour,
  moveCorner,
  moveEdge,
  setBulge,
} from '../../editing/contour/corners.ts';
import { addCutout, contourOf, faultOfChange, placeForCopy, removeCutout, setContour } from '../../editing/outline.ts';
import type { Effect, Modifiers, PointerFacts, ToolView } from '../tool.ts';
import { draggedContour, dragLabel, type ShapeDrag } from './drags.ts';
import { hitAt } from './hits.ts';
import type { ContourPick, OutlineState } from './outline-state.ts';
import { ARROWS, reachOf, seenStep } from './steps.ts';

/** Changing shapes: drags and keys of the mode `change`. */

const set = (fields: Partial<OutlineState>): Effect => ({ do: 'outline', fields });

export const pickedAt = (view: ToolView, at: Point, picked: ContourPick | null, reachMm: number) =>
  hitAt(view.model().document.board, picked, at, reachMm);

/** A press that became a drag takes hold of what it began on; Ctrl on an edge puts a corner there. The outline as a whole stays. */
export function dragStarted(
  from: Point,
  event: PointerFacts,
  view: ToolView,
): { drag: ShapeDrag; effects: Effect[] } | null {
  const { outline, document } = view.model();
  let hit = pickedAt(view, from, outline.picked, reachOf(event, view));
  let start = hit && contourOf(document.board, hit.id);
  if (!hit || !start) return null;
  if (event.modifiers.ctrl && (hit.part === 'edge' || hit.part === 'bend')) {
    start = insertCorner(start, hit.index);
    hit = { ...hit, part: 'corner', index: hit.index + 1 };
  }
  const drag = { hit, start, from };
  const picked: ContourPick = { id: hit.id, part: hit.part === 'bend' ? 'edge' : hit.part, index: hit.index };
  return {
    drag,
    effects: [set({ picked, refused: null }), { do: 'begin', label: dragLabel(drag) }, ...dragged(drag, event, view)],
  };
}

/** The shape follows the pencil as long as it may; a refused one is only shown. */
export function dragged(drag: ShapeDrag, event: PointerFacts, view: ToolView): Effect[] {
  const model = view.model();
  const snapping = model.outline.snapping && !event.modifiers.alt;
  const contour = draggedContour(drag, event.board, model, reachOf(event, view), snapping);
  const refused = faultOfChange(model.document.board, drag.hit.id, contour);
  if (refused) return [set({ refused, wanted: contour })];
  return [
    set({ refused: null, wanted: null }),
    { do: 'preview', edit: (document) => setContour(document, drag.hit.id, contour) },
  ];
}

/** Let go over a refused shape, everything is as before the drag. */
export function dropped(drag: ShapeDrag, event: PointerFacts, view: ToolView): Effect[] {
  const last = dragged(drag, event, view);
  const refused = last.every((effect) => effect.do !== 'preview');
  return refused ? [{ do: 'cancel' }, ...last, set({ wanted: null })] : [...last, { do: 'commit' }];
}

/** Effects of a changed contour: the edit, or why it is refused. */
function change(view: ToolView, pick: ContourPick, label: string, contour: Contour | null, next = pick): Effect[] {
  if (!contour) return [];
  const refused = faultOfChange(view.model().document.board, pick.id, contour);
  if (refused) return [set({ refused, wanted: null })];
  return [
    { do: 'apply', label, edit: (document) => setContour(document, pick.id, contour) },
    set({ picked: next, refused: null }),
  ];
}

/** Keys on what is chosen; null: the key is left to the window. */
export function changeKey(key: string, modifiers: Modifiers, view: ToolView): Effect[] | null {
  const { outline, document } = view.model();
  const { picked } = outline;
  const contour = picked && contourOf(document.board, picked.id);
  if (!picked || !contour) return null;
  if (modifiers.ctrl) return key.toLowerCase() === 'd' && picked.id !== 'outline' ? duplicate(view, picked.id) : null;
  if (key === 'Delete' || key === 'Backspace') return removed(view, picked, contour);
  if (key === 'Insert')
    return change(view, picked, outlineEdits.insert, insertCorner(contour, picked.index), {
      ...picked,
      part: 'corner',
      index: picked.index + 1,
    });
  if (key.toLowerCase() === 'a' && picked.part === 'edge')
    return change(
      view,
      picked,
      outlineEdits.bend,
      setBulge(contour, picked.index, contour[picked.index].bulge ? 0 : QUARTER),
    );
  const arrow = ARROWS[key];
  if (!arrow) return null;
  const by = seenStep(arrow, (outline.gridMm || 0.5) * (modifiers.shift ? 10 : 1), view);
  return change(view, picked, outlineEdits.move(picked.part, contourName(picked.id)), nudged(contour, picked, by));
}

const QUARTER = Math.tan(Math.PI / 8);

function nudged(contour: Contour, { id, part, index }: ContourPick, by: Point): Contour | null {
  if (part === 'corner') return moveCorner(contour, index, { x: contour[index].x + by.x, y: contour[index].y + by.y });
  if (part === 'edge') return moveEdge(contour, index, by);
  return id === 'outline' ? null : moveContour(contour, by);
}

function removed(view: ToolView, picked: ContourPick, contour: Contour): Effect[] | null {
  if (picked.part === 'corner')
    return change(view, picked, outlineEdits.deleteCorner, deleteCorner(contour, picked.index), {
      ...picked,
      part: 'whole',
    });
  const { id } = picked;
  if (id === 'outline') return null;
  return [
    set({ picked: null, refused: null }),
    { do: 'apply', label: outlineEdits.removeCutout, edit: (document) => removeCutout(document, id) },
  ];
}

function duplicate(view: ToolView, index: number): Effect[] {
  const { board } = view.model().document;
  const copy = placeForCopy(board, index, view.model().outline.gridMm || 0.5);
  if (!copy) return [];
  return [
    { do: 'apply', label: outlineEdits.copyCutout, edit: (document) => addCutout(document, copy) },
    set({ picked: { id: board.cutouts.length, part: 'whole', index: 0 } }),
  ];
}
