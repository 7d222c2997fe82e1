import type { Board } from '../board.ts';
import { type Contour, flattenContour, type Point, segmentsCross, signedArea } from '../geometry.ts';
import type { Problem } from '../problem.ts';

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
  const polygon = flattenContour(contour, 0.05);
  const crossing = selfCrossing(polygon);
  if (crossing) {
    const place = `x ${crossing.x.toFixed(2)}, y ${crossing.y.toFixed(2)} mm`;
    return fault(where, `crosses itself near ${place}`, 'Move a corner so that it does not.');
  }
  if (Math.abs(signedArea(polygon)) < 1e-6) return fault(where, 'encloses no area', 'Draw a closed contour.');
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

/** A point where the closed polygon crosses itself; null: nowhere. Edges sorted by x, so long outlines stay fast. */
export function selfCrossing(polygon: readonly Point[]): Point | null {
  const edges = polygon.map((a, index) => {
    const b = polygon[(index + 1) % polygon.length];
    return { a, b, minX: Math.min(a.x, b.x), maxX: Math.max(a.x, b.x) };
  });
  edges.sort((first, second) => first.minX - second.minX);
  for (let i = 0; i < edges.length; i++) {
    for (let j = i + 1; j < edges.length && edges[j].minX <= edges[i].maxX; j++) {
      if (segmentsCross(edges[i].a, edges[i].b, edges[j].a, edges[j].b)) return edges[j].a;
    }
  }
  return null;
}
