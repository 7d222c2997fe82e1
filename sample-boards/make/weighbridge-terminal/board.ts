import type { Board, Cover } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import { cornerHoles, createBench, invented } from '../bench.ts';
import { createRandom } from '../random.ts';
import { fillByChance, outlineOf } from '../random-board.ts';

const LENGTH = 120;
const WIDTH = 90;
const HOLES = cornerHoles(LENGTH, WIDTH, 4, 1.6);

/** Soldered over the memory and the array beside it. */
const CAN: Cover = {
  id: 'SH1',
  kind: 'can',
  side: 'top',
  x: 62,
  y: 48,
  lengthMm: 34,
  widthMm: 20,
  turn: 0,
  heightMm: 3,
  sheetMm: 0.2,
  material: 'tinned-steel',
  fixing: 'soldered',
};

/** weighbridge-terminal: a memory under a soldered can, an underfilled array 3 mm beside it. Invented. */
export function weighbridgeTerminal(): Board {
  const outline = outlineOf(LENGTH, WIDTH);
  const bench = createBench(outline, HOLES, {});
  bench.place('U', 'BGA 9x13 0.8', 53, 48, { turn: 90, value: 'HG-MEM2G memory' });
  bench.place('U', 'BGA 12x12 0.8', 68.5, 48, { value: 'HG-MET12 metering', more: { underfilled: true } });
  bench.keepFree('top', { x: CAN.x, y: CAN.y, lengthMm: 35, widthMm: 21, turnDeg: 0 }, 'can');
  bench.place('BT', 'Coin holder 20 mm', 20, 66, { value: 'CR2032' });
  bench.place('C', 'Electrolytic 12.5x13.5', 96, 66, { value: '1000u 25 V' });
  bench.place('U', 'LQFP-100 14x14', 30, 36, { value: 'HG-TERM controller' });
  for (const x of [24, 44, 64, 84])
    bench.place('J', 'Terminal block 3 x 5.08', x, 3.7, { overEdge: true, throughHole: true, value: 'Cells' });
  fillByChance(bench, createRandom(50124), { length: LENGTH, width: WIDTH }, 130 - bench.parts.length);
  const layer = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: 'weighbridge-terminal',
    revision: 'B2',
    outline,
    cutouts: HOLES,
    laminate: {
      thicknessMm: 1.6,
      layers: [layer('signal'), layer('plane'), layer('signal'), layer('signal'), layer('plane'), layer('signal')],
      layersKnown: true,
    },
    parts: bench.parts,
    fiducials: [],
    covers: [CAN],
    source: invented('by scripts, for trying out the program'),
    photos: [],
    straps: [],
    packages: [],
  };
}
