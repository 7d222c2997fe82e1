import type { LibraryPackage, Source } from '../library-types.ts';
import { memory } from '../sources.ts';

/** Name, length (own x), width (own y), height, mm; pins. For SO families the leads stand along the length. */
type Row = readonly [name: string, lengthMm: number, widthMm: number, heightMm: number, pinCount: number];

const rows = (classId: string, source: Source, list: readonly Row[]): LibraryPackage[] =>
  list.map(([name, lengthMm, widthMm, heightMm, pinCount]) => ({
    name,
    shape: 'rectangle',
    lengthMm,
    widthMm,
    heightMm,
    classId,
    pinCount,
    source,
  }));

const SO: readonly Row[] = [
  ['SOIC-8', 4.9, 3.9, 1.75, 8],
  ['SOIC-8W', 5.3, 5.3, 2.1, 8],
  ['SOIC-14', 8.65, 3.9, 1.75, 14],
  ['SOIC-16', 9.9, 3.9, 1.75, 16],
  ['SOIC-16W', 10.3, 7.5, 2.65, 16],
  ['SOIC-18W', 11.55, 7.5, 2.65, 18],
  ['SOIC-20W', 12.8, 7.5, 2.65, 20],
  ['SOIC-24W', 15.4, 7.5, 2.65, 24],
  ['SOIC-28W', 17.9, 7.5, 2.65, 28],
  ['SSOP-16', 6.2, 5.3, 2, 16],
  ['SSOP-20', 7.2, 5.3, 2, 20],
  ['SSOP-28', 10.2, 5.3, 2, 28],
  ['TSSOP-8', 3, 4.4, 1.2, 8],
  ['TSSOP-14', 5, 4.4, 1.2, 14],
  ['TSSOP-16', 5, 4.4, 1.2, 16],
  ['TSSOP-20', 6.5, 4.4, 1.2, 20],
  ['TSSOP-24', 7.8, 4.4, 1.2, 24],
  ['TSSOP-28', 9.7, 4.4, 1.2, 28],
  ['MSOP-8', 3, 3, 1.1, 8],
  ['MSOP-10', 3, 3, 1.1, 10],
  ['TSOP-48', 18.4, 12, 1.2, 48],
  ['TSOP-54', 22.2, 10.2, 1.2, 54],
];

const SOT: readonly Row[] = [
  ['SOT-23', 2.9, 1.3, 1.1, 3],
  ['SOT-23-5', 2.9, 1.6, 1.15, 5],
  ['SOT-23-6', 2.9, 1.6, 1.15, 6],
  ['SOT-23-8', 2.9, 1.6, 1.15, 8],
  ['SOT-143', 2.9, 1.3, 1.1, 4],
  ['SOT-323', 2, 1.25, 0.95, 3],
  ['SOT-343', 2, 1.25, 0.95, 4],
  ['SOT-353', 2, 1.25, 0.95, 5],
  ['SOT-363', 2, 1.25, 0.95, 6],
  ['SOT-523', 1.6, 0.8, 0.75, 3],
  ['SOT-553', 1.6, 1.2, 0.55, 5],
  ['SOT-563', 1.6, 1.2, 0.55, 6],
  ['SOT-666', 1.6, 1.2, 0.55, 6],
  ['SOT-723', 1.2, 0.8, 0.5, 3],
  ['SOT-883', 1, 0.6, 0.5, 3],
];

const POWER: readonly Row[] = [
  ['SOT-89', 4.5, 2.5, 1.5, 3],
  ['SOT-223', 6.5, 3.5, 1.7, 4],
  ['TO-252', 6.6, 6.1, 2.3, 3],
  ['TO-263', 10.2, 9.2, 4.5, 3],
];

const DIODES: readonly Row[] = [
  ['SOD-123', 2.7, 1.6, 1.2, 2],
  ['SOD-323', 1.7, 1.25, 1, 2],
  ['SOD-523', 1.2, 0.8, 0.6, 2],
  ['SOD-923', 0.8, 0.6, 0.4, 2],
  ['SMA', 4.3, 2.6, 2.3, 2],
  ['SMB', 4.3, 3.6, 2.3, 2],
  ['SMC', 6.9, 5.9, 2.3, 2],
];

const qfn = (pins: number, length: number, width = length): Row => [
  `QFN-${pins} ${length}x${width}`,
  length,
  width,
  0.85,
  pins,
];
const qfp = (pins: number, body: number): Row => [`LQFP-${pins} ${body}x${body}`, body, body, 1.6, pins];
const son = (pins: number, length: number, width = length): Row => [
  `DFN-${pins} ${length}x${width}`,
  length,
  width,
  0.8,
  pins,
];

/** Leaded and leadless packages. Sizes of the JEDEC outlines (MS-012, MS-013, MO-153, MO-220, MS-026...), from memory. */
export const SEMICONDUCTOR_PACKAGES: readonly LibraryPackage[] = [
  ...rows('so', memory('JEDEC MS-012, MS-013, MO-153, MO-187'), SO),
  ...rows('sot', memory('JEDEC TO-236, MO-178, MO-203'), SOT),
  ...rows('power-package', memory('JEDEC TO-243, TO-261, TO-252, TO-263'), POWER),
  ...rows('diode', memory('JEDEC DO-214, DO-219 and the SOD series'), DIODES),
  ...rows('qfn', memory('JEDEC MO-220, MO-229'), [
    qfn(16, 3),
    qfn(16, 4),
    qfn(20, 4),
    qfn(24, 4),
    qfn(28, 5),
    qfn(32, 5),
    qfn(40, 6),
    qfn(48, 7),
    qfn(56, 7),
    qfn(56, 8),
    qfn(64, 9),
    son(6, 2),
    son(8, 2),
    son(8, 3),
    son(8, 6, 5),
    son(10, 3),
  ]),
  ...rows('qfp', memory('JEDEC MS-026'), [
    qfp(32, 7),
    qfp(48, 7),
    qfp(64, 10),
    qfp(80, 12),
    qfp(100, 14),
    qfp(128, 14),
    qfp(144, 20),
    qfp(176, 24),
    qfp(208, 28),
  ]),
];
