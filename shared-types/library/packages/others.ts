import type { LibraryPackage, Source } from '../library-types.ts';
import { memory } from '../sources.ts';

type Row = readonly [name: string, lengthMm: number, widthMm: number, heightMm: number, classId: string, pins?: number];

const rows = (source: Source, list: readonly Row[], shape: LibraryPackage['shape'] = 'rectangle'): LibraryPackage[] =>
  list.map(([name, lengthMm, widthMm, heightMm, classId, pinCount]) => ({
    name,
    shape,
    lengthMm,
    widthMm,
    heightMm,
    classId,
    ...(pinCount ? { pinCount } : {}),
    source,
  }));

/** Class of a standard SMD electrolytic by its diameter, mm. */
export function electrolyticClass(diameterMm: number): string {
  if (diameterMm < 7.5) return 'electrolytic-small';
  return diameterMm < 11 ? 'electrolytic-medium' : 'electrolytic-large';
}

const can = (diameter: number, height: number): Row => [
  `Electrolytic ${diameter}x${height}`,
  diameter,
  diameter,
  height,
  electrolyticClass(diameter),
  2,
];

const CANS = [
  can(4, 5.4),
  can(5, 5.4),
  can(6.3, 5.4),
  can(6.3, 7.7),
  can(8, 6.2),
  can(8, 10.2),
  can(10, 10.2),
  can(12.5, 13.5),
  can(16, 16.5),
  can(18, 16.5),
];

const TANTALUM: Row[] = [
  ['Tantalum 3216-18', 3.2, 1.6, 1.6, 'tantalum', 2],
  ['Tantalum 3528-21', 3.5, 2.8, 1.9, 'tantalum', 2],
  ['Tantalum 6032-28', 6, 3.2, 2.5, 'tantalum', 2],
  ['Tantalum 7343-31', 7.3, 4.3, 2.8, 'tantalum', 2],
  ['Tantalum 7343-43', 7.3, 4.3, 4, 'tantalum', 2],
];

const TIMING: Row[] = [
  ['Crystal 2.0x1.6', 2, 1.6, 0.5, 'crystal', 4],
  ['Crystal 2.5x2.0', 2.5, 2, 0.6, 'crystal', 4],
  ['Crystal 3.2x1.5', 3.2, 1.5, 0.8, 'crystal', 2],
  ['Crystal 3.2x2.5', 3.2, 2.5, 0.7, 'crystal', 4],
  ['Crystal 5.0x3.2', 5, 3.2, 1, 'crystal', 4],
  ['Crystal 7.0x5.0', 7, 5, 1.3, 'crystal', 4],
  ['Crystal HC-49/SMD', 11.4, 4.7, 4.2, 'crystal', 2],
  ['Crystal cylinder 2x6', 6.2, 2.1, 2.1, 'crystal-cylinder', 2],
];

const MAGNETICS: Row[] = [
  ['Inductor 3x3', 3, 3, 1.5, 'power-inductor', 2],
  ['Inductor 4x4', 4, 4, 2, 'power-inductor', 2],
  ['Inductor 5x5', 5.2, 5.2, 3, 'power-inductor', 2],
  ['Inductor 7x7', 7.3, 7.3, 4, 'power-inductor', 2],
  ['Inductor 10x10', 10.1, 10.1, 5, 'power-inductor', 2],
  ['Inductor 12x12', 12.5, 12.5, 8, 'power-inductor', 2],
  ['Choke 4-line 12x9', 12, 9, 6, 'transformer', 8],
];

const CONNECTORS: Row[] = [
  ['USB-C receptacle', 8.9, 7.4, 3.2, 'connector-unknown', 16],
  ['USB micro-B receptacle', 7.5, 5, 2.6, 'connector-unknown', 5],
  ['USB-A receptacle', 13.1, 14, 7, 'connector-pbt', 4],
  ['RJ45 with magnetics', 16, 21.5, 13.5, 'connector-pbt', 12],
  ['RJ45', 16, 16, 13, 'connector-pbt', 8],
  ['Pin header 1x06 2.54', 15.2, 2.5, 8.5, 'connector-unknown', 6],
  ['Pin header 2x05 1.27', 6.4, 3.4, 5, 'connector-unknown', 10],
  ['Pin header 2x10 2.54', 25.4, 5.1, 8.5, 'connector-unknown', 20],
  ['Terminal block 2 x 5.08', 10.2, 8.2, 10, 'connector-pa66', 2],
  ['Terminal block 3 x 5.08', 15.2, 8.2, 10, 'connector-pa66', 3],
  ['Terminal block 4 x 5.08', 20.3, 8.2, 10, 'connector-pa66', 4],
  ['Wire connector 4 x 2.0', 10, 5, 6, 'connector-pa66', 4],
  ['Card socket micro', 14, 15, 1.8, 'connector-lcp', 9],
  ['Board-to-board 2x20 0.8', 17.5, 5, 4, 'connector-lcp', 40],
  ['Coaxial receptacle, edge', 6.4, 9.5, 6.4, 'metal-can', 5],
];

const SWITCHES: Row[] = [
  ['Tact switch 6x6', 6, 6, 4.3, 'tact-switch', 4],
  ['Tact switch 4x3', 4.2, 3.2, 2.5, 'tact-switch', 4],
  ['DIP switch 4', 8.6, 11.7, 3.5, 'slide-switch', 8],
  ['Slide switch', 6.7, 2.6, 1.4, 'slide-switch', 3],
];

const MODULES: Row[] = [
  ['Relay, signal', 10, 6.5, 5.4, 'relay', 8],
  ['Relay, power', 19, 15.5, 15.5, 'relay-leaded', 5],
  ['Li cell AA half', 26, 15, 15, 'lithium-cell', 2],
  ['Li cell AA', 50, 15, 15, 'lithium-cell', 2],
  ['Camera module', 8.5, 8.5, 5, 'plastic-optics'],
  ['MEMS microphone', 3.5, 2.65, 1, 'mems-microphone', 5],
  ['MEMS oscillator 2.5x2.0', 2.5, 2, 0.75, 'mems-oscillator', 4],
];

/** Electrolytics, tantalum, crystals, magnetics, connectors, switches, cells and modules. */
export const OTHER_PACKAGES: readonly LibraryPackage[] = [
  ...rows(memory('Usual SMD can sizes'), CANS, 'round'),
  ...rows(memory('EIA 535 case sizes'), TANTALUM),
  ...rows(memory('Usual crystal and oscillator sizes'), TIMING),
  ...rows(memory('Usual inductor and choke sizes', 'L'), MAGNETICS),
  ...rows(memory('Usual connector sizes', 'L'), CONNECTORS),
  ...rows(memory('Usual switch sizes', 'L'), SWITCHES),
  ...rows(memory('Usual sizes', 'L'), MODULES),
  ...rows(
    memory('Usual sizes of holders and cells, the cell in'),
    [
      ['Coin holder 12 mm', 14, 14, 4, 'coin-cell', 2],
      ['Coin holder 20 mm', 22, 22, 5.5, 'coin-cell', 2],
      ['Supercapacitor 10 mm', 10.5, 10.5, 5, 'supercapacitor', 2],
      ['Test point 1 mm', 1, 1, 0.05, 'test-point', 1],
    ],
    'round',
  ),
];
