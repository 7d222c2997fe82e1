import type { Part } from '../../../shared-types/board.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import { TAG_GLYPHS } from '../../../shared-types/rules/tag-glyphs.ts';
import type { Tag, TagOf } from '../../../shared-types/tags.ts';
import { type Mark, type Stroke, textWidth } from '../drawing/marks.ts';
import { partsByName, type Scene, tagsByPart, watchPoints } from '../scene.ts';
import {
  BADGE_OFFSET,
  BADGE_PX,
  GLYPH_PX,
  type GlyphPlace,
  type GlyphWish,
  NAME_OFFSET_PX,
  placeGlyphs,
} from '../sites/glyph-places.ts';
import type { Theme } from '../theme.ts';
import { type Projection, project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** A glyph on the canvas: what it stands for and where. */
export type ShownGlyph = GlyphPlace & { tag: Tag };

/** Width of the badge with an order number, CSS pixels. */
const badgeWidth = (order: number): number => Math.max(15, textWidth(String(order)) + 6);

/** Glyphs of the shown side: thermocouples stand exactly on their points and come first, then parts in the order of work. */
export function shownGlyphs(tags: readonly Tag[], parts: readonly Part[], projection: Projection): ShownGlyph[] {
  const byName = partsByName(parts);
  const shown: { tag: Tag; wish: GlyphWish }[] = [];
  for (const tag of watchPoints(tags))
    if (tag.side === projection.side)
      shown.push({
        tag,
        wish: { anchor: project(projection, tag), badgePx: 0, namePx: textWidth(tag.name), fixed: true },
      });
  const onParts = [...tagsByPart(tags).values()].flat().sort((a, b) => (a.order ?? 1e9) - (b.order ?? 1e9));
  for (const tag of onParts) {
    const part = byName.get(tag.refdes);
    if (part?.side !== projection.side) continue;
    const badgePx = tag.order === null ? 0 : badgeWidth(tag.order);
    shown.push({ tag, wish: { anchor: project(projection, part), badgePx, namePx: 0, fixed: false } });
  }
  const places = placeGlyphs(shown.map(({ wish }) => wish));
  return shown.map(({ tag }, index) => ({ tag, ...places[index] }));
}

export const tagLayer: Layer = {
  name: 'tags',
  inputs: ({ model, projection, theme }) => [
    model.document.plan.tags,
    model.document.board.parts,
    model.selectedWatchId,
    projection,
    theme,
  ],
  marks(scene) {
    const { model, projection } = scene;
    const glyphs = shownGlyphs(model.document.plan.tags, model.document.board.parts, projection);
    const marks: Mark[] = [];
    for (const glyph of glyphs) marks.push(...leaderMarks(glyph, scene), ...moveMarks(glyph, scene));
    for (const glyph of glyphs) marks.push({ kind: 'glyph', ...glyph.at, tag: glyph.tag.kind });
    for (const glyph of glyphs) marks.push(...lettering(glyph, scene));
    return marks;
  },
};

/** A thin line from a glyph that had to stand aside to its part. */
function leaderMarks({ at, leaderTo }: ShownGlyph, { theme }: Scene): Mark[] {
  if (!leaderTo) return [];
  const points = [at.x, at.y, leaderTo.x, leaderTo.y];
  return [
    { kind: 'line', points, stroke: { colour: theme.paper, width: 3, alpha: 0.8 } },
    { kind: 'line', points, stroke: { colour: theme.ink, width: 1 } },
    { kind: 'circle', ...leaderTo, radius: 2, fill: { colour: theme.ink } },
  ];
}

/** Where a relocated part goes: an arrow from its glyph to the empty position. */
function moveMarks({ at, tag }: ShownGlyph, { model, projection, theme }: Scene): Mark[] {
  if (tag.kind !== 'relocate') return [];
  const goal = partsByName(model.document.board.parts).get(tag.toRefdes);
  if (goal?.side !== projection.side) return [];
  const end = project(projection, goal);
  const length = Math.hypot(end.x - at.x, end.y - at.y);
  if (length < GLYPH_PX) return [];
  const dx = (end.x - at.x) / length;
  const dy = (end.y - at.y) / length;
  const head = [
    end.x - 8 * dx + 4 * dy,
    end.y - 8 * dy - 4 * dx,
    end.x,
    end.y,
    end.x - 8 * dx - 4 * dy,
    end.y - 8 * dy + 4 * dx,
  ];
  const colour = Number.parseInt((TAG_GLYPHS.relocate.colour ?? '#000000').slice(1), 16);
  const stroke: Stroke = { colour, width: 2 };
  const shaft = [at.x, at.y, end.x, end.y];
  return [
    { kind: 'line', points: shaft, stroke: { colour: theme.paper, width: 4, alpha: 0.8 } },
    { kind: 'line', points: shaft, stroke },
    { kind: 'line', points: head, stroke },
  ];
}

/** Order badge at the upper right; the name of a thermocouple to the right of its ring. */
function lettering({ at, tag }: ShownGlyph, scene: Scene): Mark[] {
  if (tag.kind === 'watchPoint') return watchName(tag, at, scene);
  return tag.order === null ? [] : badge(at, tag.order, scene.theme);
}

function watchName(tag: TagOf<'watchPoint'>, at: Point, { model, theme }: Scene): Mark[] {
  const selected = tag.id === model.selectedWatchId;
  const marks: Mark[] = [
    {
      kind: 'text',
      x: at.x + NAME_OFFSET_PX,
      y: at.y,
      text: tag.name,
      face: selected ? 'accent-halo' : 'halo-bold',
      align: 'left',
    },
  ];
  if (selected)
    marks.push({ kind: 'circle', ...at, radius: GLYPH_PX / 2 + 3, stroke: { colour: theme.accent, width: 2 } });
  return marks;
}

function badge(at: Point, order: number, theme: Theme): Mark[] {
  const width = badgeWidth(order);
  const x = Math.round(at.x + BADGE_OFFSET.x);
  const y = Math.round(at.y + BADGE_OFFSET.y);
  return [
    { kind: 'rectangle', x: x - 1, y: y - 1, width: width + 2, height: BADGE_PX + 2, fill: { colour: theme.paper } },
    { kind: 'rectangle', x, y, width, height: BADGE_PX, fill: { colour: theme.ink } },
    { kind: 'text', x: x + width / 2, y: y + BADGE_PX / 2, text: String(order), face: 'badge', align: 'centre' },
  ];
}
