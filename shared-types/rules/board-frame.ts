import type { Board, Part } from '../board.ts';
import { type Contour, otherSide, type Point } from '../geometry.ts';

/**
 * A new frame for everything that has a place on a board: first mirrored left to right (x to -x), then turned by quarters
 * counter-clockwise, then moved. `over`: the mirror is that of a board turned over, so that its sides change places.
 */
export type Frame = { mirror: boolean; over?: boolean; quarters: 0 | 1 | 2 | 3; by: Point };

/** `0 - value` keeps zero from becoming negative zero. */
export const negated = (value: number): number => 0 - value;

export function placed({ mirror, quarters, by }: Frame, at: Point): Point {
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
export const turned = ({ mirror, quarters }: Frame, turn: number): number =>
  (mirror ? negated(turn) : turn) + 90 * quarters;

/** Direction of an arrow, which mirroring throws to the other side. */
export const headed = ({ mirror, quarters }: Frame, heading: number): number =>
  (mirror ? 180 - heading : heading) + 90 * quarters;

const put = <T extends Point>(frame: Frame, item: T): T => ({ ...item, ...placed(frame, item) });

const contourIn = (frame: Frame, contour: Contour): Contour =>
  contour.map((corner) => {
    const there = put(frame, corner);
    return corner.bulge && frame.mirror ? { ...there, bulge: negated(corner.bulge) } : there;
  });

/** A part turned over keeps its own axes; one that is mirrored on its side gets them mirrored. */
function partIn(frame: Frame, part: Part): Part {
  const there = put(frame, part);
  if (frame.over) return { ...there, side: otherSide(part.side), turn: headed(frame, part.turn) };
  const pin1 = frame.mirror && part.pin1 ? { pin1: { x: negated(part.pin1.x), y: part.pin1.y } } : {};
  return { ...there, turn: turned(frame, part.turn), ...pin1 };
}

/** The board in another frame: outline, parts, covers, fiducials and the board's points of photos. */
export function boardIn(frame: Frame, board: Board): Board {
  const sided = <T extends { side: Board['parts'][number]['side'] }>(item: T): T =>
    frame.over ? { ...item, side: otherSide(item.side) } : item;
  return {
    ...board,
    outline: contourIn(frame, board.outline),
    cutouts: board.cutouts.map((cutout) => contourIn(frame, cutout)),
    parts: board.parts.map((part) => partIn(frame, part)),
    covers: board.covers.map((cover) => ({ ...sided(put(frame, cover)), turn: turned(frame, cover.turn) })),
    fiducials: board.fiducials.map((fiducial) => sided(put(frame, fiducial))),
    photos: board.photos.map((photo) => ({
      ...sided(photo),
      pairs: photo.pairs.map((pair) => ({ ...pair, board: placed(frame, pair.board) })),
    })),
  };
}
