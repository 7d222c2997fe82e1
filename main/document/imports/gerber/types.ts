import type { Disc, Point } from '../plane.ts';
import type { Segment } from '../segments.ts';

/** Object attributes of Gerber X2 that the importer uses (Gerber format specification, section 5.6). */
export interface ObjectAttributes {
  /** Reference of the part that the object belongs to (`.C`, or the first field of `.P`). */
  readonly refdes?: string;
  /** Pin number (`.P`, second field) and pin function (third field). */
  readonly pin?: string;
  readonly pinName?: string;
  /** Aperture function (`.AperFunction`), fields joined by commas: `SMDPad,CuDef`. */
  readonly apertureFunction?: string;
}

export interface Stroke {
  readonly kind: 'stroke';
  readonly segment: Segment;
  readonly widthMm: number;
  readonly dark: boolean;
  readonly attributes: ObjectAttributes;
}

export interface Flash {
  readonly kind: 'flash';
  readonly at: Point;
  /** Hull of the aperture about `at`, after mirroring, rotation and scaling. */
  readonly shape: readonly Disc[];
  readonly dark: boolean;
  readonly attributes: ObjectAttributes;
}

export interface Region {
  readonly kind: 'region';
  readonly contours: readonly (readonly Segment[])[];
  readonly dark: boolean;
  readonly attributes: ObjectAttributes;
}

export type GerberObject = Stroke | Flash | Region;

export interface GerberNote {
  readonly kind:
    | 'unitsAssumed'
    | 'formatAssumed'
    | 'unknownCommand'
    | 'unsupportedCommand'
    | 'noEnd'
    | 'badNumber'
    | 'apertureMissing'
    | 'openContour';
  readonly detail: string;
  readonly line: number;
}

export interface GerberImage {
  /** `.FileFunction` fields: `['Copper', 'L1', 'Top']`; empty when the file does not say. */
  readonly fileFunction: readonly string[];
  readonly fileAttributes: ReadonlyMap<string, readonly string[]>;
  readonly unit: 'mm' | 'inch';
  readonly objects: readonly GerberObject[];
  readonly notes: readonly GerberNote[];
}

export interface GerberFailure {
  readonly reason: 'notGerber' | 'tooManyObjects' | 'nestedTooDeep' | 'badMacro';
  readonly line: number;
  readonly detail: string;
}

export type GerberResult =
  | { readonly ok: true; readonly image: GerberImage }
  | { readonly ok: false; readonly failure: GerberFailure };
