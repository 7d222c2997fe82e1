import { expect, test } from 'vitest';
import { type Claimant, claimPads } from '../../../../../../main/document/imports/pads/claim.ts';
import type { PlainPad } from '../../../../../../main/document/imports/pads/plain-pads.ts';
import { turnPoint } from '../../../../../../main/document/imports/plane.ts';

/** Pads of a part in own axes: x, y, width, height. */
type Pads = readonly (readonly [number, number, number, number])[];

const CHIP: Pads = [
  [-0.8, 0, 0.8, 0.9],
  [0.8, 0, 0.8, 0.9],
];
const TWELVE: Pads = [-1, 1].flatMap((side) =>
  [-2.5, -1.5, -0.5, 0.5, 1.5, 2.5].map((x) => [x, side * 4, 0.5, 1.2] as const),
);

function padsOf({ x, y, turn }: Claimant, own: Pads): PlainPad[] {
  return own.map(([ownX, ownY, width, height]) => {
    const at = (dx: number, dy: number) => {
      const turned = turnPoint({ x: ownX + dx, y: ownY + dy }, turn);
      return { x: x + turned.x, y: y + turned.y };
    };
    const [w, h] = [width / 2, height / 2];
    const hull = [at(-w, -h), at(w, -h), at(w, h), at(-w, h)].map((point) => ({ ...point, r: 0 }));
    return { ...at(0, 0), longMm: Math.max(width, height), shortMm: Math.min(width, height), hull };
  });
}

const part = (refdes: string, packageName: string, x: number, y: number, turn: number): Claimant => ({
  refdes,
  packageName,
  side: 'top',
  x,
  y,
  turn,
  nameSize: packageName === 'CHIP' ? { lengthMm: 1.6, widthMm: 0.8 } : null,
});

test('pads go to the part they lie symmetrically about, in its own axes', () => {
  const core = part('U1', 'TWELVE', 20, 20, 90);
  const chips = [part('R1', 'CHIP', 26, 18, 0), part('R2', 'CHIP', 26, 20, 0), part('R3', 'CHIP', 26, 22, 0)];
  const pads = [...padsOf(core, TWELVE), ...chips.flatMap((chip) => padsOf(chip, CHIP))];
  const lands = claimPads([core, ...chips], pads);
  expect(lands.get('U1')?.lengthMm).toBeCloseTo(5.5, 6);
  expect(lands.get('U1')?.widthMm).toBeCloseTo(9.2, 6);
  // R2 lies midway between R1 and R3, whose pads mirror each other about it: the nearest part keeps them.
  for (const { refdes } of chips) {
    expect(lands.get(refdes)?.lengthMm).toBeCloseTo(2.4, 6);
    expect(lands.get(refdes)?.widthMm).toBeCloseTo(0.9, 6);
  }
});

test("a part's pads end where another part's middle would lie among them", () => {
  const middle = part('U1', 'TWELVE', 20, 20, 0);
  const far: Pads = [
    [-9, 0, 1, 1],
    [9, 0, 1, 1],
  ];
  const lands = claimPads([middle, part('X1', 'ODD', 26, 20, 0)], [...padsOf(middle, TWELVE), ...padsOf(middle, far)]);
  expect(lands.get('U1')?.lengthMm).toBeCloseTo(5.5, 6);
});

test('parts of one package share the median size; a part without symmetrical pads claims none', () => {
  const parts = [0, 1, 2].map((index) => part(`U${index}`, 'TWELVE', 20 + 20 * index, 20, 0));
  const [first, second, third] = parts.map((one) => padsOf(one, TWELVE));
  const lands = claimPads([...parts, part('J1', 'ODD', 200, 200, 0)], [...first, ...second, ...third.slice(0, 1)]);
  expect(lands.get('U2')?.lengthMm).toBeCloseTo(5.5, 6);
  expect(lands.has('J1')).toBe(false);
});
