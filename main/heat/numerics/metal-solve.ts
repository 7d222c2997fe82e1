import type { EntryArrays } from './cell-solve.ts';
import { solveDense } from './dense-solve.ts';

/**
 * Metal bodies: one temperature each, joined to many faces. Their entries are [first, end) of the entry arrays;
 * the cells' own 2 x 2 systems are eliminated into one small dense system over the bodies (its Schur complement).
 */
export type MetalArrays = {
  bodies: number;
  first: number;
  end: number;
  /** Per metal entry (from `first` on): its body. */
  bodyOf: Int32Array;
  /** Pairs of metal entries that share a cell, each with itself included: 2 numbers a pair. */
  pairs: Int32Array;
  capacity: Float64Array;
  matrix: Float64Array;
  rhs: Float64Array;
  diagonal: Float64Array;
};

/** Seconds of a sub-step and how implicit it is. */
type Step = { dt: number; theta: number };

/** Cells of a layer, capacity of a face (J/m2K), conductance between the faces of a cell (W/m2K). */
type BoardFigures = { cells: number; capacity: number; through: number };

/** Collects the metal entries; `bodyOf` numbers their bodies from 0, `cellOf` is indexed by entry. */
export function prepareMetal(
  first: number,
  end: number,
  bodies: number,
  bodyOf: Int32Array,
  cellOf: Int32Array,
  entryCapacity: Float64Array,
): MetalArrays {
  const byCell = new Map<number, number[]>();
  const capacity = new Float64Array(bodies);
  for (let entry = first; entry < end; entry++) {
    const list = byCell.get(cellOf[entry]!) ?? [];
    list.push(entry);
    byCell.set(cellOf[entry]!, list);
    capacity[bodyOf[entry - first]!]! += entryCapacity[entry]!;
  }
  const pairs: number[] = [];
  for (const list of byCell.values()) for (const p of list) for (const q of list) pairs.push(p, q);
  return {
    bodies,
    first,
    end,
    bodyOf,
    pairs: Int32Array.from(pairs),
    capacity,
    matrix: new Float64Array(bodies * bodies),
    rhs: new Float64Array(bodies),
    diagonal: new Float64Array(bodies),
  };
}

/** Adds the metal joints to the rates and diagonals of their faces; gathers each body's own equation. */
export function takeInMetal(
  metal: MetalArrays,
  entries: EntryArrays,
  { dt, theta }: Step,
  faceTemperature: Float64Array,
  rate: Float64Array,
  faceDiagonal: Float64Array,
): void {
  const tau = theta * dt;
  metal.rhs.fill(0);
  for (let body = 0; body < metal.bodies; body++) metal.diagonal[body] = metal.capacity[body]!;
  for (let entry = metal.first; entry < metal.end; entry++) {
    const under = entries.face[entry]!;
    const body = metal.bodyOf[entry - metal.first]!;
    const here = entries.temperature[entry]!;
    const g = entries.joint[entry]!;
    const flow = g * (faceTemperature[under]! - here);
    rate[under]! -= flow;
    faceDiagonal[under]! += g;
    metal.rhs[body]! += dt * (flow + entries.outerSource[entry]! - entries.outer[entry]! * here);
    metal.diagonal[body]! += tau * (g + entries.outer[entry]!);
  }
}

/** The element (p, q) of the inverse of a cell's 2 x 2 matrix. */
function inverseElement(
  p: number,
  q: number,
  cells: number,
  own: number,
  link: number,
  tau: number,
  diagonal: Float64Array,
): number {
  const cell = p % cells;
  const a = own + tau * diagonal[cell]!;
  const d = own + tau * diagonal[cell + cells]!;
  const determinant = a * d - link * link;
  if (p !== q) return link / determinant;
  return (p < cells ? d : a) / determinant;
}

/**
 * Solves the bodies' changes and feeds them into the faces' right-hand sides (in kelvin), after the line
 * solves and before the cells are solved. The changes are left in `metal.rhs`.
 */
export function solveMetal(
  metal: MetalArrays,
  entries: EntryArrays,
  { cells, capacity, through }: BoardFigures,
  { dt, theta }: Step,
  rhs: Float64Array,
  faceDiagonal: Float64Array,
): void {
  const tau = theta * dt;
  const { bodies, pairs, matrix, bodyOf, first } = metal;
  const link = tau * through;
  const own = capacity + link;
  matrix.fill(0);
  for (let body = 0; body < bodies; body++) matrix[body * bodies + body] = metal.diagonal[body]!;
  for (let pair = 0; pair < pairs.length; pair += 2) {
    const p = pairs[pair]!;
    const q = pairs[pair + 1]!;
    const inverse = inverseElement(entries.face[p]!, entries.face[q]!, cells, own, link, tau, faceDiagonal);
    const weight = tau * tau * entries.joint[p]! * entries.joint[q]! * inverse;
    matrix[bodyOf[p - first]! * bodies + bodyOf[q - first]!]! -= weight;
  }
  for (let entry = first; entry < metal.end; entry++) {
    const face = entries.face[entry]!;
    const other = face < cells ? face + cells : face - cells;
    const near = inverseElement(face, face, cells, own, link, tau, faceDiagonal) * rhs[face]!;
    const far = inverseElement(face, other, cells, own, link, tau, faceDiagonal) * rhs[other]!;
    metal.rhs[bodyOf[entry - first]!]! += tau * entries.joint[entry]! * capacity * (near + far);
  }
  solveDense(matrix, metal.rhs, bodies);
  for (let entry = first; entry < metal.end; entry++) {
    const change = metal.rhs[bodyOf[entry - first]!]!;
    rhs[entries.face[entry]!]! += (tau * entries.joint[entry]! * change) / capacity;
  }
}

/** Moves the metal entries on to their bodies' new temperatures. */
export function giveBackMetal(metal: MetalArrays, entries: EntryArrays): void {
  for (let entry = metal.first; entry < metal.end; entry++) {
    const here = entries.temperature[entry]!;
    entries.before[entry] = here;
    entries.temperature[entry] = here + metal.rhs[metal.bodyOf[entry - metal.first]!]!;
  }
}
