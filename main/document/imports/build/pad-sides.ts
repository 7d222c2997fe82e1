import type { Pad } from '../pads/collect.ts';
import type { PlacementTable } from '../placements/types.ts';

/** Tables that say nothing of the side, with the side on which the surface pads of each part lie, where most of them have pads. */
export function withPadSides(
  tables: readonly PlacementTable[],
  pads: ReadonlyMap<string, readonly Pad[]>,
): readonly PlacementTable[] {
  if (pads.size === 0) return tables;
  return tables.map((table) => {
    if (table.sideFrom !== 'assumed') return table;
    const placements = table.placements.map((one) => {
      const surface = (pads.get(one.refdes) ?? []).filter(({ through }) => !through);
      const bottom = surface.filter(({ side }) => side === 'bottom').length;
      return bottom * 2 > surface.length ? { ...one, side: 'bottom' as const } : one;
    });
    const told = placements.filter(({ refdes }) => pads.has(refdes)).length;
    return told * 2 > placements.length ? { ...table, placements, sideFrom: 'pads' as const } : table;
  });
}
