import type { Box, Point } from '../plane.ts';
import { flattenLoop, polygonArea, type Segment, segmentsBox } from '../segments.ts';

/** A closed chain of segments, counter-clockwise. */
export interface Loop {
  readonly segments: readonly Segment[];
  readonly polygon: readonly Point[];
  readonly box: Box;
  readonly areaMm2: number;
  /** Name of the file it was drawn in. */
  readonly file: string;
  /** Pen width of its first stroke, mm; 0 for the border of a region. */
  readonly penMm: number;
  /** True when ends had to be joined that lay further apart than the first tolerance. */
  readonly gapMm: number;
}

/** Arcs are kept as arcs in the board; polygons made for tests of 'inside' stay within this of them. */
export const POLYGON_TOLERANCE_MM = 0.01;

export function makeLoop(segments: readonly Segment[], file: string, penMm: number, gapMm: number): Loop {
  const polygon = flattenLoop(segments, POLYGON_TOLERANCE_MM);
  return { segments, polygon, box: segmentsBox(segments), areaMm2: Math.abs(polygonArea(polygon)), file, penMm, gapMm };
}
