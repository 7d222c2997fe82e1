import { produce } from 'immer';
import type { Board } from '../../shared-types/board.ts';
import { boxOfContour } from '../../shared-types/contour/edges.ts';
import type { Point } from '../../shared-types/geometry.ts';
import type { Plan, TicketDocument } from '../../shared-types/plan.ts';
import { boardIn, type Frame, headed, negated, placed, turned } from '../../shared-types/rules/board-frame.ts';

/** Every place in board and plan goes along, the preheater and the nozzle's heading too, so that the heat stays what it was. */
export type { Frame } from '../../shared-types/rules/board-frame.ts';

function put(frame: Frame, item: Point): void {
  Object.assign(item, placed(frame, item));
}

function placeInPlan(frame: Frame, plan: Plan): void {
  for (const { area } of plan.sites) {
    put(frame, area);
    area.turnDeg = turned(frame, area.turnDeg);
  }
  for (const tag of plan.tags) if (tag.kind === 'watchPoint') put(frame, tag);
  for (const { segments } of plan.heatRuns)
    for (const { nozzleCentre } of segments) if (nozzleCentre) put(frame, nozzleCentre);
  const { nozzle, preheater } = plan.station;
  if (nozzle.kind !== 'infrared') nozzle.headingDeg = headed(frame, nozzle.headingDeg);
  if (nozzle.kind !== 'round') nozzle.turnDeg = turned(frame, nozzle.turnDeg);
  if (preheater.centre) put(frame, preheater.centre);
  if (preheater.sensor) put(frame, preheater.sensor);
  if (frame.quarters % 2 === 1) [preheater.lengthMm, preheater.widthMm] = [preheater.widthMm, preheater.lengthMm];
}

/** Board and plan in another frame. */
export function placeBoard(document: TicketDocument, frame: Frame): TicketDocument {
  return { board: boardIn(frame, document.board), plan: produce(document.plan, (plan) => placeInPlan(frame, plan)) };
}

/** Moves the board so that the point becomes 0, 0. */
export const moveOrigin = (document: TicketDocument, to: Point): TicketDocument =>
  placeBoard(document, { mirror: false, quarters: 0, by: { x: negated(to.x), y: negated(to.y) } });

/** Lower left corner of the box round the outline. */
export function lowerLeft(board: Board): Point {
  const { minX, minY } = boxOfContour(board.outline);
  return { x: minX, y: minY };
}

/** Mirrors or turns everything; the lower left corner of the outline's box keeps its place. */
export function turnBoard(document: TicketDocument, change: Pick<Frame, 'mirror' | 'quarters'>): TicketDocument {
  const box = boxOfContour(document.board.outline);
  const corners = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => ({ x, y })));
  const moved = corners.map((corner) => placed({ ...change, by: { x: 0, y: 0 } }, corner));
  const by = {
    x: box.minX - Math.min(...moved.map((corner) => corner.x)),
    y: box.minY - Math.min(...moved.map((corner) => corner.y)),
  };
  return placeBoard(document, { ...change, by });
}
