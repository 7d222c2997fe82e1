import type { Board } from '../board.ts';
import { areaOf } from '../contour/edges.ts';
import type { Contour } from '../geometry.ts';
import type { Problem } from '../problem.ts';
import { selfMeetings } from './contour-faults.ts';

const fault = (where: string, reason: string, todo: string): Problem => ({
  code: 'invalid-field',
  where,
  detail: { reason, todo },
});

/** What makes a board unusable though every field fits: the first such fault, or null. */
export function boardFault(board: Board): Problem | null {
  return contourFault(board.outline, 'outline') ?? cutoutFault(board) ?? duplicateFault(board);
}

/** Where a contour crosses itself or encloses nothing. */
export function contourFault(contour: Contour, where: string): Problem | null {
  const [crossing] = selfMeetings(contour, 1, true);
  if (crossing) {
    const place = `x ${crossing.at.x.toFixed(2)}, y ${crossing.at.y.toFixed(2)} mm`;
    return fault(where, `crosses itself near ${place}`, 'Move a corner so that it does not.');
  }
  if (Math.abs(areaOf(contour)) < 1e-6) return fault(where, 'encloses no area', 'Draw a closed contour.');
  return null;
}

function cutoutFault(board: Board): Problem | null {
  for (const [index, cutout] of board.cutouts.entries()) {
    const found = contourFault(cutout, `cutouts[${index}]`);
    if (found) return found;
  }
  return null;
}

function duplicateFault(board: Board): Problem | null {
  const seen = new Set<string>();
  for (const [index, part] of board.parts.entries()) {
    if (seen.has(part.refdes)) {
      return fault(
        `parts[${index}] of ${part.refdes}`,
        'has a designator that another part has too',
        'Rename one of them.',
      );
    }
    seen.add(part.refdes);
  }
  return null;
}
