import type { Point } from '../../shared-types/geometry.ts';
import { advance, closeShape, takeBack } from './outline/advance.ts';
import { changeKey, dragged, dragStarted, dropped, pickedAt } from './outline/change.ts';
import { fieldsOf } from './outline/draft.ts';
import type { ShapeDrag } from './outline/drags.ts';
import { begun, emptyDraft, type OutlineState } from './outline/outline-state.ts';
import { snapPoint } from './outline/snap.ts';
import { ARROWS, reachOf, seenStep } from './outline/steps.ts';
import {
  type Effect,
  ignore,
  type Modifiers,
  movedEnough,
  type PointerFacts,
  type Step,
  stay,
  type Tool,
  type ToolView,
} from './tool.ts';

type State =
  | { at: 'idle' }
  /** `first`: the press set the first point, so that letting go elsewhere sets the second. */
  | { at: 'pressed'; screen: Point; board: Point; first: boolean }
  | { at: 'dragging'; drag: ShapeDrag };
const IDLE: State = { at: 'idle' };

const set = (fields: Partial<OutlineState>): Effect => ({ do: 'outline', fields });

/**
 * Draws the outline and cutouts and changes them. Clicks set points, typed figures hold them, Tab goes to the next
 * figure, Enter sets the point or closes the shape, A bends the next edge, Alt lifts the snapping. What is under way
 * stands in the model, so that the panel shows the same.
 */
export const outlineTool: Tool<State> = {
  name: 'outline',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return pressed(event, view);
      case 'pointerMove':
        return moved(state, event, view);
      case 'pointerUp':
        return released(state, event, view);
      case 'keyDown':
        return keyed(state, event.key, event.modifiers, view);
      case 'abandon':
        return abandoned(state, view);
    }
  },
  cursor(state, view, screen) {
    if (state.at === 'dragging') return 'move';
    const { mode, picked } = view.model().outline;
    if (mode !== 'change') return 'crosshair';
    const hit = screen && pickedAt(view, view.toBoard(screen), picked, 9 / view.zoom());
    return hit ? (hit.part === 'bend' ? 'grab' : 'move') : 'default';
  },
};

/** A second finger pans and keeps the shape; another tool ends it. */
function abandoned(state: State, view: ToolView): Step<State> {
  const away = view.model().tool !== 'outline';
  const drop: Effect[] = state.at === 'dragging' ? [{ do: 'cancel' }] : [];
  const clear = set({ draft: emptyDraft, refused: null, wanted: null, picked: null });
  return stay<State>(IDLE, ...drop, ...(away ? [clear] : []));
}

/** The pencil's point: snapped, unless Alt or the panel lifts the snapping. */
function pencilAt(event: PointerFacts, view: ToolView) {
  const { outline, document } = view.model();
  if (event.modifiers.alt || !outline.snapping) return { at: event.board, kind: 'free' as const };
  const { points, arcEnd } = outline.draft;
  // The bend of an arc is free of what lies around it, but for corners and the grid.
  return snapPoint(event.board, {
    contours: [document.board.outline, ...document.board.cutouts],
    points,
    from: arcEnd || outline.mode === 'circle' || outline.mode === 'rectangle' ? null : (points.at(-1) ?? null),
    gridMm: outline.gridMm,
    reachMm: reachOf(event, view),
  });
}

function withPencil(event: PointerFacts, view: ToolView): OutlineState {
  const { outline } = view.model();
  const { at, kind } = pencilAt(event, view);
  return { ...outline, draft: { ...outline.draft, pencil: at, snap: kind } };
}

function pressed(event: PointerFacts, view: ToolView): Step<State> {
  const { outline, document, lengthUnit } = view.model();
  const press: State = { at: 'pressed', screen: event.screen, board: event.board, first: false };
  if (outline.mode === 'change') return stay<State>(press);
  const next = withPencil(event, view);
  const drags = outline.mode === 'rectangle' || outline.mode === 'circle' || outline.mode === 'slot';
  if (!drags || outline.draft.points.length > 0) return stay<State>(press, set({ draft: next.draft }));
  return stay<State>(
    { ...press, first: true },
    set({ draft: next.draft, ...advance(next, document.board, lengthUnit).fields }),
  );
}

function moved(state: State, event: PointerFacts, view: ToolView): Step<State> {
  if (view.model().outline.mode !== 'change') return stay<State>(state, set({ draft: withPencil(event, view).draft }));
  if (state.at === 'dragging') return stay<State>(state, ...dragged(state.drag, event, view));
  if (state.at !== 'pressed' || !movedEnough(state.screen, event)) return ignore<State>(state);
  const start = dragStarted(state.board, event, view);
  if (start) return stay<State>({ at: 'dragging', drag: start.drag }, ...start.effects);
  return event.touch
    ? stay<State>(
        { ...state, screen: event.screen },
        { do: 'pan', dx: event.screen.x - state.screen.x, dy: event.screen.y - state.screen.y },
      )
    : ignore<State>(state);
}

