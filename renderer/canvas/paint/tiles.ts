import type { Part } from '../../../shared-types/board.ts';
import { boxOf, type Side } from '../../../shared-types/geometry.ts';
import type { Tile } from '../layers/layer.ts';
import { bodyCorners } from '../picking/body-outline.ts';

/** Edge of a tile, mm. */
const TILE_MM = 15;

/** Bodies of at least this area lie under all others and have tiles of their own, mm2: cans, modules, cells. */
const LARGE_MM2 = 60;

/**
 * Parts of one side in square tiles by their centres, in the order they are drawn: large bodies first, and in a tile
 * the larger before the smaller, so that nothing is drawn under what it stands on. Each tile's box holds its bodies whole.
 */
export function tilesOf(parts: readonly Part[], side: Side): Tile[] {
  const own = parts.filter((part) => part.side === side).sort((a, b) => areaOf(b) - areaOf(a));
  const tiles = new Map<string, Part[]>();
  for (const part of own) {
    const layer = areaOf(part) >= LARGE_MM2 ? 'large' : 'small';
    const key = `${layer} ${Math.floor(part.x / TILE_MM)},${Math.floor(part.y / TILE_MM)}`;
    const tile = tiles.get(key);
    if (tile) tile.push(part);
    else tiles.set(key, [part]);
  }
  return [...tiles.values()].map((members) => ({ parts: members, box: boxOf(members.flatMap(bodyCorners)) }));
}

const areaOf = (part: Part): number => part.package.lengthMm * part.package.widthMm;
