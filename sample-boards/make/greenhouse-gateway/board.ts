import type { Board } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import { createBench, invented } from '../bench.ts';
import { placeCompute, placeStraps } from './compute.ts';
import { placeField } from './field.ts';
import { placeNetwork } from './network.ts';
import { placePower } from './power.ts';
import { placeRadio, RADIO_CAN } from './radio.ts';
import { CUTOUTS, LAMINATE, OUTLINE } from './shape.ts';
import { MEMORY_STRAPS } from './straps.ts';
import { placeUnderside } from './underside.ts';

const FIDUCIALS: Board['fiducials'] = [
  { id: 'FM1', side: 'top', x: 10, y: 41 },
  { id: 'FM2', side: 'top', x: 146, y: 40 },
  { id: 'FM3', side: 'top', x: 146, y: 88 },
  { id: 'FM7', side: 'top', x: 59.4, y: 65.6 },
  { id: 'FM8', side: 'top', x: 80.2, y: 49.6 },
  { id: 'FM4', side: 'bottom', x: 10, y: 41 },
  { id: 'FM5', side: 'bottom', x: 146, y: 40 },
  { id: 'FM6', side: 'bottom', x: 146, y: 88 },
];

/** A gateway that runs a greenhouse: processor, memories, radio, relays, probes. An invention: it exists nowhere. */
export function greenhouseGateway(): Board {
  const bench = createBench(OUTLINE, CUTOUTS, { alloy: 'sac305' });
  for (const { side, x, y, id } of FIDUCIALS) bench.keepFree(side, { x, y, lengthMm: 2, widthMm: 2, turnDeg: 0 }, id);
  placeCompute(bench);
  placeStraps(bench);
  placePower(bench);
  placeNetwork(bench);
  placeRadio(bench);
  placeField(bench);
  placeUnderside(bench);
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: 'greenhouse-gateway',
    revision: 'C',
    outline: OUTLINE,
    cutouts: CUTOUTS,
    laminate: LAMINATE,
    parts: bench.parts,
    fiducials: FIDUCIALS,
    covers: [RADIO_CAN],
    photos: [],
    straps: [MEMORY_STRAPS],
    packages: [],
    source: invented('made by a script of this project; a board that exists nowhere'),
  };
}
