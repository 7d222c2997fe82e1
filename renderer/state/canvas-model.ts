import type { Assessment, HeatMoment } from '../../shared-types/evaluation.ts';
import type { Box, Point, Side } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { LengthUnit, TemperatureUnit } from '../../shared-types/units.ts';
import type { Placing } from '../editing/placing.ts';
import type { Pictures } from '../photos/shown-photos.ts';
import type { OutlineState } from '../tools/outline/outline-state.ts';

/** Tools that draw on the board itself: of the stage Board only. */
export const BOARD_TOOLS = ['outline', 'place', 'body', 'pin1', 'cover'] as const;
export type ToolName = 'select' | 'hand' | 'site' | 'watch' | 'match' | (typeof BOARD_TOOLS)[number];

/** What can be picked on the canvas. */
export type Pick =
  | { kind: 'part'; refdes: string }
  | { kind: 'site'; siteId: string }
  | { kind: 'watch'; tagId: string }
  | { kind: 'cover'; id: string };

/** Everything the canvas draws. Plain data: the canvas keeps no document of its own. */
export type CanvasModel = {
  document: TicketDocument;
  assessment: Assessment | null;
  /** True while the shown assessment belongs to an older revision. */
  stale: boolean;
  /** Map of one moment of the shown run, in place of its peaks. */
  moment: HeatMoment | null;
  /** Refdes of the selected parts. */
  selection: ReadonlySet<string>;
  selectedSiteId: string | null;
  selectedWatchId: string | null;
  selectedCoverId: string | null;
  /** True in the stage Board: only there the board itself may be moved about. */
  boardOpen: boolean;
  placing: Placing;
  shownSide: Side;
  /** How the view is turned, degrees counter-clockwise, on top of mirroring the bottom side. */
  viewTurnDeg: number;
  theme: 'light' | 'dark';
  temperatureUnit: TemperatureUnit;
  lengthUnit: LengthUnit;
  wheelDoes: 'zoom' | 'pan';
  layers: { heat: boolean; isotherms: boolean; rings: boolean; labels: boolean };
  /** Heat run whose peaks are shown; null: the worst over all runs. */
  shownRunId: string | null;
  tool: ToolName;
  /** Decoded pictures of photos. */
  pictures: Pictures;
  /** Photos are hidden for a moment. */
  blinked: boolean;
  /** Photo that is being matched, and the pair chosen on it. */
  photoId: string | null;
  pairId: string | null;
  /** How the outline tool is set, and the shape under way. */
  outline: OutlineState;
};

/** A pure edit of the document. */
export type Edit = (document: TicketDocument) => TicketDocument;

/** What tools may do to the rest of the window. One gesture is one undo step; cancel restores what was before begin. */
export type Workbench = {
  model(): CanvasModel;
  begin(label: string): void;
  /** Replaces the gesture's effect so far by this edit of the document as it was at begin. */
  preview(edit: Edit): void;
  commit(): void;
  cancel(): void;
  /** One edit, one undo step. */
  apply(label: string, edit: Edit): void;
  select(picks: readonly Pick[], mode: 'replace' | 'add' | 'toggle'): void;
  useTool(tool: ToolName): void;
  /** Chooses a match pair of the photo that is being matched. */
  choosePair(pairId: string | null): void;
  setOutline(fields: Partial<OutlineState>): void;
  setPlacing(fields: Partial<Placing>): void;
  /** Says a sentence in the status line for a few seconds. */
  hint(text: string): void;
  /** Pointer over the board (mm) and the peak temperature of the shown face there; null: off the board. */
  hover(at: Point | null, temperatureC: number | null, pick: Pick | null): void;
  /** Right button: the menu of what lies under the pointer, at page coordinates. */
  openMenu(pick: Pick | null, page: Point): void;
};

/** The mounted canvas. */
export type CanvasHandle = {
  update(model: CanvasModel): void;
  /** Fits a box of the board (mm) into the view; null: the whole board. */
  fit(box: Box | null): void;
  zoomBy(factor: number): void;
  /** Where the eye is: the board point in the middle (mm) and the zoom; null: the whole board is in view. */
  eye(): { centre: Point; zoom: number } | null;
  lookAt(eye: { centre: Point; zoom: number }): void;
  /** Keys go to the drawing from now on. */
  focus(): void;
  /** Screen pixels per mm. */
  zoom(): number;
  /** Board point (mm) to CSS pixels relative to the host element, for tests and menus. */
  toScreen(at: Point): Point;
  rendererName(): string;
  destroy(): void;
};

/** `mountCanvas(host, workbench, onView)` in canvas/mount-canvas.ts returns this once the renderer is ready. */
export type MountCanvas = (
  host: HTMLElement,
  workbench: Workbench,
  onView: (zoom: number) => void,
) => Promise<CanvasHandle>;
