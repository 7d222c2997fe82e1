import type { Point, Side } from '../geometry.ts';
import type { PhotoFitKind } from '../photo.ts';
import { leftOver, refine, type Solution, solveLinear } from './least-squares.ts';
import { AFFINE_MODEL, type PhotoModel, type PlacePair, PROJECTIVE_MODEL, similarityModel } from './photo-models.ts';
import { type FitRefusal, LEAST_PAIRS, spreadRefusal } from './photo-spread.ts';
import { chainMaps, derivativeAt, divisorAt, invertMap, mapPoint, type PlaneMap } from './plane-maps.ts';

export type { PlacePair } from './photo-models.ts';
export type { FitRefusal } from './photo-spread.ts';

/** How far a pair's photo place lies off its board point under the map, mm. */
export type Residual = { x: number; y: number; mm: number };

export type PhotoFit = {
  kind: PhotoFitKind;
  /** Photo pixels (upright, x right, y down) to board mm. The divisor is positive at every pair. */
  toBoard: PlaneMap;
  toPhoto: PlaneMap;
  residuals: Residual[];
  rmsMm: number;
  /** Pairs beyond those that the kind needs: with none the residuals are 0 whatever was clicked. */
  spare: number;
  /** Distance of each pair from where the others put it, mm; null where the others alone settle no map. */
  leftOutMm: (number | null)[];
  /** Root mean square of those; null without a spare pair. */
  leftOutRmsMm: number | null;
  /** True when the map turns the photo over: the photo shows the other side, or is itself mirrored. */
  turnedOver: boolean;
  /** Board mm per photo pixel at the middle of the pairs. */
  mmPerPixel: number;
  /** Set when the number of pairs asks for a higher kind that they do not settle: what was wrong. */
  heldBack: FitRefusal | null;
};

export type PhotoFitResult = { ok: true; fit: PhotoFit } | { ok: false; refusal: FitRefusal };

const KINDS: readonly PhotoFitKind[] = ['projective', 'affine', 'similarity'];

/** The kind that so many pairs settle: 2 similarity, 3 affine, 4 and more projective. */
export const usualKind = (pairs: number): PhotoFitKind =>
  pairs >= 4 ? 'projective' : pairs === 3 ? 'affine' : 'similarity';

/**
 * The map from a photo to the board by least squares on the distances on the board (mm).
 * Both planes are normalised first, after Hartley, 'In defense of the eight-point algorithm', IEEE PAMI 19(6), 1997: middle at 0, mean
 * distance sqrt 2. `kind` null takes the usual one for the number of pairs, or a lower one when the pairs do not settle it.
 */
export function fitPhoto(pairs: readonly PlacePair[], side: Side, kind: PhotoFitKind | null = null): PhotoFitResult {
  if (kind) return fitKind(pairs, side, kind, null);
  const usual = usualKind(pairs.length);
  const first = fitKind(pairs, side, usual, null);
  if (first.ok) return first;
  for (const lower of KINDS.slice(KINDS.indexOf(usual) + 1)) {
    const next = fitKind(pairs, side, lower, first.refusal);
    if (next.ok) return next;
  }
  return first;
}

function fitKind(
  pairs: readonly PlacePair[],
  side: Side,
  kind: PhotoFitKind,
  heldBack: FitRefusal | null,
): PhotoFitResult {
  const refusal = spreadRefusal(pairs, kind);
  if (refusal) return { ok: false, refusal };
  const toBoard = bestMap(pairs, side, kind);
  const toPhoto = toBoard && invertMap(toBoard);
  if (!toBoard || !toPhoto) {
    const all = pairs.map((_, index) => index);
    return { ok: false, refusal: { code: 'folded', on: 'both', pairs: all, needed: LEAST_PAIRS[kind] } };
  }
  return { ok: true, fit: fitOf(pairs, side, kind, toBoard, toPhoto, heldBack) };
}

