import type { Cover } from '../../../shared-types/board.ts';
import type { Bench } from '../bench.ts';

const CAN = { x: 113, y: 85, lengthMm: 26, widthMm: 19 } as const;

export const RADIO_CAN: Cover = {
  id: 'CV1',
  kind: 'can',
  side: 'top',
  ...CAN,
  turn: 0,
  heightMm: 3,
  sheetMm: 0.2,
  material: 'nickel-silver',
  fixing: 'soldered',
};

/** Walls of the can: nobody stands on its soldered rim. */
function keepRimFree({ keepFree }: Bench): void {
  const { x, y, lengthMm: l, widthMm: w } = CAN;
  for (const [dx, dy, length, width] of [
    [0, w / 2, l + 1, 0.8],
    [0, -w / 2, l + 1, 0.8],
    [l / 2, 0, 0.8, w + 1],
    [-l / 2, 0, 0.8, w + 1],
  ])
    keepFree('top', { x: x + dx, y: y + dy, lengthMm: length, widthMm: width, turnDeg: 0 }, 'the rim of the can');
}

/** Radio under its can, coaxial receptacle beside it. */
export function placeRadio(bench: Bench): void {
  const { place, row } = bench;
  keepRimFree(bench);
  place('U12', 'QFN-40 6x6', 109.5, 86, { value: 'HG-RF868 radio' });
  place('Y', 'Crystal 3.2x2.5', 103, 87.5, { value: '26M' });
  place('U13', 'QFN-16 3x3', 118.5, 86, { value: 'HG-FE868 front end' });
  row('C', 'C 0402', { x: 103, y: 84.6 }, { x: 0, y: -1.5 }, ['10p', '10p'], {});
  row('C', 'C 0402', { x: 108.5, y: 90.6 }, { x: 1.8, y: 0 }, ['100n', '100p'], { turn: 90 });
  row('C', 'C 0402', { x: 107, y: 81.4 }, { x: 1.6, y: 0 }, ['100n', '100p'], { turn: 90 });
  row('L', 'L 0402', { x: 114.4, y: 84.6 }, { x: 0, y: 1.4 }, ['3n9', '8n2'], {});
  row('C', 'C 0402', { x: 122.6, y: 85 }, { x: 0, y: 1.5 }, ['2p7', '4p7'], {});
  row('C', 'C 0402', { x: 117, y: 82.4 }, { x: 1.6, y: 0 }, ['100n', '100p'], { turn: 90 });
  place('R', 'R 0402', 118.5, 90, { turn: 90, value: '0R' });
  place('J4', 'Coaxial receptacle, edge', 132, 96, { value: 'Antenna', overEdge: true });
  place('C', 'C 0402', 128.4, 89, { turn: 90, value: '100p', fitted: false });
}
