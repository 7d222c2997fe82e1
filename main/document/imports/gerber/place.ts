import { type Disc, type Point, turnPoint } from '../plane.ts';
import { mapSegment } from '../segments.ts';
import type { LoadTransform } from './state.ts';
import type { GerberObject } from './types.ts';

/** LM, then LR, then LS about the aperture's origin (Gerber format specification, section 4.9.1). */
export function transformPoint(point: Point, { mirrorX, mirrorY, degrees, scale }: LoadTransform): Point {
  const mirrored = { x: mirrorX ? -point.x : point.x, y: mirrorY ? -point.y : point.y };
  const turned = turnPoint(mirrored, degrees);
  return { x: turned.x * scale, y: turned.y * scale };
}

export function transformDiscs(discs: readonly Disc[], transform: LoadTransform): Disc[] {
  return discs.map((disc) => ({ ...transformPoint(disc, transform), r: disc.r * transform.scale }));
}

/**
 * A block's object as it appears when the block is flashed at `at`: transformed about the block's origin, then moved.
 * A block flashed in clear polarity inverts the polarity of its objects (section 4.11).
 */
export function placeObject(object: GerberObject, at: Point, transform: LoadTransform, dark: boolean): GerberObject {
  const map = (point: Point): Point => {
    const moved = transformPoint(point, transform);
    return { x: moved.x + at.x, y: moved.y + at.y };
  };
  const mirrored = transform.mirrorX !== transform.mirrorY;
  const polarity = dark ? object.dark : !object.dark;
  if (object.kind === 'flash') {
    return { ...object, at: map(object.at), shape: transformDiscs(object.shape, transform), dark: polarity };
  }
  if (object.kind === 'stroke') {
    const segment = mapSegment(object.segment, map, mirrored);
    return { ...object, segment, widthMm: object.widthMm * transform.scale, dark: polarity };
  }
  const contours = object.contours.map((contour) => contour.map((segment) => mapSegment(segment, map, mirrored)));
  return { ...object, contours, dark: polarity };
}