function released(state: State, event: PointerFacts, view: ToolView): Step<State> {
  if (state.at === 'dragging') return stay<State>(IDLE, ...dropped(state.drag, event, view));
  if (state.at !== 'pressed') return stay<State>(IDLE);
  const { outline } = view.model();
  if (outline.mode === 'change') {
    if (movedEnough(state.screen, event)) return stay<State>(IDLE);
    const hit = pickedAt(view, event.board, outline.picked, reachOf(event, view));
    const picked = hit && { id: hit.id, part: hit.part === 'bend' ? ('edge' as const) : hit.part, index: hit.index };
    return stay<State>(IDLE, set({ picked, refused: null }));
  }
  const next = withPencil(event, view);
  // A click that set the first point waits for the second.
  if (state.first && !movedEnough(state.screen, event)) return stay<State>(IDLE, set({ draft: next.draft }));
  return stay<State>(IDLE, ...effectsOf(next, view, event.modifiers.shift ? advanceWithBays : advance));
}

/** Shift takes a cutout over the edge off the outline. */
const advanceWithBays: typeof advance = (state, board, unit) => advance(state, board, unit, true);

/** Runs a step of drawing on the state with its newest pencil. */
function effectsOf(next: OutlineState, view: ToolView, step: typeof advance): Effect[] {
  const { document, lengthUnit } = view.model();
  const { fields, apply } = step(next, document.board, lengthUnit);
  return [set({ draft: next.draft, ...fields }), ...(apply ? [{ do: 'apply' as const, ...apply }] : [])];
}

function keyed(state: State, key: string, modifiers: Modifiers, view: ToolView): Step<State> {
  const { outline } = view.model();
  if (key === 'Escape') return escaped(state, outline);
  if (outline.mode === 'change') {
    const effects = state.at === 'idle' ? changeKey(key, modifiers, view) : null;
    return effects ? stay<State>(IDLE, ...effects) : ignore(state);
  }
  if (modifiers.ctrl) {
    if (key.toLowerCase() !== 'z' || outline.draft.points.length === 0) return ignore(state);
    return stay<State>(IDLE, set(takeBack(outline)));
  }
  const typed = typedKey(key, modifiers, outline);
  if (typed) return stay<State>(state, set({ draft: { ...outline.draft, ...typed }, refused: null }));
  return drawingKey(state, key, modifiers, outline, view);
}

/** First what is typed goes, then the shape, then the mode, then the tool. */
function escaped(state: State, outline: OutlineState): Step<State> {
  const back: Effect[] = state.at === 'dragging' ? [{ do: 'cancel' }] : [];
  const { draft, mode, picked, refused } = outline;
  if (state.at === 'dragging') return stay<State>(IDLE, ...back, set({ refused: null, wanted: null }));
  if (Object.keys(draft.typed).length > 0) return stay<State>(IDLE, set({ draft: { ...draft, typed: {}, field: 0 } }));
  if (begun(draft)) return stay<State>(IDLE, set({ draft: { ...emptyDraft, pencil: draft.pencil }, refused: null }));
  if (mode !== 'change') return stay<State>(IDLE, set({ mode: 'change', draft: emptyDraft, refused: null }));
  if (picked || refused) return stay<State>(IDLE, set({ picked: null, refused: null, wanted: null }));
  return stay<State>(IDLE, { do: 'useTool', tool: 'select' });
}

/** Digits go into the field at hand, Tab to the next one, Backspace takes a digit back. Null: not a key of fields. */
function typedKey(key: string, { shift }: Modifiers, outline: OutlineState): Partial<OutlineState['draft']> | null {
  const { typed, field } = outline.draft;
  const fields = fieldsOf(outline);
  const name = fields[field % fields.length];
  const text = typed[name] ?? '';
  if (/^[0-9.,-]$/.test(key)) return { typed: { ...typed, [name]: text + key } };
  if (key === 'Tab') return { field: (field + (shift ? fields.length - 1 : 1)) % fields.length };
  if (key !== 'Backspace' || text === '') return null;
  const { [name]: _, ...rest } = typed;
  return { typed: text.length > 1 ? { ...rest, [name]: text.slice(0, -1) } : rest };
}

function drawingKey(
  state: State,
  key: string,
  { shift }: Modifiers,
  outline: OutlineState,
  view: ToolView,
): Step<State> {
  const { draft, mode } = outline;
  if (key === 'Enter') {
    const nothingTyped = Object.keys(draft.typed).length === 0 && !draft.arcEnd;
    const closes = mode === 'polygon' && nothingTyped && draft.points.length > 1;
    return stay<State>(IDLE, ...effectsOf(outline, view, closes ? closeShape : shift ? advanceWithBays : advance));
  }
  if (key === 'Backspace' || key === 'Delete')
    return draft.points.length > 0 ? stay<State>(IDLE, set(takeBack(outline))) : ignore(state);
  if (key.toLowerCase() === 'a' && mode === 'polygon')
    return stay<State>(state, set({ draft: { ...draft, arc: !draft.arc, arcEnd: null, typed: {}, field: 0 } }));
  const arrow = ARROWS[key];
  if (!arrow) return ignore(state);
  return stay<State>(state, set({ draft: { ...draft, pencil: stepped(outline, arrow, view), snap: 'grid' } }));
}

/** The pencil moved by one step of the grid as seen; where there is none yet it starts at the last point. */
function stepped({ draft, gridMm }: OutlineState, arrow: Point, view: ToolView): Point {
  const at = draft.pencil ?? draft.points.at(-1) ?? { x: 0, y: 0 };
  const by = seenStep(arrow, gridMm || 0.5, view);
  return { x: at.x + by.x, y: at.y + by.y };
}
