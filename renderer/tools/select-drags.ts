import type { Point, TurnedRectangle } from '../../shared-types/geometry.ts';
import { canvasWords } from '../../shared-types/words/canvas.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { type Grip, grippedArea } from '../canvas/picking/grips.ts';
import { coverById, setCover, setCoverArea } from '../editing/covers.ts';
import { moveParts } from '../editing/move-parts.ts';
import { moveSiteArea } from '../editing/sites.ts';
import { setNozzle } from '../editing/station.ts';
import { moveWatchPoint } from '../editing/watch-points.ts';
import { headingTo, movedArea, resizedArea, turnedArea } from './area-gestures.ts';
import { boardStep } from './screen-steps.ts';
import type { Effect, Modifiers, PointerFacts, ToolView } from './tool.ts';

/** A drag of the select tool and what it started from. */
export type Drag =
  | {
      kind: 'area';
      target: { kind: 'site' | 'cover'; id: string };
      label: string;
      start: TurnedRectangle;
      from: Point;
      grip: Grip | null;
      /** The target's centre, to which a moved area snaps. */
      magnet: Point | null;
    }
  | { kind: 'watch'; tagId: string; label: string; from: Point; start: Point }
  /** The head of a leaning nozzle's arrow, round the middle of its rework area. */
  | { kind: 'heading'; label: string; middle: Point };

const MAGNET_PX = 7;
/** One step of an arrow key, mm; with Shift ten. */
const NUDGE_MM = 0.5;

/** The gesture's effect for where the pointer is now. */
export function dragEffects(drag: Drag, event: PointerFacts, view: ToolView): Effect[] {
  if (drag.kind === 'watch') {
    const round = (value: number) => Math.round(value * 100) / 100;
    const to = {
      x: round(drag.start.x + event.board.x - drag.from.x),
      y: round(drag.start.y + event.board.y - drag.from.y),
    };
    const under = view.partAt(to);
    return [{ do: 'preview', edit: (document) => moveWatchPoint(document, drag.tagId, to, under) }];
  }
  if (drag.kind === 'heading') {
    const headingDeg = headingTo(drag.middle, event.board, event.modifiers);
    return [{ do: 'preview', edit: (document) => setNozzle(document, { headingDeg }) }];
  }
  const area = areaOf(drag, event, view);
  const { kind, id } = drag.target;
  const setArea = kind === 'site' ? moveSiteArea : setCoverArea;
  return [{ do: 'preview', edit: (document) => setArea(document, id, area) }];
}

function areaOf(drag: Drag & { kind: 'area' }, event: PointerFacts, view: ToolView): TurnedRectangle {
  const { grip, start, from } = drag;
  if (grip?.kind === 'turn') return turnedArea(start, from, event.board, event.modifiers);
  if (grip?.kind === 'resize') return resizedArea(start, grip, event.board, event.modifiers);
  const magnet = drag.magnet && { at: drag.magnet, reachMm: MAGNET_PX / view.zoom() };
  return movedArea(start, from, event.board, magnet, event.modifiers);
}

/**
 * An arrow key moves what is selected one step as seen, with Shift ten: a rework area, a thermocouple, in the stage
 * Board parts or a cover. Null: nothing to move.
 */
export function nudge(key: string, modifiers: Modifiers, view: ToolView): Effect | null {
  const { document, selectedSiteId, selectedWatchId, placing, boardOpen } = view.model();
  const onBoard = boardOpen ? nudgeOnBoard(boardStep(key, modifiers, placing.gridMm || 0.1, view), view) : null;
  if (onBoard) return onBoard;
  const by = boardStep(key, modifiers, NUDGE_MM, view);
  if (!by) return null;
  const site = document.plan.sites.find((one) => one.id === selectedSiteId);
  if (site) {
    const area = { ...site.area, x: tidy(site.area.x + by.x), y: tidy(site.area.y + by.y) };
    const label = canvasWords.gestures.moveArea(site.name);
    return { do: 'apply', label, edit: (before) => moveSiteArea(before, site.id, area) };
  }
  const tag = document.plan.tags.find((one) => one.id === selectedWatchId);
  if (tag?.kind !== 'watchPoint') return null;
  const to = { x: tidy(tag.x + by.x), y: tidy(tag.y + by.y) };
  const label = canvasWords.gestures.moveWatchPoint(tag.name);
  return { do: 'apply', label, edit: (before) => moveWatchPoint(before, tag.id, to, view.partAt(to)) };
}

const tidy = (value: number): number => Math.round(value * 1000) / 1000;

function nudgeOnBoard(by: Point | null, view: ToolView): Effect | null {
  const { document, selection, selectedCoverId } = view.model();
  if (!by) return null;
  if (selection.size > 0) {
    const refdes = [...selection];
    return { do: 'apply', label: partEditWords.move(refdes), edit: (before) => moveParts(before, refdes, by) };
  }
  const cover = coverById(document, selectedCoverId);
  if (!cover) return null;
  const to = { x: tidy(cover.x + by.x), y: tidy(cover.y + by.y) };
  return { do: 'apply', label: partEditWords.cover(cover.id), edit: (before) => setCover(before, cover.id, to) };
}

export const dragCursor = (drag: Drag): string =>
  drag.kind === 'heading' || (drag.kind === 'area' && drag.grip?.kind === 'turn') ? 'grabbing' : 'move';

/** Cursor of a handle: the double arrow that lies along the way it can be pulled on screen. */
export function gripCursor(grip: Grip, view: ToolView): string {
  if (grip.kind === 'turn') return 'grab';
  const turn = grippedArea(view.model())?.turnDeg ?? 0;
  const radians = (turn * Math.PI) / 180;
  const pull = {
    x: grip.ex * Math.cos(radians) - grip.ey * Math.sin(radians),
    y: grip.ex * Math.sin(radians) + grip.ey * Math.cos(radians),
  };
  const right = view.toBoard({ x: 100, y: 0 });
  const down = view.toBoard({ x: 0, y: 100 });
  const origin = view.toBoard({ x: 0, y: 0 });
  const along = (to: Point) => pull.x * (to.x - origin.x) + pull.y * (to.y - origin.y);
  const octant = Math.round(Math.atan2(along(down), along(right)) / (Math.PI / 4)) & 3;
  return ['ew-resize', 'nwse-resize', 'ns-resize', 'nesw-resize'][octant];
}
