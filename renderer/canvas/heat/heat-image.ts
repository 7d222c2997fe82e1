import { CIVIDIS } from '../theme.ts';
import type { PaddedField } from './padded-field.ts';
import type { HeatScale } from './shown-field.ts';

/** Colour of a temperature, index into cividis: 0 at the cold end of the scale, 255 at the hot end. */
export function colourIndex(celsius: number, scale: Pick<HeatScale, 'lowC' | 'highC'>): number {
  const share = (celsius - scale.lowC) / (scale.highC - scale.lowC);
  return Math.max(0, Math.min(255, Math.round(share * 255)));
}

/** Red, green, blue, alpha bytes of a field, row 0 (the lowest on the board) first. */
export function heatPixels(field: PaddedField, scale: HeatScale): Uint8ClampedArray<ArrayBuffer> {
  const pixels = new Uint8ClampedArray(field.columns * field.rows * 4);
  for (let i = 0; i < field.values.length; i++) {
    const [red, green, blue] = CIVIDIS[colourIndex(field.values[i], scale)];
    pixels[4 * i] = red;
    pixels[4 * i + 1] = green;
    pixels[4 * i + 2] = blue;
    pixels[4 * i + 3] = 255;
  }
  return pixels;
}
