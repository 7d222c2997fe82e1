import { type Affine, join, scaleBy } from '../drawing/affine.ts';
import { isFiniteShape, mapShape } from '../drawing/shapes.ts';
import { type DrawingFailure, type DrawingResult, type DrawnShape, MAX_SHAPES } from '../drawing/types.ts';
import { readXml, xmlDecoder } from '../text/read-xml.ts';
import { elementShapes } from './element-shapes.ts';
import { parseTransform } from './transforms.ts';
import { innerViewport, rootUnit } from './viewport.ts';

type Attributes = Readonly<Record<string, string>>;
type Refusal = Extract<DrawingFailure['reason'], 'nestedTooDeep' | 'tooMany'>;

const HEAD_BYTES = 8000;
const MAX_DEPTH = 500;
const MAX_ELEMENTS = 1_000_000;
/** Data of paths and lists of points, all together. */
const MAX_DATA = 8_000_000;

/** True when the file's first element is `svg`. */
export function looksLikeSvg(bytes: Uint8Array): boolean {
  const head = xmlDecoder(bytes).decode(bytes.subarray(0, HEAD_BYTES));
  return /^\s*(<\?[^>]*>|<!--[\s\S]*?-->|<!DOCTYPE[^[>]*(\[[^\]]*\])?[^>]*>|\s)*<([\w-]+:)?svg[\s>]/i.test(head);
}

/** What an open element hands to those within it. */
interface Level {
  readonly matrix: Affine;
  readonly layer: string;
  readonly hidden: boolean;
}

interface Reading {
  readonly levels: Level[];
  readonly shapes: DrawnShape[];
  readonly passedOver: Map<string, number>;
  mmPerUnit: number | null;
  unitSaid: string;
  elements: number;
  data: number;
}

/**
 * An SVG as shapes in its own unit, y up: paths and basic shapes under their transforms, without what is hidden, a
 * definition, a copy (`use`) or text. Errors: see DrawingFailure. Never throws.
 */
export function readSvg(bytes: Uint8Array): DrawingResult {
  const state: Reading = {
    levels: [],
    shapes: [],
    passedOver: new Map(),
    mmPerUnit: null,
    unitSaid: '',
    elements: 0,
    data: 0,
  };
  const read = readXml<Refusal>(bytes, {
    open: (name, attributes) => open(state, name, attributes),
    close: () => {
      state.levels.pop();
    },
  });
  if (!read.ok) return { ok: false, failure: { reason: read.reason, line: read.line } };
  const { shapes, mmPerUnit, unitSaid, passedOver } = state;
  return { ok: true, drawing: { format: 'svg', shapes, mmPerUnit, unitSaid, passedOver, cutShort: false } };
}

/** Content of these is drawn elsewhere, or not at all. */
const NOT_DRAWN = new Set(['defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker', 'foreignObject', 'metadata']);
const COUNTED = new Set(['use', 'text', 'image']);

function open(state: Reading, name: string, given: Attributes): Refusal | null {
  if (state.levels.length >= MAX_DEPTH) return 'nestedTooDeep';
  if (++state.elements > MAX_ELEMENTS) return 'tooMany';
  state.data += (given.d?.length ?? 0) + (given.points?.length ?? 0);
  if (state.data > MAX_DATA) return 'tooMany';
  const above = state.levels.at(-1);
  const level = above ? levelWithin(above, name, given) : rootLevel(state, given);
  state.levels.push(level);
  if (level.hidden) return null;
  if (COUNTED.has(name)) pass(state, name);
  return draw(state, name, given, level);
}

function draw(state: Reading, name: string, given: Attributes, level: Level): Refusal | null {
  const drawn = elementShapes(name, given);
  if (drawn?.broken) pass(state, 'path-mistake');
  for (const shape of drawn?.shapes ?? []) {
    const mapped = mapShape(level.matrix, shape);
    if (isFiniteShape(mapped)) state.shapes.push({ shape: mapped, layer: level.layer });
  }
  return state.shapes.length > MAX_SHAPES ? 'tooMany' : null;
}

function pass({ passedOver }: Reading, kind: string): void {
  passedOver.set(kind, (passedOver.get(kind) ?? 0) + 1);
}

/** The y axis of SVG points down. */
function rootLevel(state: Reading, given: Attributes): Level {
  const { mmPerUnit, said, matrix } = rootUnit(given);
  state.mmPerUnit = mmPerUnit;
  state.unitSaid = said;
  return { matrix: join(scaleBy(1, -1), join(matrix, parseTransform(given.transform))), layer: '', hidden: false };
}

function levelWithin(above: Level, name: string, given: Attributes): Level {
  const own = parseTransform(given.transform);
  const matrix = name === 'svg' ? join(own, innerViewport(given)) : own;
  return {
    matrix: join(above.matrix, matrix),
    layer: nameOf(given) || above.layer,
    hidden: above.hidden || NOT_DRAWN.has(name) || isHidden(given),
  };
}

/** A label that a drawing program wrote, else the id. */
function nameOf(given: Attributes): string {
  const label = Object.keys(given).find((key) => key.endsWith(':label'));
  return ((label && given[label]) || given.id || '').slice(0, 255);
}

function isHidden({ display, visibility, style = '' }: Attributes): boolean {
  return (
    display === 'none' ||
    visibility === 'hidden' ||
    /(^|;)\s*(display\s*:\s*none|visibility\s*:\s*hidden)/.test(style.slice(0, 2000))
  );
}
