import type { Part } from '../../../shared-types/board.ts';
import { boxOf, type Side } from '../../../shared-types/geometry.ts';
import type { Tile } from '../layers/layer.ts';
import { bodyCorners } from '../picking/body-outline.ts';

/** Edge of a tile, mm. */
const TILE_MM = 15;

/** Parts of one side in square tiles by their centres; each tile's box holds its bodies whole. */
export function tilesOf(parts: readonly Part[], side: Side): Tile[] {
  const tiles = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.side !== side) continue;
    const key = `${Math.floor(part.x / TILE_MM)},${Math.floor(part.y / TILE_MM)}`;
    const tile = tiles.get(key);
    if (tile) tile.push(part);
    else tiles.set(key, [part]);
  }
  return [...tiles.values()].map((members) => ({ parts: members, box: boxOf(members.flatMap(bodyCorners)) }));
}
