import type { Point } from '../geometry.ts';
import type { PhotoFitKind } from '../photo.ts';
import type { PlaneMap } from './plane-maps.ts';

/** The same place in two planes; what the fit runs on. */
export type PlacePair = { photo: Point; board: Point };

/** One row of a linear system and its right side. */
export type Row = { factors: number[]; value: number };

/** A kind of map: its parameters, and what they do. All are linear to start with; the projective one is then refined. */
export type PhotoModel = {
  kind: PhotoFitKind;
  /** Pairs that settle the map. */
  leastPairs: number;
  /** The two equations of a pair, linear in the parameters. */
  rows(pair: PlacePair): [Row, Row];
  map(parameters: readonly number[]): PlaneMap;
  /** Derivatives of x' and y' by the parameters. */
  slopes(parameters: readonly number[], photo: Point): [number[], number[]];
};

/**
 * Similarity. `mirrored`: pixels run y down and the board y up, so that a top photo is mirrored once (its map turns
 * counter-clockwise into clockwise) and a bottom photo, seen from below, twice: not at all.
 */
export function similarityModel(mirrored: boolean): PhotoModel {
  const sign = mirrored ? 1 : -1;
  const factors = ({ x, y }: Point): [number[], number[]] => [
    [x, sign * y, 1, 0],
    [-sign * y, x, 0, 1],
  ];
  return {
    kind: 'similarity',
    leastPairs: 2,
    rows: ({ photo, board }) => pairRows(factors(photo), board),
    map: ([a, b, c, d]) => [a, sign * b, c, b, -sign * a, d, 0, 0, 1],
    slopes: (_parameters, photo) => factors(photo),
  };
}

const affineFactors = ({ x, y }: Point): [number[], number[]] => [
  [x, y, 1, 0, 0, 0],
  [0, 0, 0, x, y, 1],
];

export const AFFINE_MODEL: PhotoModel = {
  kind: 'affine',
  leastPairs: 3,
  rows: ({ photo, board }) => pairRows(affineFactors(photo), board),
  map: ([a, b, c, d, e, f]) => [a, b, c, d, e, f, 0, 0, 1],
  slopes: (_parameters, photo) => affineFactors(photo),
};

/** Eight parameters; the ninth is 1, which the normalised pairs allow: their middle is never on the horizon. */
export const PROJECTIVE_MODEL: PhotoModel = {
  kind: 'projective',
  leastPairs: 4,
  rows: ({ photo: { x, y }, board }) => [
    { factors: [x, y, 1, 0, 0, 0, -x * board.x, -y * board.x], value: board.x },
    { factors: [0, 0, 0, x, y, 1, -x * board.y, -y * board.y], value: board.y },
  ],
  map: ([a, b, c, d, e, f, g, h]) => [a, b, c, d, e, f, g, h, 1],
  slopes: ([a, b, c, d, e, f, g, h], { x, y }) => {
    const w = g * x + h * y + 1;
    const [toX, toY] = [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
    const [u, v, one] = [x / w, y / w, 1 / w];
    return [
      [u, v, one, 0, 0, 0, -u * toX, -v * toX],
      [0, 0, 0, u, v, one, -u * toY, -v * toY],
    ];
  },
};

const pairRows = ([first, second]: [number[], number[]], board: Point): [Row, Row] => [
  { factors: first, value: board.x },
  { factors: second, value: board.y },
];
