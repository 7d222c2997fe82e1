import { describe, expect, it } from 'vitest';
import { type GlyphWish, placeGlyphs } from '../../../../renderer/canvas/sites/glyph-places.ts';

const wish = (x: number, y: number, rest: Partial<GlyphWish> = {}): GlyphWish => ({
  anchor: { x, y },
  badgePx: 15,
  namePx: 0,
  fixed: false,
  ...rest,
});

describe('places of glyphs', () => {
  it('are the anchors, without a leader, while they have room', () => {
    expect(placeGlyphs([wish(0, 0), wish(60, 0)])).toEqual([
      { at: { x: 0, y: 0 }, leaderTo: null },
      { at: { x: 60, y: 0 }, leaderTo: null },
    ]);
  });

  it('move aside with a leader where glyphs or their badges would cover each other', () => {
    const [first, second] = placeGlyphs([wish(0, 0), wish(14, -16)]);
    expect(first.leaderTo).toBeNull();
    expect(second.leaderTo).toEqual({ x: 14, y: -16 });
  });

  it('keep fifty glyphs of a row of small parts apart', () => {
    const places = placeGlyphs(Array.from({ length: 50 }, (_, i) => wish((i % 10) * 9, Math.floor(i / 10) * 9)));
    for (const [i, a] of places.entries())
      for (const b of places.slice(i + 1))
        expect(Math.max(Math.abs(a.at.x - b.at.x), Math.abs(a.at.y - b.at.y))).toBeGreaterThanOrEqual(20);
  });

  it('leave a thermocouple exactly on its point', () => {
    const places = placeGlyphs([wish(0, 0), wish(3, 3, { fixed: true })]);
    expect(places[1]).toEqual({ at: { x: 3, y: 3 }, leaderTo: null });
  });
});
