import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { test } from 'vitest';
import type { Point, Side } from '../../shared-types/geometry.ts';
import type { PhotoFitKind } from '../../shared-types/photo.ts';
import { fitPhoto, type PhotoFit, type PlacePair } from '../../shared-types/rules/photo-fit.ts';
import { mapPoint, type PlaneMap } from '../../shared-types/rules/plane-maps.ts';
import { verification } from '../support/verification/record.ts';
import cases from './photo/fit-values.json' with { type: 'json' };

function fitted(pairs: PlacePair[], side: Side, kind: PhotoFitKind): PhotoFit {
  const result = fitPhoto(pairs, side, kind);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.fit;
}

const photo = (problem: string, source: string) =>
  verification({ topic: 'Photo fits', item: 'photo', problem, source });
const worst = (errors: number[]): number => Math.max(...errors.map(Math.abs));

/** Comparable figures: a map is the same whatever it is multiplied by. */
const scaled = (map: readonly number[]): number[] => map.map((value) => value / map[8]);

/**
 * P. S. Heckbert, 'Fundamentals of Texture Mapping and Image Warping', Master's thesis, UC Berkeley, 1989, section 2.2.3, 'inferring
 * projective mappings': the unit square to a quadrilateral in closed form.
 */
function heckbert([p0, p1, p2, p3]: Point[]): number[] {
  const determinant = (a: number, b: number, c: number, d: number) => a * d - b * c;
  const sum = { x: p0.x - p1.x + p2.x - p3.x, y: p0.y - p1.y + p2.y - p3.y };
  const d1 = { x: p1.x - p2.x, y: p1.y - p2.y };
  const d2 = { x: p3.x - p2.x, y: p3.y - p2.y };
  const base = determinant(d1.x, d2.x, d1.y, d2.y);
  const g = determinant(sum.x, d2.x, sum.y, d2.y) / base;
  const h = determinant(d1.x, sum.x, d1.y, sum.y) / base;
  return [
    p1.x - p0.x + g * p1.x,
    p3.x - p0.x + h * p3.x,
    p0.x,
    p1.y - p0.y + g * p1.y,
    p3.y - p0.y + h * p3.y,
    p0.y,
    g,
    h,
    1,
  ];
}

const SQUARE = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
];

test.each([
  ['keystone', [0, 0, 10, 1, 8, 7, 1, 6]],
  ['strongly tilted', [-20, 3, 41, -2, 22, 19, 6, 17]],
  ['seen from behind', [10, 0, 0, 0, 2, 8, 9, 9]],
])('four pairs give the published closed form: %s', (name, figures) => {
  const quad = [0, 1, 2, 3].map((index) => ({ x: figures[2 * index], y: figures[2 * index + 1] }));
  const pairs = SQUARE.map((photo, index) => ({ photo, board: quad[index] }));
  const { toBoard, residuals } = fitted(pairs, 'top', 'projective');
  const verify = photo(
    'Four pairs, projective map in closed form',
    'P. S. Heckbert, Fundamentals of texture mapping and image warping, UC Berkeley 1989, 2.2.3',
  );
  const closed = heckbert(quad);
  const off = worst(scaled(toBoard).map((value, index) => value - closed[index]));
  verify.below(`${name}: worst of nine figures of the map`, '', off, 5e-10);
  verify.below(`${name}: worst residual`, 'mm', worst(residuals.map(({ mm }) => mm)), 1e-9);
});

test.each(cases.map((one, index) => [`${index + 1}, ${one.kind}, ${one.side}`, one] as const))(
  'the best map is the one a general-purpose optimiser finds: case %s',
  (name, { kind, side, pairs, matrix, rmsMm, leftOutMm }) => {
    const places = pairs.map(([x, y, boardX, boardY]) => ({ photo: { x, y }, board: { x: boardX, y: boardY } }));
    const fit = fitted(places, side as Side, kind as PhotoFitKind);
    const verify = photo(
      'Noisy pairs: the best map against a general-purpose optimiser',
      'SciPy least squares, started elsewhere (tests/reference/photo/fit-values.py)',
    );
    const off = places.map((place) => {
      const [ours, theirs] = [mapPoint(fit.toBoard, place.photo), mapPoint(matrix as unknown as PlaneMap, place.photo)];
      return Math.hypot(ours.x - theirs.x, ours.y - theirs.y);
    });
    verify.below(`case ${name}: worst distance on the board`, 'mm', worst(off), 1e-5);
    verify.near(`case ${name}: residual, RMS`, 'mm', fit.rmsMm, rmsMm, 5e-8);
    const leftOut = worst(leftOutMm.map((mm, index) => (fit.leftOutMm?.[index] ?? Number.NaN) - mm));
    verify.below(`case ${name}: worst of the left-out residuals`, 'mm', leftOut, 5e-5);
  },
);

/** The homogeneous equations without normalising or refining: the right singular vector of the least singular value. */
function directLinear(pairs: PlacePair[]): number[] {
  const rows = pairs.flatMap(({ photo: { x, y }, board }) => [
    [x, y, 1, 0, 0, 0, -x * board.x, -y * board.x, -board.x],
    [0, 0, 0, x, y, 1, -x * board.y, -y * board.y, -board.y],
  ]);
  const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
  const right = svd.rightSingularVectors;
  return right.getColumn(right.columns - 1);
}

test('seven exact pairs give the map of the plain direct linear transform by singular values', () => {
  const truth: PlaneMap = [0.9, 0.2, -3, 0.1, -1.1, 7, 0.02, 0.05, 1];
  const photos = [0, 3, 9, 4, 7, 1, 5].map((x, index) => ({ x, y: [0, 8, 1, 4, 9, 5, 6][index] }));
  const pairs = photos.map((photo) => ({ photo, board: mapPoint(truth, photo) }));
  const { toBoard } = fitted(pairs, 'top', 'projective');
  const reference = scaled(directLinear(pairs));
  const verify = photo('Seven exact pairs', 'direct linear transform by singular values (ml-matrix)');
  const off = scaled(toBoard).map((value, index) => value - reference[index]);
  verify.below('worst of nine figures of the map', '', worst(off), 5e-9);
});
