import { type Point, type TurnedRectangle, turnVector } from '../../../shared-types/geometry.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';

/** A handle of a selected rework area. `ex`, `ey`: which corner or edge, in the area's own axes. */
export type Grip = { kind: 'resize'; ex: -1 | 0 | 1; ey: -1 | 0 | 1 } | { kind: 'turn' };

/** How far the turning handle stands off the area's edge, CSS pixels. */
export const TURN_GRIP_PX = 24;
const GRIP_REACH_PX = { mouse: 8, touch: 20 };
/** Below this size on screen the handles on the edges would cover those on the corners. */
const EDGE_GRIP_MIN_PX = 44;

type ToScreen = (at: Point) => Point;

/** Every handle of an area and where it stands on screen. The turning one stands off the edge that looks uppermost. */
export function gripsOf(area: TurnedRectangle, toScreen: ToScreen): { grip: Grip; at: Point }[] {
  const onArea = (ex: number, ey: number): Point => {
    const own = turnVector((ex * area.lengthMm) / 2, (ey * area.widthMm) / 2, area.turnDeg);
    return toScreen({ x: area.x + own.x, y: area.y + own.y });
  };
  const centre = onArea(0, 0);
  const long = 2 * distance(centre, onArea(1, 0)) >= EDGE_GRIP_MIN_PX;
  const wide = 2 * distance(centre, onArea(0, 1)) >= EDGE_GRIP_MIN_PX;
  const found: { grip: Grip; at: Point }[] = [];
  for (const ex of [-1, 0, 1] as const)
    for (const ey of [-1, 0, 1] as const) {
      const corner = ex !== 0 && ey !== 0;
      if (corner || (ex === 0 && ey !== 0 && long) || (ey === 0 && ex !== 0 && wide))
        found.push({ grip: { kind: 'resize', ex, ey }, at: onArea(ex, ey) });
    }
  const edges = [onArea(1, 0), onArea(-1, 0), onArea(0, 1), onArea(0, -1)];
  const upper = edges.reduce((best, edge) => (edge.y < best.y - 0.01 ? edge : best));
  const reach = distance(centre, upper) || 1;
  found.push({
    grip: { kind: 'turn' },
    at: {
      x: upper.x + ((upper.x - centre.x) / reach) * TURN_GRIP_PX,
      y: upper.y + ((upper.y - centre.y) / reach) * TURN_GRIP_PX,
    },
  });
  return found;
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The handle under a screen point; the nearest one wins. */
export function gripAt(area: TurnedRectangle, toScreen: ToScreen, at: Point, touch: boolean): Grip | null {
  let best: Grip | null = null;
  let nearest = touch ? GRIP_REACH_PX.touch : GRIP_REACH_PX.mouse;
  for (const { grip, at: place } of gripsOf(area, toScreen)) {
    const off = distance(place, at);
    if (off > nearest) continue;
    nearest = off;
    best = grip;
  }
  return best;
}

/** The area that carries handles: the selected rework area, or in the stage Board the selected cover; null: neither. */
export function grippedArea(model: CanvasModel): TurnedRectangle | null {
  const { document, selectedSiteId, selectedCoverId, shownSide, boardOpen } = model;
  const site = document.plan.sites.find((one) => one.id === selectedSiteId);
  if (site) return site.side === shownSide ? site.area : null;
  const cover = boardOpen ? document.board.covers.find((one) => one.id === selectedCoverId) : undefined;
  return cover && cover.side === shownSide ? { ...cover, turnDeg: cover.turn } : null;
}
