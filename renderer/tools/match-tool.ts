import type { Point } from '../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../shared-types/photo.ts';
import { mapPoint } from '../../shared-types/rules/plane-maps.ts';
import { photoEdits } from '../../shared-types/words/window/photo.ts';
import { addPair, removePair, setPair } from '../editing/photos.ts';
import { placeOf } from '../photos/place-of.ts';
import { type Anchor, anchorNear, matchedPhoto, type PairEnd, pairEndNear, photoAt } from './match-points.ts';
import { type Effect, ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

/** `photo`: a point of the photo was clicked, its place on the drawing is wanted. */
type Half = { photoId: string; photo: Point; from: Point };
type State =
  | { at: 'idle' }
  | { at: 'pressed'; screen: Point }
  | { at: 'half'; half: Half; pressedAt: Point | null }
  | { at: 'held'; end: PairEnd; screen: Point; moving: boolean };

const IDLE: State = { at: 'idle' };
const NO_SKETCH: Effect = { do: 'sketch', sketch: null };
const REACH_PX = { mouse: 12, touch: 24 };
const reachMm = (event: PointerFacts, view: ToolView) => (event.touch ? REACH_PX.touch : REACH_PX.mouse) / view.zoom();

/** Match points: a click in the photo, then its place on the drawing; pairs are dragged by either end. */
export const matchTool: Tool<State> = {
  name: 'match',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return pressed(state, event, view);
      case 'pointerMove':
        return moved(state, event, view);
      case 'pointerUp':
        return lifted(state, event, view);
      case 'keyDown':
        return keyed(state, event.key, event.modifiers.shift, view);
      case 'abandon':
        return stay<State>(IDLE, NO_SKETCH);
    }
  },
  cursor: () => 'crosshair',
};

function pressed(state: State, event: PointerFacts, view: ToolView) {
  if (state.at === 'half')
    return stay<State>({ ...state, pressedAt: event.screen }, halfSketch(state.half, event, view));
  const end = pairEndNear(view.model(), event.board, reachMm(event, view));
  if (end)
    return stay<State>(
      { at: 'held', end, screen: event.screen, moving: false },
      { do: 'choosePair', pairId: end.pairId },
    );
  return stay<State>({ at: 'pressed', screen: event.screen }, lensOver(event, view));
}

function moved(state: State, event: PointerFacts, view: ToolView) {
  if (state.at === 'half') return stay<State>(state, halfSketch(state.half, event, view));
  if (state.at !== 'held') return stay<State>(state, lensOver(event, view));
  if (!state.moving && !movedEnough(state.screen, event)) return ignore<State>(state);
  return stay<State>({ ...state, moving: true }, heldSketch(state.end, event, view));
}

function lifted(state: State, event: PointerFacts, view: ToolView) {
  if (state.at === 'held')
    return state.moving
      ? stay<State>(IDLE, NO_SKETCH, ...dropPair(state.end, event, view))
      : stay<State>(IDLE, NO_SKETCH);
  if (state.at === 'half') {
    if (!state.pressedAt || (!event.touch && movedEnough(state.pressedAt, event)))
      return stay<State>({ ...state, pressedAt: null }, halfSketch(state.half, event, view));
    return stay<State>(IDLE, NO_SKETCH, pairOf(state.half, anchorOf(event, view)));
  }
  // A finger lifts off where the lens showed it, a mouse must have stayed.
  if (state.at !== 'pressed' || (!event.touch && movedEnough(state.screen, event))) return stay<State>(IDLE, NO_SKETCH);
  const found = photoAt(view.model(), event.board);
  if (!found) return stay<State>(IDLE, NO_SKETCH);
  const half: Half = { photoId: found.photo.id, photo: found.point, from: event.board };
  return stay<State>({ at: 'half', half, pressedAt: null }, halfSketch(half, event, view));
}

