import type { TagKind } from '../../../shared-types/tags.ts';
import { grownBox, INK, type PageBox, type PagePoint } from '../paper.ts';
import { badgeWidth, drawBadge, drawGlyph, GLYPH_RADIUS } from './glyph.ts';
import { type Ink, textBox } from './ink.ts';
import { type LabelField, nearestPoint, placeNear } from './label-field.ts';

/** Tags of one part, or a thermocouple's name: what is written beside one body. */
export type BodyLabel = {
  body: PageBox;
  glyphs: readonly { kind: TagKind; order: number | null }[];
  text: string;
  strong: boolean;
  /** How far from the body the label may go, points. */
  reach: number;
  /** May stand on the body itself when it fits there. */
  onBody: boolean;
};

const TEXT_SIZE = 10;
const TOP_OVER = 7.5;
const GLYPH_GAP = 3;
/** Labels keep this far from each other, so that two names do not read as one. */
const APART = 1.5;

type Layout = { width: number; height: number; glyphs: { left: number; badge: number | null }[]; textLeft: number };

/** Lays a label out from its upper left corner: glyphs in a row, badges at their upper right, words at the lower right. */
function layOut(ink: Ink, label: BodyLabel): Layout {
  let left = 0;
  const hasBadge = label.glyphs.some((glyph) => glyph.order !== null);
  const glyphs = label.glyphs.map((glyph) => {
    const badge = glyph.order === null ? null : left + 2 * GLYPH_RADIUS - 4.5;
    const placed = { left, badge };
    const badgeEnd = badge === null ? 0 : badge + badgeWidth(ink, glyph.order ?? 0);
    left = Math.max(left + 2 * GLYPH_RADIUS, badgeEnd) + GLYPH_GAP;
    return placed;
  });
  const last = glyphs.at(-1);
  const textLeft = last ? last.left + 2 * GLYPH_RADIUS + 2.5 : 0;
  const textEnd = textLeft + ink.type.width(label.text, face(label), TEXT_SIZE);
  const top = hasBadge ? TOP_OVER : 0;
  return {
    width: Math.max(textEnd, left - GLYPH_GAP),
    height: label.glyphs.length > 0 ? top + 2 * GLYPH_RADIUS + 1 : 1.3 * TEXT_SIZE,
    glyphs,
    textLeft,
  };
}

const face = (label: BodyLabel) => (label.strong ? 'monoStrong' : 'mono');

/**
 * Places and draws one label: on its body if it fits there, beside it, or as a callout with a leader line.
 * Returns false when there was no room.
 */
export function placeLabel(ink: Ink, field: LabelField, label: BodyLabel): boolean {
  const layout = layOut(ink, label);
  const spot = onBody(field, label, layout) ?? placeNear(field, label.body, layout, label.reach);
  if (!spot) return false;
  const box = { x0: spot.x, y0: spot.y, x1: spot.x + layout.width, y1: spot.y + layout.height };
  if (spot.distance > 4) leader(ink, field, label.body, box, label.glyphs.length > 0);
  field.take(grownBox(box, APART));
  draw(ink, label, layout, spot);
  return true;
}

function onBody(field: LabelField, label: BodyLabel, size: Layout) {
  const { body } = label;
  if (!label.onBody || body.x1 - body.x0 < size.width + 2 || body.y1 - body.y0 < size.height + 2) return null;
  const x = (body.x0 + body.x1 - size.width) / 2;
  const y = (body.y0 + body.y1 - size.height) / 2;
  const box = { x0: x, y0: y, x1: x + size.width, y1: y + size.height };
  return field.isFree(box) ? { x, y, distance: 0 } : null;
}

function leader(ink: Ink, field: LabelField, body: PageBox, box: PageBox, ended: boolean): void {
  const centre = { x: (body.x0 + body.x1) / 2, y: (body.y0 + body.y1) / 2 };
  const from = nearestPoint(box, centre);
  ink.segment(from, centre, { width: 1.8, colour: INK.white });
  ink.segment(from, centre, { width: 0.6 });
  if (ended) ink.circle(centre, 1.2, null, INK.black);
  field.takeLeader({ from, to: centre });
}

function draw(ink: Ink, label: BodyLabel, layout: Layout, at: PagePoint): void {
  const bottom = at.y + layout.height;
  const middle = bottom - GLYPH_RADIUS - 0.5;
  if (label.text) drawWords(ink, label, at.x + layout.textLeft, label.glyphs.length > 0 ? bottom - 3.2 : bottom - 2.75);
  layout.glyphs.forEach((placed, index) => {
    const glyph = label.glyphs[index];
    drawGlyph(ink, glyph.kind, { x: at.x + placed.left + GLYPH_RADIUS, y: middle });
    if (placed.badge !== null && glyph.order !== null)
      drawBadge(ink, glyph.order, at.x + placed.badge, at.y + TOP_OVER - 0.6);
  });
}

function drawWords(ink: Ink, label: BodyLabel, x: number, baseline: number): void {
  const width = ink.type.width(label.text, face(label), TEXT_SIZE);
  const box = textBox(x, baseline, width, TEXT_SIZE);
  ink.box({ x0: x - 1, x1: x + width + 1, y0: box.y0 + 1.8, y1: box.y1 - 0.6 }, null, INK.white);
  ink.text(x, baseline, label.text, { face: face(label), size: TEXT_SIZE });
}
