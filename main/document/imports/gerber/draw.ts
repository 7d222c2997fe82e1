import { boxHeight, boxOfDiscs, boxWidth, distance, type Point } from '../plane.ts';
import { arcSweep, type Segment } from '../segments.ts';
import type { Aperture } from './aperture.ts';
import { apertureFunctionOf, objectAttributesOf } from './attributes.ts';
import { placeObject, transformDiscs } from './place.ts';
import { addObjects, mayCopy, note, type ReaderState } from './state.ts';
import type { GerberObject, ObjectAttributes } from './types.ts';

/** Executes D01, D02 or D03 at `end` (Gerber format specification, section 4.8). */
export function operate(
  state: ReaderState,
  operation: 1 | 2 | 3,
  end: Point,
  offset: Point | null,
  line: number,
): void {
  const start = state.point;
  state.point = end;
  if (operation === 3) {
    flash(state, end, line);
    return;
  }
  if (operation === 2) {
    if (state.region) closeContour(state, line);
    return;
  }
  const segment = buildSegment(state, start, end, offset);
  if (state.region) state.region.current.push(segment);
  else stroke(state, segment, line);
}

function currentAperture(state: ReaderState, line: number): Aperture | null {
  const aperture = state.apertureCode === null ? undefined : state.apertures.get(state.apertureCode);
  if (aperture) return aperture;
  note(state, 'apertureMissing', state.apertureCode === null ? 'D' : `D${state.apertureCode}`, line);
  return null;
}

function stroke(state: ReaderState, segment: Segment, line: number): void {
  const aperture = currentAperture(state, line);
  const shape = aperture?.kind === 'shape' ? aperture : null;
  const attributes = withFunction(objectAttributesOf(state.attributes), shape?.function);
  const widthMm = (shape?.widthMm ?? 0) * state.transform.scale;
  addObjects(state, [{ kind: 'stroke', segment, widthMm, dark: state.dark, attributes }], line);
}

function flash(state: ReaderState, at: Point, line: number): void {
  const aperture = currentAperture(state, line);
  if (aperture === null) return;
  if (aperture.kind === 'block') {
    if (!mayCopy(state, aperture.objects.length, line)) return;
    const copies = aperture.objects.map((object) => placeObject(object, at, state.transform, state.dark));
    addObjects(state, copies, line);
    return;
  }
  const code = state.apertureCode as number;
  let shape = state.shapeCache.get(code);
  if (!shape) {
    shape = transformDiscs(aperture.discs, state.transform);
    state.shapeCache.set(code, shape);
  }
  const attributes = withFunction(objectAttributesOf(state.attributes), aperture.function);
  addObjects(state, [{ kind: 'flash', at, shape, dark: state.dark, attributes }], line);
}

function withFunction(attributes: ObjectAttributes, apertureFunction: string | undefined): ObjectAttributes {
  return apertureFunction === undefined ? attributes : { ...attributes, apertureFunction };
}

function buildSegment(state: ReaderState, from: Point, to: Point, offset: Point | null): Segment {
  if (state.interpolation === 'line' || offset === null) return { kind: 'line', from, to };
  const clockwise = state.interpolation === 'clockwise';
  const multi: Segment = { kind: 'arc', from, to, centre: { x: from.x + offset.x, y: from.y + offset.y }, clockwise };
  if (state.quadrant === 'multi') return multi;
  const misfit = Math.abs(distance(multi.centre, from) - distance(multi.centre, to));
  if (state.quadrant === 'unset' && misfit < 0.01) return multi;
  return singleQuadrantArc(from, to, offset, clockwise);
}

/** G74: I and J carry no sign; the centre is the candidate whose arc is at most a quarter turn and fits best (section 8.1.10). */
function singleQuadrantArc(from: Point, to: Point, offset: Point, clockwise: boolean): Segment {
  if (distance(from, to) === 0) return { kind: 'line', from, to };
  const [i, j] = [Math.abs(offset.x), Math.abs(offset.y)];
  let best: { segment: Segment; misfit: number } | null = null;
  for (const [sx, sy] of [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ]) {
    const centre = { x: from.x + sx * i, y: from.y + sy * j };
    const segment = { kind: 'arc' as const, from, to, centre, clockwise };
    const misfit = Math.abs(distance(centre, from) - distance(centre, to));
    if (Math.abs(arcSweep(segment)) > Math.PI / 2 + 0.02) continue;
    if (best === null || misfit < best.misfit) best = { segment, misfit };
  }
  return best?.segment ?? { kind: 'line', from, to };
}

/** G36. */
export function beginRegion(state: ReaderState): void {
  state.region = { contours: [], current: [] };
}

const CLOSED_MM = 0.001;

/** Ends the contour being drawn; one that is not closed is closed by a straight edge, with a note. */
function closeContour(state: ReaderState, line: number): void {
  const region = state.region;
  if (!region || region.current.length === 0) return;
  const first = region.current[0].from;
  const last = region.current[region.current.length - 1].to;
  if (distance(first, last) > CLOSED_MM) {
    note(state, 'openContour', '', line);
    region.current.push({ kind: 'line', from: last, to: first });
  }
  region.contours.push(region.current);
  region.current = [];
}

/** G37: the contours become one object; it takes the aperture attributes then in force (section 5.3). */
export function endRegion(state: ReaderState, line: number): void {
  closeContour(state, line);
  const contours = state.region?.contours ?? [];
  state.region = null;
  if (contours.length === 0) return;
  const attributes = withFunction(objectAttributesOf(state.attributes), apertureFunctionOf(state.attributes));
  const object: GerberObject = { kind: 'region', contours, dark: state.dark, attributes };
  addObjects(state, [object], line);
}

/** The smaller extent of a shape, mm: the width a stroke drawn with it has at least. */
export function strokeWidth(aperture: Extract<Aperture, { kind: 'shape' }>): number {
  if (aperture.widthMm > 0) return aperture.widthMm;
  const box = boxOfDiscs(aperture.discs);
  return Math.min(boxWidth(box), boxHeight(box));
}
