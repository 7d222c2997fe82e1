import type { Part } from '../../shared-types/board.ts';
import type { Point, TurnedRectangle } from '../../shared-types/geometry.ts';
import type { Grip } from '../canvas/picking/grips.ts';
import type { Placing } from '../editing/placing.ts';
import type { CanvasModel, Edit, Pick, ToolName } from '../state/canvas-model.ts';
import type { OutlineState } from './outline/outline-state.ts';

/** Read afresh from every event: a key pressed or let go in the middle of a gesture counts at once. */
export type Modifiers = { shift: boolean; ctrl: boolean; alt: boolean };

export type PointerFacts = {
  /** CSS pixels from the upper left of the canvas. */
  screen: Point;
  /** Board point, mm. */
  board: Point;
  modifiers: Modifiers;
  touch: boolean;
};

export type ToolEvent =
  | ({ type: 'pointerDown' | 'pointerMove' | 'pointerUp' } & PointerFacts)
  | { type: 'keyDown'; key: string; modifiers: Modifiers }
  /** The gesture is taken away: another tool, a second finger, the pointer lost. */
  | { type: 'abandon' };

/** What a tool asks of the window and the canvas. Plain data, so that a tool is a pure function. */
export type Effect =
  | { do: 'select'; picks: Pick[]; mode: 'replace' | 'add' | 'toggle' }
  | { do: 'begin'; label: string }
  | { do: 'preview'; edit: Edit }
  | { do: 'commit' }
  | { do: 'cancel' }
  | { do: 'apply'; label: string; edit: Edit; thenSelect?: 'site' | 'watch' }
  | { do: 'useTool'; tool: ToolName }
  | { do: 'outline'; fields: Partial<OutlineState> }
  | { do: 'choosePair'; pairId: string | null }
  | { do: 'placing'; fields: Partial<Placing> }
  /** A sentence in the status line, for a few seconds. */
  | { do: 'hint'; text: string }
  | { do: 'pan'; dx: number; dy: number }
  | { do: 'zoom'; at: Point; factor: number }
  /** Shapes that exist only while a gesture lasts; null takes them away. */
  | { do: 'sketch'; sketch: Sketch | null };

/** A point of a photo (pixels) to be shown magnified beside a place on the screen. */
type LensSpot = { photoId: string; at: Point; screen: Point };

/**
 * Parts on their way to another place: they are drawn at `by` (mm) from where they are, and faintly there. `parts` and `names`
 * stay the same objects while the gesture lasts.
 */
export type CarriedParts = {
  parts: readonly Part[];
  names: ReadonlySet<string>;
  by: Point;
  guides: [Point, Point][];
};

export type Sketch =
  | { kind: 'marquee'; from: Point; to: Point }
  /** `measured`: with its sides written beside it. */
  | { kind: 'area'; area: TurnedRectangle; measured?: boolean }
  /** The part that would be placed, at a board point, and the lines it snapped to. */
  | { kind: 'ghost'; at: Point; guides: [Point, Point][] }
  /** Parts that would be placed. */
  | { kind: 'bodies'; parts: readonly Part[]; guides: [Point, Point][] }
  | ({ kind: 'carried' } & CarriedParts)
  | { kind: 'lens'; lens: LensSpot }
  /** A match pair in the making, board mm: the photo's point as it lies, and the drawing's. */
  | { kind: 'pair'; from: Point; to: Point; snapped: boolean; lens: LensSpot | null };

/** What a tool may look at. */
export type ToolView = {
  model(): CanvasModel;
  /** What lies under a screen point. */
  pick(screen: Point, touch: boolean): Pick | null;
  /** Parts whose body touches the rectangle between two screen points. */
  partsWithin(from: Point, to: Point): Pick[];
  /** The handle of the selected rework area under a screen point. */
  grip(screen: Point, touch: boolean): Grip | null;
  toBoard(screen: Point): Point;
  /** Refdes of the part under a board point, or null. */
  partAt(board: Point): string | null;
  /** CSS pixels per mm. */
  zoom(): number;
};

export type Step<State> = {
  state: State;
  effects: Effect[] /** False: the key is left to the window. */;
  handled: boolean;
};

export type Tool<State> = {
  name: ToolName;
  idle: State;
  step(state: State, event: ToolEvent, view: ToolView): Step<State>;
  /** CSS cursor for a state, and for what lies under the pointer while idle. */
  cursor(state: State, view: ToolView, screen: Point | null): string;
};

export const stay = <State>(state: State, ...effects: Effect[]): Step<State> => ({ state, effects, handled: true });
export const ignore = <State>(state: State): Step<State> => ({ state, effects: [], handled: false });

/** Screen pixels that the pointer may tremble before a press becomes a drag. */
export const DRAG_PX = { mouse: 4, touch: 10 };

export const movedEnough = (from: Point, event: PointerFacts): boolean =>
  Math.hypot(event.screen.x - from.x, event.screen.y - from.y) >= (event.touch ? DRAG_PX.touch : DRAG_PX.mouse);

/** Shift adds, Ctrl toggles, else the selection is replaced. */
export const selectMode = ({ shift, ctrl }: Modifiers): 'replace' | 'add' | 'toggle' =>
  ctrl ? 'toggle' : shift ? 'add' : 'replace';
