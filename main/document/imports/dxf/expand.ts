import { type Affine, join, moveBy, SAME, scaleBy, turnBy } from '../drawing/affine.ts';
import { isFiniteShape, mapShape } from '../drawing/shapes.ts';
import { type DrawingFailure, type DrawnShape, MAX_SHAPES } from '../drawing/types.ts';
import type { Entity } from './entities.ts';
import { entityShapes } from './entity-shapes.ts';
import type { DxfText } from './read-dxf.ts';

type Expanded =
  | { readonly ok: true; readonly shapes: DrawnShape[]; readonly passedOver: ReadonlyMap<string, number> }
  | { readonly ok: false; readonly failure: DrawingFailure };

interface Room {
  readonly text: DxfText;
  readonly shapes: DrawnShape[];
  readonly passedOver: Map<string, number>;
  /** Blocks that are being put in place, outermost first. */
  readonly within: string[];
  inserts: number;
}

const MAX_DEPTH = 50;

/** All shapes of the model space, blocks put where they are inserted. */
export function expand(text: DxfText): Expanded {
  const room: Room = { text, shapes: [], passedOver: new Map(), within: [], inserts: 0 };
  const failure = place(room, text.entities, SAME, null);
  return failure ? { ok: false, failure } : { ok: true, shapes: room.shapes, passedOver: room.passedOver };
}

/** `layer`: that of the insert, which entities of a block on layer 0 take on. */
function place(room: Room, entities: readonly Entity[], matrix: Affine, layer: string | null): DrawingFailure | null {
  for (const entity of entities) {
    const own = layer !== null && entity.layer === '0' ? layer : entity.layer;
    if (isHidden(room, entity, own)) continue;
    const axes = objectAxes(entity);
    if (axes === null) pass(room, 'tilted');
    else if (entity.kind === 'INSERT') {
      const failure = insert(room, entity, join(matrix, axes), own);
      if (failure) return failure;
    } else {
      const shapes = entityShapes(entity);
      if (shapes === null) pass(room, entity.kind);
      for (const shape of shapes ?? []) {
        const mapped = mapShape(join(matrix, axes), shape);
        if (isFiniteShape(mapped)) room.shapes.push({ shape: mapped, layer: own });
      }
    }
    if (room.shapes.length > MAX_SHAPES) return { reason: 'tooMany', line: entity.line };
  }
  return null;
}

function pass({ passedOver }: Room, kind: string): void {
  passedOver.set(kind, (passedOver.get(kind) ?? 0) + 1);
}

/** On a layer that is off, invisible by itself (code 60), or on a sheet of paper (code 67). */
function isHidden({ text }: Room, { figures }: Entity, layer: string): boolean {
  return text.hidden.has(layer) || figures.get(60) === 1 || figures.get(67) === 1;
}

/** Kinds whose figures stand in world axes whatever their axis says. */
const IN_WORLD = new Set(['LINE', 'ELLIPSE', 'SPLINE']);

/** Axes of the entity by its direction of extrusion: up, or down (x turned round); null when it is tilted out of the plane. */
function objectAxes({ kind, figures }: Entity): Affine | null {
  const [x, y, z] = [figures.get(210) ?? 0, figures.get(220) ?? 0, figures.get(230) ?? 1];
  if (Math.hypot(x, y) > 1e-6 * Math.abs(z)) return IN_WORLD.has(kind) ? SAME : null;
  return z < 0 && !IN_WORLD.has(kind) ? scaleBy(-1, 1) : SAME;
}

function insert(room: Room, entity: Entity, matrix: Affine, layer: string): DrawingFailure | null {
  const { text, within } = room;
  const { name, figures, line } = entity;
  const block = text.blocks.get(name);
  if (!block) return null;
  if (within.includes(name)) return { reason: 'holdsItself', line };
  if (within.length >= MAX_DEPTH) return { reason: 'nestedTooDeep', line };
  const figure = (code: number, without: number) => figures.get(code) ?? without;
  const times = (code: number) => Math.max(1, Math.floor(figure(code, 1)));
  const turned = join(moveBy(figure(10, 0), figure(20, 0)), turnBy(figure(50, 0)));
  const own = join(scaleBy(figure(41, 1), figure(42, 1)), moveBy(-block.x, -block.y));
  within.push(name);
  for (let column = 0; column < times(70); column++) {
    for (let row = 0; row < times(71); row++) {
      if (++room.inserts > MAX_SHAPES) return { reason: 'tooMany', line };
      const step = moveBy(column * figure(44, 0), row * figure(45, 0));
      const failure = place(room, block.entities, join(join(matrix, turned), join(step, own)), layer);
      if (failure) return failure;
    }
  }
  within.pop();
  return null;
}
