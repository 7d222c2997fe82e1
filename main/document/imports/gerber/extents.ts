import { type Box, boxOfDiscs, EMPTY_BOX, growBox, joinBoxes } from '../plane.ts';
import { segmentBox, segmentsBox } from '../segments.ts';
import type { GerberObject } from './types.ts';

/** Bounding box of one object with its line width, mm. Strokes are taken as drawn with a round pen. */
export function objectBox(object: GerberObject): Box {
  if (object.kind === 'stroke') return growBox(segmentBox(object.segment), object.widthMm / 2);
  if (object.kind === 'region')
    return object.contours.reduce((box, contour) => joinBoxes(box, segmentsBox(contour)), EMPTY_BOX);
  const box = boxOfDiscs(object.shape);
  const { x, y } = object.at;
  return { minX: box.minX + x, minY: box.minY + y, maxX: box.maxX + x, maxY: box.maxY + y };
}

/** Bounding box of the dark objects of an image, mm. */
export function imageBox(objects: readonly GerberObject[]): Box {
  let box = EMPTY_BOX;
  for (const object of objects) if (object.dark) box = joinBoxes(box, objectBox(object));
  return box;
}
