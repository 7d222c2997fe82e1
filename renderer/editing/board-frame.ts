import { produce } from 'immer';
import type { Board } from '../../shared-types/board.ts';
import { boxOfContour } from '../../shared-types/contour/edges.ts';
import type { Contour, Point } from '../../shared-types/geometry.ts';
import type { Plan, TicketDocument } from '../../shared-types/plan.ts';

/**
 * A new frame for everything that has a place on the board: first mirrored left to right (x to -x), then turned by
 * quarters counter-clockwise, then moved. Every place in board and plan goes along, the preheater and the nozzle's
 * heading too, so that the heat stays what it was.
 */
export type Frame = { mirror: boolean; quarters: 0 | 1 | 2 | 3; by: Point };

/** `0 - value` keeps zero from becoming negative zero. */
const negated = (value: number): number => 0 - value;

function placed({ mirror, quarters, by }: Frame, at: Point): Point {
  const x = mirror ? negated(at.x) : at.x;
  const turned = [
    { x, y: at.y },
    { x: negated(at.y), y: x },
    { x: negated(x), y: negated(at.y) },
    { x: at.y, y: negated(x) },
  ][quarters];
  return { x: turned.x + by.x, y: turned.y + by.y };
}

/** Turn of a body: mirrored left to right a body turns the other way, its own x axis mirrored too. */
const turned = ({ mirror, quarters }: Frame, turn: number): number => (mirror ? negated(turn) : turn) + 90 * quarters;

/** Direction of an arrow, which mirroring throws to the other side. */
const headed = ({ mirror, quarters }: Frame, heading: number): number =>
  (mirror ? 180 - heading : heading) + 90 * quarters;

function put(frame: Frame, item: Point): void {
  Object.assign(item, placed(frame, item));
}

function placeContour(frame: Frame, contour: Contour): void {
  for (const corner of contour) {
    put(frame, corner);
    if (corner.bulge && frame.mirror) corner.bulge = negated(corner.bulge);
  }
}

function placeOnBoard(frame: Frame, board: Board): void {
  placeContour(frame, board.outline);
  for (const cutout of board.cutouts) placeContour(frame, cutout);
  for (const item of [...board.parts, ...board.covers]) {
    put(frame, item);
    item.turn = turned(frame, item.turn);
  }
  if (frame.mirror) for (const part of board.parts) if (part.pin1) part.pin1.x = negated(part.pin1.x);
  for (const fiducial of board.fiducials) put(frame, fiducial);
  for (const photo of board.photos) for (const pair of photo.pairs) put(frame, pair.board);
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
  return produce(document, (draft) => {
    placeOnBoard(frame, draft.board);
    placeInPlan(frame, draft.plan);
  });
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
