import type { Part } from '../../../../shared-types/board.ts';
import { contourFault } from '../../../../shared-types/rules/board-faults.ts';
import type { OutlineChoice } from '../outline/choose.ts';
import { type BoardContour, outlineContours } from './contours.ts';

export interface SoundContours extends BoardContour {
  /** What was wrong with the outline that was drawn; null: it was taken. */
  readonly outlineBroken: string | null;
  /** Cutouts that cross themselves or enclose nothing, left out. */
  readonly cutoutsBroken: number;
}

/**
 * Contours of the chosen outline. A damaged one shall not cost the parts: a rectangle round them stands in for it. Without parts it
 * comes out as it is, to be told as what is wrong.
 */
export function soundContours(choice: OutlineChoice | null, parts: readonly Part[]): SoundContours {
  const drawn = outlineContours(choice, parts);
  if (choice === null) return { ...drawn, outlineBroken: null, cutoutsBroken: 0 };
  const fault = parts.length > 0 ? contourFault(drawn.outline, 'outline') : null;
  if (fault) {
    return { ...outlineContours(null, parts), outlineBroken: String(fault.detail?.reason), cutoutsBroken: 0 };
  }
  const cutouts = drawn.cutouts.filter((cutout) => contourFault(cutout, 'cutout') === null);
  return { ...drawn, cutouts, outlineBroken: null, cutoutsBroken: drawn.cutouts.length - cutouts.length };
}
