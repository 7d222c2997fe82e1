import type { Drawing, DrawingResult } from '../drawing/types.ts';
import { type Entity, newEntity, takeTag } from './entities.ts';
import { expand } from './expand.ts';
import { CUT, tagsOf } from './tags.ts';

/** $INSUNITS of the DXF reference, in mm; 0 is 'unitless'. */
const MM_PER_UNIT: Readonly<Record<number, readonly [number, string]>> = {
  1: [25.4, 'inch'],
  2: [304.8, 'foot'],
  4: [1, 'mm'],
  5: [10, 'cm'],
  6: [1000, 'm'],
  8: [0.0000254, 'microinch'],
  9: [0.0254, 'mil'],
  13: [0.001, 'micron'],
  14: [100, 'dm'],
};

export interface Block {
  readonly x: number;
  readonly y: number;
  readonly entities: Entity[];
}

/** What a DXF text holds, before blocks are put where they are inserted. */
export interface DxfText {
  readonly entities: Entity[];
  readonly blocks: Map<string, Block>;
  /** Layers that are off or frozen. */
  readonly hidden: Set<string>;
  insunits: number;
  sections: number;
  ended: boolean;
}

/** An entity takes some 300 bytes; no outline needs as many. */
const MAX_ENTITIES = 500_000;
const MAX_FIGURES = 4_000_000;

/** True for the text form of DXF (comments may come before the first section). */
export function looksLikeDxf(head: string): boolean {
  return /^\s*(999\s*\r?\n[^\n]*\n\s*)*0\s*\r?\n\s*SECTION/.test(head);
}

/** True for the binary form, which is not read. */
export function looksLikeBinaryDxf(bytes: Uint8Array): boolean {
  return /^\w+ Binary DXF\r\n/.test(new TextDecoder('latin1').decode(bytes.subarray(0, 24)));
}

/** A DXF text as shapes in its own unit, with blocks in place. Errors: see DrawingFailure. Never throws. */
export function readDxf(text: string): DrawingResult {
  const read = parse(text);
  if ('reason' in read) return { ok: false, failure: read };
  if (read.sections === 0) return { ok: false, failure: { reason: 'noSections', line: 1 } };
  const expanded = expand(read);
  if (!expanded.ok) return expanded;
  const [mmPerUnit, unitSaid] = MM_PER_UNIT[read.insunits] ?? [null, ''];
  const { shapes, passedOver } = expanded;
  const drawing: Drawing = { format: 'dxf', shapes, mmPerUnit, unitSaid, passedOver, cutShort: !read.ended };
  return { ok: true, drawing };
}

type Failure = Extract<DrawingResult, { ok: false }>['failure'];
type Reading = DxfText & {
  section: string;
  block: Block | null;
  /** A POLYLINE whose vertices follow as entities. */
  polyline: ReturnType<typeof newEntity> | null;
  open: ReturnType<typeof newEntity> | null;
  variable: string;
  kept: number;
};

function parse(text: string): DxfText | Failure {
  const state: Reading = {
    entities: [],
    blocks: new Map(),
    hidden: new Set(),
    insunits: 0,
    sections: 0,
    ended: false,
    section: '',
    block: null,
    polyline: null,
    open: null,
    variable: '',
    kept: 0,
  };
  let figures = 0;
  for (const { code, value, line } of tagsOf(text)) {
    if (Number.isNaN(code)) return { reason: 'badGroupCode', line };
    if (code === CUT) return state;
    if (code === 0) {
      closeEntity(state);
      if (value === 'EOF') {
        state.ended = true;
        break;
      }
      openEntity(state, value, line);
      if (state.kept > MAX_ENTITIES) return { reason: 'tooMany', line };
    } else if (state.open) {
      if (++figures > MAX_FIGURES) return { reason: 'tooMany', line };
      takeTag(state.open, code, value);
    } else takeHeader(state, code, value);
  }
  // The last figure of a text that ends within a line may be cut: what it belongs to does not count.
  if (!state.ended && !text.endsWith('\n')) return state;
  closeEntity(state);
  endPolyline(state);
  return state;
}

function takeHeader(state: Reading, code: number, value: string): void {
  if (code === 2 && state.section === '?') {
    state.section = value;
    state.sections++;
  } else if (code === 9) state.variable = value;
  else if (state.section === 'HEADER' && state.variable === '$INSUNITS' && code === 70) state.insunits = Number(value);
}

const FRAMES = new Set(['SECTION', 'ENDSEC', 'TABLE', 'ENDTAB', 'CLASS']);

function openEntity(state: Reading, kind: string, line: number): void {
  if (kind === 'SECTION') state.section = '?';
  if (kind === 'ENDSEC') {
    endPolyline(state);
    state.section = '';
  }
  if (FRAMES.has(kind)) return;
  const wanted = /^(ENTITIES|BLOCKS)$/.test(state.section) || (state.section === 'TABLES' && kind === 'LAYER');
  if (!wanted) return;
  state.kept++;
  state.open = newEntity(kind, line);
}

function closeEntity(state: Reading): void {
  const { open, section, polyline } = state;
  state.open = null;
  if (open === null) return;
  if (section === 'TABLES') {
    // A negative colour is a layer switched off; bit 1 of code 70 a frozen one.
    if ((open.figures.get(62) ?? 1) < 0 || ((open.figures.get(70) ?? 0) & 1) === 1) state.hidden.add(open.name);
    return;
  }
  if (polyline) {
    if (open.kind === 'VERTEX') {
      // Bit 16: a control point of a spline frame, not on the line.
      if (((open.figures.get(70) ?? 0) & 16) === 0) polyline.points.push(...open.points.slice(0, 1));
      return;
    }
    endPolyline(state);
    if (open.kind === 'SEQEND') return;
  }
  if (open.kind === 'BLOCK') {
    const { x, y } = open.points[0] ?? { x: 0, y: 0 };
    state.block = { x, y, entities: [] };
    state.blocks.set(open.name, state.block);
  } else if (open.kind === 'ENDBLK') state.block = null;
  else if (open.kind === 'POLYLINE') state.polyline = { ...open, points: [] };
  else keep(state, open);
}

function endPolyline(state: Reading): void {
  if (state.polyline) keep(state, state.polyline);
  state.polyline = null;
}

function keep(state: Reading, entity: Entity): void {
  if (state.block) state.block.entities.push(entity);
  else if (state.section === 'ENTITIES') state.entities.push(entity);
}
