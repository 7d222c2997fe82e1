import type { Point } from '../plane.ts';

/** A vertex of a polyline, in the axes of the entity itself. */
export interface Vertex extends Point {
  readonly bulge: number;
}

/** One entity: its figures by group code (the last of each), and the lists that repeat. */
export interface Entity {
  readonly kind: string;
  readonly layer: string;
  readonly line: number;
  readonly figures: ReadonlyMap<number, number>;
  /** Name of a block (code 2). */
  readonly name: string;
  readonly points: readonly Vertex[];
  readonly fitPoints: readonly Point[];
  readonly knots: readonly number[];
  readonly weights: readonly number[];
}

type Open = {
  kind: string;
  layer: string;
  line: number;
  figures: Map<number, number>;
  name: string;
  points: { x: number; y: number; bulge: number }[];
  fitPoints: { x: number; y: number }[];
  knots: number[];
  weights: number[];
};

export function newEntity(kind: string, line: number): Open {
  return { kind, layer: '0', line, figures: new Map(), name: '', points: [], fitPoints: [], knots: [], weights: [] };
}

/** Takes one pair of the entity (DXF reference, group codes of entities). Data of other programs (codes from 1000) does not count. */
export function takeTag(entity: Open, code: number, value: string): void {
  if (code >= 1000 || code === 100 || code === 102) return;
  if (code === 8) entity.layer = value.slice(0, 255);
  if (code === 2) entity.name = value.slice(0, 255);
  const figure = Number(value);
  if (value === '' || !Number.isFinite(figure)) return;
  entity.figures.set(code, figure);
  const last = entity.points.at(-1);
  if (code === 10) entity.points.push({ x: figure, y: 0, bulge: 0 });
  else if (code === 20 && last) last.y = figure;
  else if (code === 42 && last) last.bulge = figure;
  else if (entity.kind === 'SPLINE') takeSplineTag(entity, code, figure);
}

function takeSplineTag(entity: Open, code: number, figure: number): void {
  const lastFit = entity.fitPoints.at(-1);
  if (code === 11) entity.fitPoints.push({ x: figure, y: 0 });
  else if (code === 21 && lastFit) lastFit.y = figure;
  else if (code === 40) entity.knots.push(figure);
  else if (code === 41) entity.weights.push(figure);
}
