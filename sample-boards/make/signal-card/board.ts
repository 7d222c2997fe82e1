import type { Board, Cover } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import { type Bench, cornerHoles, createBench, invented, round } from '../bench.ts';
import { createRandom } from '../random.ts';
import { fillByChance, outlineOf } from '../random-board.ts';

const LENGTH = 290;
const WIDTH = 200;
/** The array to exchange. */
export const ARRAY = { x: 150, y: 104 };
const PARTS = 3000;

const OUTLINE = outlineOf(LENGTH, WIDTH);
const HOLES = cornerHoles(LENGTH, WIDTH, 5, 1.7);

/** An aluminium bar beside the array that keeps the card flat. */
const STIFFENER: Cover = {
  id: 'ST1',
  kind: 'stiffener',
  side: 'top',
  x: ARRAY.x,
  y: ARRAY.y - 25.5,
  lengthMm: 180,
  widthMm: 12,
  turn: 0,
  heightMm: 8,
  sheetMm: 8,
  material: 'aluminium',
  fixing: 'screwed',
};

/** Bypass parts round the array and, in a grid, under it. */
function bypass(bench: Bench): void {
  const half = 17.5;
  for (const [dx, dy] of [
    [0, 1],
    [-1, 0],
    [1, 0],
  ])
    for (let index = -7; index <= 7; index++) {
      const along = index * 2.1;
      const x = ARRAY.x + (dx === 0 ? along : dx * (half + 2));
      const y = ARRAY.y + (dy === 0 ? along : dy * (half + 2));
      bench.place('C', 'C 0402', x, y, { turn: dx === 0 ? 90 : 0, value: '220n' });
    }
  for (let column = -6; column <= 6; column++)
    for (let row = -6; row <= 6; row++) {
      if (Math.abs(column) <= 3 && row <= -3) continue;
      const at = { x: round(ARRAY.x + column * 2.4), y: round(ARRAY.y + row * 2.4) };
      bench.place('C', 'C 0402', at.x, at.y, { side: 'bottom', turn: 90, value: (column + row) % 3 ? '100n' : '1u' });
    }
}

/** What the order is about: the array, the heavy coil that hangs under it, memories and edge connectors. */
function placeFixed(bench: Bench): void {
  bench.place('U', 'BGA 35x35 1.0 lidded', ARRAY.x, ARRAY.y, { value: 'HG-DSP35 signal processor' });
  bench.place('L', 'Inductor 12x12', ARRAY.x, ARRAY.y - 14.2, {
    side: 'bottom',
    value: '1u0 40 A',
    more: { massG: 14, padAreaMm2: 96 },
  });
  bypass(bench);
  for (const [x, y] of [
    [105, 120],
    [105, 98],
    [195, 120],
    [195, 98],
  ])
    bench.place('U', 'BGA 10x14.5 0.8', x, y, { value: 'HG-MEM4G memory' });
  for (let index = 0; index < 5; index++)
    bench.place('J', 'Board-to-board 2x20 0.8', 40 + index * 50, 4, { value: 'Backplane' });
}

/** signal-card: a front-end card of 14 layers, 2 mm thick, with about 3,000 parts. Invented. */
export function signalCard(): Board {
  const bench = createBench(OUTLINE, HOLES, {});
  const { x, y, lengthMm, widthMm } = STIFFENER;
  bench.keepFree('top', { x, y, lengthMm: lengthMm + 1, widthMm: widthMm + 1, turnDeg: 0 }, 'stiffener');
  placeFixed(bench);
  fillByChance(bench, createRandom(3511), { length: LENGTH, width: WIDTH }, PARTS - bench.parts.length);
  const signal = { kind: 'signal', copperUm: 18 } as const;
  const plane = { kind: 'plane', copperUm: 18 } as const;
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: 'signal-card',
    revision: 'C',
    outline: OUTLINE,
    cutouts: HOLES,
    laminate: {
      thicknessMm: 2,
      layers: [
        signal,
        plane,
        signal,
        plane,
        signal,
        plane,
        signal,
        signal,
        plane,
        signal,
        plane,
        signal,
        plane,
        signal,
      ],
      layersKnown: true,
    },
    parts: bench.parts,
    fiducials: [],
    covers: [STIFFENER],
    source: invented('by scripts, for trying out the program'),
    photos: [],
    straps: [],
    packages: [],
  };
}
