import { type LengthUnit, MM_PER_MIL } from '../../../shared-types/units.ts';

/**
 * The scale bar: the largest of 1, 2, 5 times a power of ten of the unit that fits into the given pixels, and its
 * length on screen. `zoom`: pixels per mm.
 */
export function scaleBar(zoom: number, unit: LengthUnit, mostPx = 130): { length: number; px: number } {
  const pxPerUnit = unit === 'mil' ? zoom * MM_PER_MIL : zoom;
  const most = mostPx / pxPerUnit;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((factor) => factor * power <= most + 1e-9) ?? 1;
  const length = Number((step * power).toPrecision(1));
  return { length, px: length * pxPerUnit };
}