function fitOf(
  pairs: readonly PlacePair[],
  side: Side,
  kind: PhotoFitKind,
  toBoard: PlaneMap,
  toPhoto: PlaneMap,
  heldBack: FitRefusal | null,
): PhotoFit {
  const residuals = pairs.map((pair) => {
    const { x, y } = leftOver(toBoard, pair);
    return { x, y, mm: Math.hypot(x, y) };
  });
  const leftOutMm = pairs.map((_, index) => leftOutDistance(pairs, side, kind, index));
  const [xx, xy, yx, yy] = derivativeAt(toBoard, middleOf(pairs.map(({ photo }) => photo)));
  const area = xx * yy - xy * yx;
  return {
    kind,
    toBoard,
    toPhoto,
    residuals,
    rmsMm: rootMeanSquare(residuals.map(({ mm }) => mm)),
    spare: pairs.length - LEAST_PAIRS[kind],
    leftOutMm,
    leftOutRmsMm: leftOutMm.some((mm) => mm !== null) ? rootMeanSquare(leftOutMm.filter((mm) => mm !== null)) : null,
    turnedOver: side === 'top' ? area > 0 : area < 0,
    mmPerPixel: Math.sqrt(Math.abs(area)),
    heldBack,
  };
}

function leftOutDistance(pairs: readonly PlacePair[], side: Side, kind: PhotoFitKind, left: number): number | null {
  const others = pairs.filter((_, index) => index !== left);
  const map = spreadRefusal(others, kind) ? null : bestMap(others, side, kind);
  if (!map || divisorAt(map, pairs[left].photo) <= 0) return null;
  const { x, y } = leftOver(map, pairs[left]);
  return Math.hypot(x, y);
}

export const modelOf = (kind: PhotoFitKind, side: Side): PhotoModel =>
  kind === 'similarity' ? similarityModel(side === 'top') : kind === 'affine' ? AFFINE_MODEL : PROJECTIVE_MODEL;

/** Pairs with the middle of both planes at 0 and a mean distance of sqrt 2, and the way back. */
export type Normalised = { pairs: PlacePair[]; photo: PlaneMap; boardBack: PlaneMap; mmPerUnit: number };

export function normalise(pairs: readonly PlacePair[]): Normalised {
  const photo = normaliser(pairs.map((pair) => pair.photo));
  const board = normaliser(pairs.map((pair) => pair.board));
  return {
    pairs: pairs.map((pair) => ({ photo: mapPoint(photo, pair.photo), board: mapPoint(board, pair.board) })),
    photo,
    boardBack: invertMap(board) as PlaneMap,
    mmPerUnit: 1 / board[0],
  };
}

function normaliser(points: readonly Point[]): PlaneMap {
  const middle = middleOf(points);
  const mean = points.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0) / points.length;
  const scale = mean > 0 ? Math.SQRT2 / mean : 1;
  return [scale, 0, -scale * middle.x, 0, scale, -scale * middle.y, 0, 0, 1];
}

/** Mean square distance, in normalised units (places lie sqrt 2 from their middle), beyond which pairs count as contradicting each other. */
const MOST_CONTRADICTION = 0.05;

/** The best parameters for normalised pairs; the linear answer is final unless the model is projective and over-settled. */
export function solveModel(model: PhotoModel, pairs: readonly PlacePair[]): Solution | null {
  const linear = solveLinear(model, pairs);
  const refined = linear && refine(model, pairs, linear);
  if (refined || model.kind !== 'projective') return refined;
  // The linear answer folds the plane: start from the best map without a horizon.
  const affine = solveLinear(AFFINE_MODEL, pairs);
  const flat = affine && refine(model, pairs, [...affine, 0, 0]);
  return flat && flat.squares < MOST_CONTRADICTION * pairs.length ? flat : null;
}

/** The best map in pixels and mm; null when the pairs contradict each other so much that none keeps them in view. */
function bestMap(pairs: readonly PlacePair[], side: Side, kind: PhotoFitKind): PlaneMap | null {
  const model = modelOf(kind, side);
  const normal = normalise(pairs);
  const solution = solveModel(model, normal.pairs);
  return solution && chainMaps(chainMaps(normal.boardBack, model.map(solution.parameters)), normal.photo);
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));
