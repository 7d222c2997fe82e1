import type { LibraryPackage } from '../library-types.ts';
import { memory } from '../sources.ts';

/** Body (mm), pitch (mm), height (mm), class; balls when the array is usually full or a usual map exists. */
type Row = readonly [length: number, width: number, pitch: number, height: number, balls?: number, classId?: string];

const ROWS: readonly Row[] = [
  [6, 6, 0.5, 1],
  [7, 7, 0.5, 1],
  [8, 8, 0.5, 1],
  [8, 8, 0.8, 1.2, 81],
  [9, 9, 0.8, 1.2, 100],
  [10, 10, 0.8, 1.2, 144],
  [10, 10, 0.5, 1.1],
  [12, 12, 0.8, 1.3, 196],
  [12, 12, 0.5, 1.1],
  [13, 13, 0.8, 1.3, 225],
  [14, 14, 0.8, 1.4, 256],
  [14, 14, 0.65, 1.3],
  [15, 15, 0.8, 1.4, 324],
  [17, 17, 0.8, 1.4, 400],
  [17, 17, 1, 1.7, 256],
  [19, 19, 0.8, 1.4, 484],
  [19, 19, 1, 1.7, 324],
  [21, 21, 0.8, 1.6, 625],
  [23, 23, 1, 2.2, 484],
  [27, 27, 1, 2.4, 676],
  [27, 27, 1.27, 2.4, 400],
  [31, 31, 1, 2.5, 900],
  [31, 31, 1, 3.2, 900, 'bga-lidded'],
  [35, 35, 1, 3.3, 1156, 'bga-lidded'],
  [40, 40, 1, 3.5, 1517, 'bga-lidded'],
  [45, 45, 1, 3.6, 1932, 'bga-lidded'],
  [9, 13, 0.8, 1.1, 96],
  [7.5, 13, 0.8, 1.1, 96],
  [8, 10.5, 0.8, 1.1, 78],
  [8, 12.5, 0.8, 1.1, 84],
  [10, 14.5, 0.8, 1.1, 200],
  [11.5, 13, 0.5, 1, 153, 'flash-memory'],
  [14, 18, 1, 1.2, 100, 'flash-memory'],
];

const decimal = (mm: number): string => (Number.isInteger(mm) ? mm.toFixed(1) : String(mm));

/** Arrays by body and pitch: 'BGA 17x17 0.8'; with a metal lid 'BGA 35x35 1.0 lidded'. */
export const ARRAY_PACKAGES: readonly LibraryPackage[] = ROWS.map(
  ([lengthMm, widthMm, pitch, heightMm, balls, classId = 'bga']) => ({
    name: `BGA ${lengthMm}x${widthMm} ${decimal(pitch)}${classId === 'bga-lidded' ? ' lidded' : ''}`,
    shape: 'rectangle',
    lengthMm,
    widthMm,
    heightMm,
    classId,
    ...(balls ? { pinCount: balls } : {}),
    source: memory('Usual bodies of JEDEC MO-192, MO-205, MO-275 arrays; heights typical', 'L'),
  }),
);
