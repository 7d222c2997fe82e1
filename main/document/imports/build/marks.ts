import type { Board, Part } from '../../../../shared-types/board.ts';
import { tidy } from '../outline/contour.ts';
import { padsBox } from '../pads/collect.ts';
import { boxCentre, type Point } from '../plane.ts';
import type { Layers } from './layers.ts';

type Fiducials = Board['fiducials'];

/** Fiducials that the placement table lists; they stay in the parts table too, as marks without a body. */
export function marksPlaced(parts: readonly Part[]): Fiducials {
  return parts
    .filter(
      (part) => part.class === 'mark-on-board' && /fid/i.test(`${part.refdes} ${part.package.name} ${part.value}`),
    )
    .map(({ refdes, side, x, y }) => ({ id: refdes, side, x, y }));
}

/** Fiducials that only the copper shows: references named so, on their pads. */
export function marksByPads(layers: Layers, parts: readonly Part[], shift: Point): Fiducials {
  const placed = new Set(parts.map(({ refdes }) => refdes));
  return [...layers.pads]
    .filter(([refdes]) => /^FID/i.test(refdes) && !placed.has(refdes))
    .map(([refdes, pads]) => {
      const middle = boxCentre(padsBox(pads));
      return { id: refdes.slice(0, 64), side: pads[0].side, x: tidy(middle.x + shift.x), y: tidy(middle.y + shift.y) };
    });
}
