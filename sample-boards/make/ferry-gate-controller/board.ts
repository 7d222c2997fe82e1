import type { Board } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import { cornerHoles, createBench, invented } from '../bench.ts';
import { createRandom } from '../random.ts';
import { fillByChance, outlineOf } from '../random-board.ts';
import { DRIVE_STRAP } from './straps.ts';

const LENGTH = 110;
const WIDTH = 80;
const HOLES = cornerHoles(LENGTH, WIDTH, 4, 1.6);

/** ferry-gate-controller: drives a barrier; its firmware sits in an SO-8 between a PBT connector and a can. Invented. */
export function ferryGateController(): Board {
  const outline = outlineOf(LENGTH, WIDTH);
  const bench = createBench(outline, HOLES, {});
  bench.place('U', 'SOIC-8', 52, 40, { class: 'serial-memory', value: 'HG25Q64 firmware' });
  bench.place('J', 'RJ45', 71, 40, { class: 'connector-pbt', turn: 90, value: 'Gate bus', throughHole: true });
  bench.place('C', 'Electrolytic 10x10.2', 42, 40, { value: '470u 35 V' });
  bench.keepFree('top', { x: 57.7, y: 40, lengthMm: 5, widthMm: 12, turnDeg: 0 }, 'room for the jet');
  bench.place('U', 'LQFP-64 10x10', 50, 58, { value: 'HG-CTRL controller' });
  bench.row('C', 'C 0402', { x: 46, y: 65.8 }, { x: 2, y: 0 }, ['100n', '100n', '1u', '100n'], { turn: 90 });
  bench.place('R', 'R 0402', 58, 50, { value: '10k', turn: 90 });
  bench.place('R', 'R 0402', 60, 50, { value: '4k7', turn: 90 });
  for (const x of [20, 40, 60, 80])
    bench.place('J', 'Terminal block 3 x 5.08', x, 3.7, { overEdge: true, throughHole: true, value: 'Drive' });
  for (const x of [24, 84]) bench.place('K', 'Relay, power', x, 20, { value: '24 V', throughHole: true });
  fillByChance(bench, createRandom(644), { length: LENGTH, width: WIDTH }, 96 - bench.parts.length);
  const layer = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: 'ferry-gate-controller',
    revision: '4',
    outline,
    cutouts: HOLES,
    laminate: {
      thicknessMm: 1.6,
      layers: [layer('signal'), layer('plane'), layer('plane'), layer('signal')],
      layersKnown: true,
    },
    parts: bench.parts,
    fiducials: [],
    covers: [],
    source: invented('by scripts, for trying out the program'),
    photos: [],
    straps: [DRIVE_STRAP],
    packages: [],
  };
}
