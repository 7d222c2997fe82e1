import type { PlacementTable } from '../placements/types.ts';

/** Fewer bottom parts say nothing by their signs. */
const LEAST = 3;

/**
 * Tables with y of the bottom as seen from the top. Some exports turn the board over its long edge and count y downwards there:
 * told by its signs, all of the bottom's y at or below zero while all of the top's is at or above, or by choice.
 */
export function withBottomY(
  tables: readonly PlacementTable[],
  chosen: 'asSeenFromTop' | 'negated' | undefined,
): { tables: readonly PlacementTable[]; bottomYNegated: boolean } {
  const bottomYNegated = chosen ? chosen === 'negated' : signsSay(tables);
  if (!bottomYNegated) return { tables, bottomYNegated };
  const turned = tables.map((table) => ({
    ...table,
    placements: table.placements.map((placement) =>
      placement.side === 'bottom'
        ? { ...placement, y: -placement.y, pad1: placement.pad1 && { ...placement.pad1, y: -placement.pad1.y } }
        : placement,
    ),
  }));
  return { tables: turned, bottomYNegated };
}

function signsSay(tables: readonly PlacementTable[]): boolean {
  const all = tables.flatMap(({ placements }) => placements);
  const bottom = all.filter(({ side }) => side === 'bottom');
  const top = all.filter(({ side }) => side === 'top');
  return bottom.length >= LEAST && top.length > 0 && bottom.every(({ y }) => y < 0) && top.every(({ y }) => y >= 0);
}
