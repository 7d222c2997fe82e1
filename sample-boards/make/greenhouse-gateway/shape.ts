import type { Board } from '../../../shared-types/board.ts';
import type { Contour } from '../../../shared-types/geometry.ts';
import { circle, QUARTER, slot } from '../bench.ts';

/** 150 x 100 mm, round corners, a notch for a cable tie at the foot, a half-round one for the rail clip at the right. */
export const OUTLINE: Contour = [
  { x: 3, y: 0 },
  { x: 102, y: 0 },
  { x: 102, y: 3, bulge: -QUARTER },
  { x: 103, y: 4 },
  { x: 107, y: 4, bulge: -QUARTER },
  { x: 108, y: 3 },
  { x: 108, y: 0 },
  { x: 147, y: 0, bulge: QUARTER },
  { x: 150, y: 3 },
  { x: 150, y: 69, bulge: -1 },
  { x: 150, y: 77 },
  { x: 150, y: 97, bulge: QUARTER },
  { x: 147, y: 100 },
  { x: 3, y: 100, bulge: QUARTER },
  { x: 0, y: 97 },
  { x: 0, y: 3, bulge: QUARTER },
];

/** Four mounting holes and two slots that keep the relay contacts apart from each other and from the logic. */
export const CUTOUTS: Contour[] = [
  circle(5, 5, 1.6),
  circle(145, 5, 1.6),
  circle(5, 95, 1.6),
  circle(145, 95, 1.6),
  slot(29, 8, 29, 24, 0.6),
  slot(53, 6, 53, 31, 0.75),
];

export const LAMINATE: Board['laminate'] = {
  thicknessMm: 1.6,
  layers: [
    { kind: 'signal', copperUm: 35 },
    { kind: 'plane', copperUm: 18 },
    { kind: 'signal', copperUm: 18 },
    { kind: 'plane', copperUm: 18 },
    { kind: 'plane', copperUm: 18 },
    { kind: 'signal', copperUm: 18 },
    { kind: 'plane', copperUm: 18 },
    { kind: 'signal', copperUm: 35 },
  ],
  layersKnown: true,
};
