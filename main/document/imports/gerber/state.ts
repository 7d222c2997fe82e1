import type { Point } from '../plane.ts';
import type { Segment } from '../segments.ts';
import type { Aperture } from './aperture.ts';
import { type AttributeState, newAttributes } from './attributes.ts';
import type { MacroBody } from './macro.ts';
import type { GerberFailure, GerberNote, GerberObject } from './types.ts';

export interface CoordinateFormat {
  readonly integers: number;
  readonly decimals: number;
  /** Which zeros may be left out; 'none': the number carries a decimal point or all digits. */
  readonly omitted: 'leading' | 'trailing';
}

export interface Repeat {
  readonly kind: 'repeat';
  readonly outer: GerberObject[];
  readonly countX: number;
  readonly countY: number;
  readonly stepX: number;
  readonly stepY: number;
}

export interface OpenBlock {
  readonly kind: 'block';
  readonly outer: GerberObject[];
  readonly code: number;
}

/** Mirror, rotation and scale of apertures (commands LM, LR, LS; specification section 4.9). */
export interface LoadTransform {
  readonly mirrorX: boolean;
  readonly mirrorY: boolean;
  readonly degrees: number;
  readonly scale: number;
}

export const NO_TRANSFORM: LoadTransform = { mirrorX: false, mirrorY: false, degrees: 0, scale: 1 };

export interface ReaderState {
  mmPerUnit: number | null;
  formatX: CoordinateFormat | null;
  formatY: CoordinateFormat | null;
  incremental: boolean;
  point: Point;
  interpolation: 'line' | 'clockwise' | 'counterclockwise';
  quadrant: 'single' | 'multi' | 'unset';
  operation: 1 | 2 | 3 | null;
  dark: boolean;
  transform: LoadTransform;
  apertureCode: number | null;
  readonly apertures: Map<number, Aperture>;
  readonly macros: Map<string, MacroBody>;
  /** Flash shapes after LM, LR and LS, by aperture code; emptied when the transform or the aperture changes. */
  readonly shapeCache: Map<number, Extract<GerberObject, { kind: 'flash' }>['shape']>;
  readonly attributes: AttributeState;
  /** Where objects now go: the image, or the open block or step-and-repeat. */
  objects: GerberObject[];
  readonly open: (Repeat | OpenBlock)[];
  region: { contours: Segment[][]; current: Segment[] } | null;
  objectCount: number;
  copyCount: number;
  readonly notes: Map<string, GerberNote>;
  failure: GerberFailure | null;
  ended: boolean;
  commands: number;
}

export function newState(): ReaderState {
  return {
    mmPerUnit: null,
    formatX: null,
    formatY: null,
    incremental: false,
    point: { x: 0, y: 0 },
    interpolation: 'line',
    quadrant: 'unset',
    operation: null,
    dark: true,
    transform: NO_TRANSFORM,
    apertureCode: null,
    apertures: new Map(),
    macros: new Map(),
    shapeCache: new Map(),
    attributes: newAttributes(),
    objects: [],
    open: [],
    region: null,
    objectCount: 0,
    copyCount: 0,
    notes: new Map(),
    failure: null,
    ended: false,
    commands: 0,
  };
}

const MAX_NOTES = 200;

/** One note per kind and detail: a file that repeats a fault a thousand times tells it once, with its first line. */
export function note(state: ReaderState, kind: GerberNote['kind'], detail: string, line: number): void {
  const key = `${kind} ${detail}`;
  if (!state.notes.has(key) && state.notes.size < MAX_NOTES) state.notes.set(key, { kind, detail, line });
}

/** Beyond this many objects a file is refused: no board has them. */
const MAX_OBJECTS = 2_000_000;
/** Blocks and repeats multiply objects, a few lines can ask for billions: their copies have a lower limit. */
const MAX_COPIES = 400_000;

export function addObjects(state: ReaderState, objects: readonly GerberObject[], line: number): void {
  state.objectCount += objects.length;
  if (state.objectCount > MAX_OBJECTS) {
    state.failure ??= { reason: 'tooManyObjects', line, detail: String(MAX_OBJECTS) };
    return;
  }
  for (const object of objects) state.objects.push(object);
}

/** To be asked before copies are made; refuses the file when they would be too many. */
export function mayCopy(state: ReaderState, count: number, line: number): boolean {
  state.copyCount += count;
  if (state.copyCount <= MAX_COPIES) return true;
  state.failure ??= { reason: 'tooManyObjects', line, detail: String(MAX_COPIES) };
  return false;
}

const INCH_MM = 25.4;

/**
 * Millimetres per file unit. A file that has not said is read by its number format, with a note: 2.3 to 2.5 were
 * used for inches, others for millimetres (common practice, no source).
 */
export function unitScale(state: ReaderState, line: number): number {
  if (state.mmPerUnit === null) {
    const { integers, decimals } = state.formatX ?? { integers: 3, decimals: 3 };
    const inches = integers <= 2 && decimals >= 3 && decimals <= 5;
    note(state, 'unitsAssumed', inches ? 'inches' : 'millimetres', line);
    state.mmPerUnit = inches ? INCH_MM : 1;
  }
  return state.mmPerUnit;
}