function keyed(state: State, key: string, far: boolean, view: ToolView) {
  if (state.at === 'half' && key === 'Enter')
    return stay<State>(IDLE, NO_SKETCH, pairOf(state.half, { board: state.half.from, anchor: 'free', refdes: null }));
  if (key === 'Escape')
    return state.at === 'idle'
      ? stay<State>(IDLE, NO_SKETCH, { do: 'useTool', tool: 'select' })
      : stay<State>(IDLE, NO_SKETCH);
  const chosen = chosenPair(view);
  if (state.at !== 'idle' || !chosen) return ignore<State>(state);
  if (key === 'Delete' || key === 'Backspace')
    return stay<State>(
      IDLE,
      apply(photoEdits.removePair, (d) => removePair(d, chosen.photo.id, chosen.pair.id)),
    );
  const step = ARROWS[key];
  if (!step) return ignore<State>(state);
  const by = (far ? 10 : 1) * Math.max(1, chosen.photo.widthPx / chosen.photo.working.widthPx);
  const photo = { x: chosen.pair.photo.x + step[0] * by, y: chosen.pair.photo.y + step[1] * by };
  return stay<State>(
    IDLE,
    apply(photoEdits.movePair, (d) => setPair(d, chosen.photo.id, chosen.pair.id, { photo })),
  );
}

/** Arrows move the photo's point, by pixels of the picture as it was taken. */
const ARROWS: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

type Apply = Extract<Effect, { do: 'apply' }>;
const apply = (label: string, edit: Apply['edit']): Effect => ({ do: 'apply', label, edit });

function chosenPair(view: ToolView) {
  const model = view.model();
  const photo = matchedPhoto(model);
  const pair = photo?.pairs.find((one) => one.id === model.pairId);
  return photo && pair ? { photo, pair } : null;
}

const pairOf = ({ photoId, photo }: Half, anchor: Anchor): Effect =>
  apply(photoEdits.addPair, (document) => addPair(document, photoId, { photo, ...anchor }));

/** The drawing's place under the pointer; Alt suspends snapping. */
function anchorOf(event: PointerFacts, view: ToolView): Anchor {
  const near = event.modifiers.alt ? null : anchorNear(view.model(), event.board, reachMm(event, view));
  return near ?? { board: event.board, anchor: 'free', refdes: null };
}

function halfSketch(half: Half, event: PointerFacts, view: ToolView): Effect {
  const { board, anchor } = anchorOf(event, view);
  return { do: 'sketch', sketch: { kind: 'pair', from: half.from, to: board, snapped: anchor !== 'free', lens: null } };
}

function lensOver(event: PointerFacts, view: ToolView): Effect {
  const found = photoAt(view.model(), event.board);
  const lens = found && { photoId: found.photo.id, at: found.point, screen: event.screen };
  return { do: 'sketch', sketch: lens && { kind: 'lens', lens } };
}

/** The photo lies still while a pair is dragged: its map follows when the pair is let go. */
function draggedPair({ pairId }: PairEnd, view: ToolView) {
  const photo = matchedPhoto(view.model());
  const pair = photo?.pairs.find((one) => one.id === pairId);
  return photo && pair ? { photo, pair, place: placeOf(photo, view.model().document.board) } : null;
}

const withinPhoto = ({ x, y }: Point, { widthPx, heightPx }: BoardPhoto): Point => ({
  x: Math.max(0, Math.min(widthPx, x)),
  y: Math.max(0, Math.min(heightPx, y)),
});

function heldSketch(end: PairEnd, event: PointerFacts, view: ToolView): Effect {
  const dragged = draggedPair(end, view);
  if (!dragged) return NO_SKETCH;
  const { photo, pair, place } = dragged;
  if (end.end === 'board') {
    const { board, anchor } = anchorOf(event, view);
    const from = mapPoint(place.toBoard, pair.photo);
    return { do: 'sketch', sketch: { kind: 'pair', from, to: board, snapped: anchor !== 'free', lens: null } };
  }
  const at = withinPhoto(mapPoint(place.toPhoto, event.board), photo);
  const lens = { photoId: photo.id, at, screen: event.screen };
  const from = mapPoint(place.toBoard, at);
  return { do: 'sketch', sketch: { kind: 'pair', from, to: pair.board, snapped: false, lens } };
}

function dropPair(end: PairEnd, event: PointerFacts, view: ToolView): Effect[] {
  const dragged = draggedPair(end, view);
  if (!dragged) return [];
  const { photo, pair, place } = dragged;
  const fields =
    end.end === 'board' ? anchorOf(event, view) : { photo: withinPhoto(mapPoint(place.toPhoto, event.board), photo) };
  return [apply(photoEdits.movePair, (document) => setPair(document, photo.id, pair.id, fields))];
}
