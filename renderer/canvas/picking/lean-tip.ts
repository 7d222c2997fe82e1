import { type Point, turnVector } from '../../../shared-types/geometry.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';

/** Length of the arrow of a leaning nozzle where the footprint hardly moves, px. */
const LEAST_PX = 26;
const REACH_PX = { mouse: 8, touch: 16 };

/** An arrow from a rework area's middle along the heading, as long as the footprint moves; board mm. */
export type LeanArrow = { middle: Point; tip: Point };

/** The arrows of the shown side; none where the nozzle stands upright or its kind cannot lean. `zoom`: px per mm. */
export function leanArrows(
  { document, shownSide }: Pick<CanvasModel, 'document' | 'shownSide'>,
  zoom: number,
): LeanArrow[] {
  const { nozzle } = document.plan.station;
  if (!('tiltDeg' in nozzle) || nozzle.tiltDeg <= 0) return [];
  const shiftMm = nozzle.standOffMm * Math.tan((nozzle.tiltDeg * Math.PI) / 180);
  const along = turnVector(Math.max(LEAST_PX / zoom, shiftMm), 0, nozzle.headingDeg);
  const here = document.plan.sites.filter((site) => site.side === shownSide);
  return here.map(({ area: { x, y } }) => ({ middle: { x, y }, tip: { x: x + along.x, y: y + along.y } }));
}

/** The arrow whose head lies under a board point; null: none. */
export function leanArrowAt(
  model: Pick<CanvasModel, 'document' | 'shownSide'>,
  zoom: number,
  at: Point,
  touch: boolean,
): LeanArrow | null {
  const reachMm = REACH_PX[touch ? 'touch' : 'mouse'] / zoom;
  return leanArrows(model, zoom).find(({ tip }) => Math.hypot(tip.x - at.x, tip.y - at.y) <= reachMm) ?? null;
}
