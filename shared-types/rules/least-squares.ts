import { Matrix, QrDecomposition } from 'ml-matrix';
import type { Point } from '../geometry.ts';
import type { PhotoModel, PlacePair } from './photo-models.ts';
import { divisorAt, mapPoint, type PlaneMap } from './plane-maps.ts';

/** Parameters of a map, and the sum of its squared distances in the board's (normalised) unit. */
export type Solution = { parameters: number[]; squares: number };

const LARGEST_STEPS = 60;
const SETTLED = 1e-13;
/** Pairs nearer to the horizon than this share of the middle's divisor cannot be trusted. */
const LEAST_DIVISOR = 0.02;

/** The parameters that fit the equations best, by Householder QR; null when they leave a parameter open. */
export function solveLinear(model: PhotoModel, pairs: readonly PlacePair[]): number[] | null {
  const rows = pairs.flatMap((pair) => model.rows(pair));
  return solveRows(
    rows.map(({ factors }) => factors),
    rows.map(({ value }) => value),
  );
}

function solveRows(factors: number[][], values: number[]): number[] | null {
  const qr = new QrDecomposition(new Matrix(factors));
  if (!qr.isFullRank()) return null;
  const solved = qr.solve(Matrix.columnVector(values)).to1DArray();
  return solved.every(Number.isFinite) ? solved : null;
}

/** What is left between a mapped place and its board point. */
export function leftOver(map: PlaneMap, { photo, board }: PlacePair): Point {
  const there = mapPoint(map, photo);
  return { x: there.x - board.x, y: there.y - board.y };
}

/** Sum of squared distances; infinite when a pair lies on or beyond the horizon. */
export function squaresOf(map: PlaneMap, pairs: readonly PlacePair[]): number {
  let sum = 0;
  for (const pair of pairs) {
    if (divisorAt(map, pair.photo) < LEAST_DIVISOR) return Infinity;
    const rest = leftOver(map, pair);
    sum += rest.x * rest.x + rest.y * rest.y;
  }
  return sum;
}

/**
 * Levenberg-Marquardt on the distances on the board: what the linear equations minimise is those distances weighted by each pair's
 * divisor, which favours far corners of a tilted photo. Damping after Marquardt (1963): tenfold up on a step that makes it worse, tenfold
 * down on a better one. Null when no start keeps all pairs on this side of the horizon.
 */
export function refine(model: PhotoModel, pairs: readonly PlacePair[], start: readonly number[]): Solution | null {
  let parameters = [...start];
  let squares = squaresOf(model.map(parameters), pairs);
  if (!Number.isFinite(squares)) return null;
  let damping = 1e-4;
  for (let step = 0; step < LARGEST_STEPS; step++) {
    const change = dampedStep(model, pairs, parameters, damping);
    if (!change) break;
    const tried = parameters.map((value, index) => value - change[index]);
    const triedSquares = squaresOf(model.map(tried), pairs);
    if (triedSquares < squares) {
      const settled = squares - triedSquares <= SETTLED * squares;
      parameters = tried;
      squares = triedSquares;
      damping = Math.max(1e-12, damping / 10);
      if (settled) break;
    } else {
      if (change.every((value) => Math.abs(value) < 1e-12) || damping > 1e8) break;
      damping *= 10;
    }
  }
  return { parameters, squares };
}

/** The step that the linearised distances ask for, held back by the damping; null when it cannot be solved. */
function dampedStep(
  model: PhotoModel,
  pairs: readonly PlacePair[],
  parameters: readonly number[],
  damping: number,
): number[] | null {
  const map = model.map(parameters);
  const factors: number[][] = [];
  const values: number[] = [];
  for (const pair of pairs) {
    const rest = leftOver(map, pair);
    factors.push(...model.slopes(parameters, pair.photo));
    values.push(rest.x, rest.y);
  }
  const held = Math.sqrt(damping);
  for (let index = 0; index < parameters.length; index++) {
    factors.push(parameters.map((_, column) => (column === index ? held : 0)));
    values.push(0);
  }
  return solveRows(factors, values);
}

/**
 * Variance of a predicted place for unit variance of the pairs, as [xx, xy, yy]: the slopes there times the inverse of the normal matrix.
 * Null when the pairs leave a parameter open.
 */
export function predictionSpread(
  model: PhotoModel,
  parameters: readonly number[],
  pairs: readonly PlacePair[],
  at: Point,
): [number, number, number] | null {
  const slopes = new Matrix(pairs.flatMap(({ photo }) => model.slopes(parameters, photo)));
  const qr = new QrDecomposition(slopes);
  if (!qr.isFullRank()) return null;
  // S^T S = R^T R: with R^T z = s, the variance is z . z.
  const triangle = qr.upperTriangularMatrix;
  const [first, second] = model.slopes(parameters, at).map((row) => forwards(triangle, row));
  const dot = (a: number[], b: number[]) => a.reduce((sum, value, index) => sum + value * b[index], 0);
  return [dot(first, first), dot(first, second), dot(second, second)];
}

function forwards(triangle: Matrix, right: readonly number[]): number[] {
  const z: number[] = [];
  right.forEach((value, row) => {
    let rest = value;
    for (let column = 0; column < row; column++) rest -= triangle.get(column, row) * z[column];
    z.push(rest / triangle.get(row, row));
  });
  return z;
}
