import type { Board } from '../../../shared-types/board.ts';
import { PLACEMENT_HEADINGS, placementSide, yesNo } from '../../../shared-types/words/exports.ts';
import { csvBytes } from './csv.ts';

/**
 * Every part as a row of a placement table: mm from the board's 0, 0, x as seen from the top on both sides, degrees
 * counter-clockwise seen from the top (bottom parts mirrored own y to -y before). It comes back by the import.
 */
export function placementsCsv({ parts }: Board): Uint8Array {
  return csvBytes(
    PLACEMENT_HEADINGS,
    parts.map(({ refdes, value, package: { name, heightMm }, x, y, turn, side, fitted }) => [
      refdes,
      value,
      name,
      x,
      y,
      turn,
      placementSide(side),
      yesNo(fitted),
      heightMm,
    ]),
  );
}
