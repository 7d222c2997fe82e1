import type { Board } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import type { Contour } from '../../../shared-types/geometry.ts';
import { type Bench, circle, createBench, invented, QUARTER } from '../bench.ts';

/** 70 x 45 mm with round corners and a half-round notch where the sensor cable leaves. */
const OUTLINE: Contour = [
  { x: 4, y: 0 },
  { x: 66, y: 0, bulge: QUARTER },
  { x: 70, y: 4 },
  { x: 70, y: 41, bulge: QUARTER },
  { x: 66, y: 45 },
  { x: 4, y: 45, bulge: QUARTER },
  { x: 0, y: 41 },
  { x: 0, y: 12, bulge: -1 },
  { x: 0, y: 8 },
  { x: 0, y: 4, bulge: QUARTER },
];
const CUTOUTS: Contour[] = [circle(4, 4, 1.6), circle(66, 4, 1.6), circle(4, 41, 1.6), circle(66, 41, 1.6)];
const guessed = { more: { classGuessed: true } };

function placeController({ place, row }: Bench): void {
  place('U1', 'BGA 10x10 0.8', 27, 28, { value: 'TG-MC144 controller', more: { classGuessed: true } });
  row('C', 'C 0402', { x: 23.5, y: 34.4 }, { x: 2.3, y: 0 }, ['', '', '', ''], { turn: 90 });
  row('C', 'C 0402', { x: 23.5, y: 21.6 }, { x: 2.3, y: 0 }, ['', '', '', ''], { turn: 90 });
  place('C', 'C 0603', 20.6, 31.5, { turn: 90 });
  place('Y', 'Crystal 3.2x2.5', 20.4, 36.2, { value: '16M' });
  place('Y', 'Crystal 3.2x1.5', 34.6, 22.4, { turn: 90, value: '32.768k' });
  row('C', 'C 0402', { x: 17.4, y: 35.4 }, { x: 0, y: 1.6 }, ['', ''], {});
  place('U', 'SOIC-8', 13, 28, { turn: 90, value: 'TG-FL64 log memory', ...guessed });
  place('C', 'C 0402', 18, 25.2, { turn: 90 });
}

function placeSupply({ place, row }: Bench): void {
  place('BT1', 'Li cell AA half', 47.5, 10.4, { value: '3.6 V lithium, 1/2 AA', throughHole: true });
  place('C', 'Tantalum 7343-31', 28, 13.4, { turn: 90, value: '220u' });
  place('C', 'Tantalum 3528-21', 21.6, 14.6, { turn: 90, value: '47u' });
  place('U', 'SOT-23-5', 16.4, 16.6, { value: 'Regulator 3 V', ...guessed });
  place('D', 'SOD-123', 16.2, 12.4, { value: '' });
  row('C', 'C 0603', { x: 11.6, y: 17.6 }, { x: 0, y: -2.4 }, ['', ''], {});
  place('Q', 'SOT-23', 31.8, 18.4, { turn: 90, value: 'Load switch', ...guessed });
  row('R', 'R 0603', { x: 16, y: 20.4 }, { x: 2.8, y: 0 }, ['100k', '1M'], {});
}

function placeMeasuring({ place, row }: Bench): void {
  place('U', 'TSSOP-16', 44, 28, { value: 'TG-AD24 converter', ...guessed });
  row('C', 'C 0603', { x: 39.2, y: 25.4 }, { x: 0, y: 2.6 }, ['', '', ''], { turn: 90 });
  row('R', 'R 0603', { x: 49, y: 25.6 }, { x: 0, y: 2 }, ['249R', '249R', '10k'], {});
  place('U', 'SOIC-8', 55.6, 28, { turn: 90, value: 'Op-amp', ...guessed });
  row('C', 'C 0402', { x: 55, y: 23.6 }, { x: 2, y: 0 }, ['', ''], { turn: 90 });
  place('U', 'SOT-23', 44, 22, { value: 'Reference', ...guessed });
  place('D', 'SMA', 60.8, 34.6, { turn: 90, value: 'Surge' });
  place('L', 'L 1206', 56, 35, { value: '' });
  place('J1', 'Wire connector 4 x 2.0', 67.9, 26, {
    turn: 270,
    value: 'Pressure sensor',
    overEdge: true,
    class: 'connector-unknown',
    throughHole: true,
  });
}

function placeDoors({ place, row }: Bench): void {
  place('J2', 'Pin header 1x06 2.54', 32, 42.6, { value: 'Service', throughHole: true });
  place('U', 'SOIC-8', 8, 34.2, { turn: 90, value: 'Bus driver', ...guessed });
  place('J3', 'Wire connector 4 x 2.0', 2.1, 21.6, {
    turn: 90,
    value: 'Bus',
    overEdge: true,
    class: 'connector-unknown',
    throughHole: true,
  });
  place('SW', 'Tact switch 4x3', 47.6, 41.6, { value: 'Start' });
  place('D', 'LED 0603', 53, 42, { value: 'green' });
  place('R', 'R 0603', 53, 39.6, { value: '1k' });
  row('R', 'R 0402', { x: 42, y: 36 }, { x: 1.8, y: 0 }, ['10k', '10k', '4k7', '4k7'], { turn: 90 });
  place('R', 'R 0402', 49.2, 36, { turn: 90, value: '', fitted: false });
}

function placeUnderside({ place, row }: Bench): void {
  const side = 'bottom';
  row('C', 'C 0402', { x: 25, y: 29.4 }, { x: 2, y: 0 }, ['', '', ''], { side, turn: 90 });
  row('C', 'C 0402', { x: 25, y: 26.6 }, { x: 2, y: 0 }, ['', '', ''], { side, turn: 90 });
  place('C', 'C 0805', 33.4, 28, { side, turn: 90 });
  row('TP', 'Test point 1 mm', { x: 38, y: 33 }, { x: 2.54, y: 0 }, ['3V0', 'RST', 'CLK', 'DAT', 'GND'], { side });
}

/** A logger that sits in a harbour wall, drawn by hand from photos: coated, alloy not known. An invention. */
export function tideGaugeLogger(): Board {
  const bench = createBench(OUTLINE, CUTOUTS, { alloy: 'unknown', coated: true });
  placeController(bench);
  placeSupply(bench);
  placeMeasuring(bench);
  placeDoors(bench);
  placeUnderside(bench);
  const layer = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: 'tide-gauge-logger',
    revision: '',
    outline: OUTLINE,
    cutouts: CUTOUTS,
    laminate: {
      thicknessMm: 1.6,
      layers: [layer('signal'), layer('plane'), layer('plane'), layer('signal')],
      layersKnown: false,
    },
    parts: bench.parts,
    fiducials: [],
    covers: [],
    photos: [],
    straps: [],
    packages: [],
    source: invented('as if drawn by hand from two photos and a ruler; made by a script of this project'),
  };
}
