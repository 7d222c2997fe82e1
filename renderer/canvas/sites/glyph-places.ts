import type { Point } from '../../../shared-types/geometry.ts';
import { boxAround, overlap, type PixelBox } from '../drawing/boxes.ts';

/** Size of a tag's glyph on screen at any zoom, CSS pixels. */
export const GLYPH_PX = 20;
/** Height of the badge with the order number, and of the lettering beside a thermocouple. */
export const BADGE_PX = 15;

/** What wants a place: its anchor, scene pixels; the width of its badge (0: none); the width of a name at its right (0: none). */
export type GlyphWish = { anchor: Point; badgePx: number; namePx: number; fixed: boolean };

export type GlyphPlace = {
  /** Middle of the glyph, scene pixels. */
  at: Point;
  /** Where the leader line ends; null: the glyph stands on its anchor. */
  leaderTo: Point | null;
};

/** Left edge and top of a badge from the middle of its glyph: outside at the upper right. */
export const BADGE_OFFSET = { x: GLYPH_PX / 2 - 2, y: -GLYPH_PX / 2 - 9 };
/** Left edge of a thermocouple's name from the middle of its ring. */
export const NAME_OFFSET_PX = GLYPH_PX / 2 + 3;

function boxesAt(at: Point, wish: GlyphWish): PixelBox[] {
  const boxes = [boxAround(at, GLYPH_PX + 2, GLYPH_PX + 2)];
  if (wish.badgePx > 0) {
    const minX = at.x + BADGE_OFFSET.x;
    const minY = at.y + BADGE_OFFSET.y;
    boxes.push({ minX, minY, maxX: minX + wish.badgePx + 1, maxY: minY + BADGE_PX + 1 });
  }
  if (wish.namePx > 0) {
    const minX = at.x + NAME_OFFSET_PX;
    boxes.push({ minX, minY: at.y - 8, maxX: minX + wish.namePx, maxY: at.y + 8 });
  }
  return boxes;
}

/**
 * Stands glyphs on their anchors, first come first served; one that would cover an earlier glyph, its badge or its
 * name moves to the nearest free place around and gets a leader line. Fixed ones never move. Same input, same places.
 */
export function placeGlyphs(wishes: readonly GlyphWish[]): GlyphPlace[] {
  const taken = takenBoxes();
  return wishes.map((wish) => {
    const { anchor } = wish;
    const free = (at: Point) => boxesAt(at, wish).every((box) => !taken.hits(box));
    const at = wish.fixed || free(anchor) ? anchor : freePlaceNear(anchor, free);
    for (const box of boxesAt(at, wish)) taken.add(box);
    return { at, leaderTo: at === anchor ? null : anchor };
  });
}

const CELL_PX = 48;

/** Boxes in a coarse grid, so that hundreds of glyphs are placed in no time. */
function takenBoxes() {
  const cells = new Map<string, PixelBox[]>();
  const keys = (box: PixelBox): string[] => {
    const found: string[] = [];
    for (let x = Math.floor(box.minX / CELL_PX); x <= Math.floor(box.maxX / CELL_PX); x++)
      for (let y = Math.floor(box.minY / CELL_PX); y <= Math.floor(box.maxY / CELL_PX); y++) found.push(`${x},${y}`);
    return found;
  };
  return {
    hits: (box: PixelBox) => keys(box).some((key) => cells.get(key)?.some((other) => overlap(box, other))),
    add(box: PixelBox) {
      for (const key of keys(box)) {
        const cell = cells.get(key);
        if (cell) cell.push(box);
        else cells.set(key, [box]);
      }
    },
  };
}

function freePlaceNear(anchor: Point, free: (at: Point) => boolean): Point {
  for (let radius = 26; radius <= 182; radius += 12) {
    const count = Math.round((2 * Math.PI * radius) / 16);
    for (let i = 0; i < count; i++) {
      // Up and to the right first: the hand that holds the pointer covers the lower right.
      const angle = -Math.PI / 4 + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 2 * Math.PI) / count;
      const at = { x: anchor.x + radius * Math.cos(angle), y: anchor.y + radius * Math.sin(angle) };
      if (free(at)) return at;
    }
  }
  return anchor;
}
