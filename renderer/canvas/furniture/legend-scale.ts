import { colourIndex } from '../heat/heat-image.ts';
import type { HeatScale } from '../heat/shown-field.ts';
import { CIVIDIS, HEAT_ALPHA, mixed } from '../theme.ts';

/** Which of the scale's numbers are written, so that none touch: every one, every second, every third... */
export function writtenLevels(count: number, widthPx: number, numberPx = 30): number[] {
  const every = Math.max(1, Math.ceil((count * numberPx) / widthPx));
  return Array.from({ length: count }, (_, index) => index).filter((index) => index % every === 0);
}

/** Colour of a place on the legend, 0 cold to 1 hot, as it looks on the board. */
export function legendColour(share: number, scale: HeatScale, ground: number): string {
  const celsius = scale.lowC + share * (scale.highC - scale.lowC);
  const [red, green, blue] = mixed(CIVIDIS[colourIndex(celsius, scale)], ground, HEAT_ALPHA);
  return `rgb(${red}, ${green}, ${blue})`;
}
