import type { Point } from '../plane.ts';

/** What a drawing is made of, in its own unit, y up. Each kind stays itself under any affine map. */
export type Shape =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      /** centre + u cos t + v sin t, for t from `start` over `sweep` radians. A circle when u and v are square and equal. */
      readonly kind: 'ellipse';
      readonly centre: Point;
      readonly u: Point;
      readonly v: Point;
      readonly start: number;
      readonly sweep: number;
    }
  | {
      /** A B-spline, rational where `weights` differ; a Bezier curve is the one whose knots are all at its ends. */
      readonly kind: 'curve';
      readonly degree: number;
      readonly knots: readonly number[];
      readonly points: readonly Point[];
      readonly weights: readonly number[] | null;
    };

export interface DrawnShape {
  readonly shape: Shape;
  /** DXF layer, or the nearest named group of an SVG. */
  readonly layer: string;
}

/** A drawing that may show an outline. */
export interface Drawing {
  readonly format: 'dxf' | 'svg';
  readonly shapes: readonly DrawnShape[];
  /** Millimetres of one unit of the drawing; null when it does not say. */
  readonly mmPerUnit: number | null;
  /** What the drawing calls its unit. */
  readonly unitSaid: string;
  /** Kinds of things that were passed over, with their count. */
  readonly passedOver: ReadonlyMap<string, number>;
  /** True when the end mark is missing. */
  readonly cutShort: boolean;
}

export interface DrawingFailure {
  readonly reason:
    | 'notWellFormed'
    | 'ownEntities'
    | 'nestedTooDeep'
    | 'tooMany'
    | 'binary'
    | 'holdsItself'
    | 'badGroupCode'
    | 'noSections';
  readonly line: number;
}

export type DrawingResult =
  | { readonly ok: true; readonly drawing: Drawing }
  | { readonly ok: false; readonly failure: DrawingFailure };

/** No board outline needs more; repeats of blocks count each time. */
export const MAX_SHAPES = 100_000;
