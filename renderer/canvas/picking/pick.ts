import type { Board, Cover } from '../../../shared-types/board.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import type { Site } from '../../../shared-types/plan.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import type { CanvasModel, Pick } from '../../state/canvas-model.ts';
import { coverArea } from '../layers/covers.ts';
import { shownGlyphs } from '../layers/tags.ts';
import { remembered } from '../scene.ts';
import { GLYPH_PX } from '../sites/glyph-places.ts';
import type { Projection } from '../view/projection.ts';
import { insideArea } from './body-outline.ts';
import { type PartIndex, partIndex } from './part-index.ts';

const indexes = remembered((_parts: Board['parts']): Partial<Record<Side, PartIndex>> => ({}));

/** The index of one side, made when first asked for. */
export function indexOf(board: Board, side: Side): PartIndex {
  const made = indexes(board.parts);
  made[side] ??= partIndex(board, side);
  return made[side];
}

const REACH_PX = { mouse: 4, touch: 14 };

/** How the pointer stands: board point (mm), scene pixels, and whether it is a finger. */
export type Pointing = { board: Point; scene: Point; touch: boolean };

/**
 * What lies under the pointer, the topmost first: thermocouples and glyphs, the selected rework area, the edge of a
 * rework area, parts, covers. Inside a rework area that is not selected the parts win.
 */
export function pickAt(model: CanvasModel, projection: Projection, pointing: Pointing): Pick | null {
  const reachMm = (pointing.touch ? REACH_PX.touch : REACH_PX.mouse) / projection.zoom;
  const { board, plan } = model.document;
  const side = model.shownSide;
  return (
    glyphAt(plan.tags, board, projection, pointing) ??
    siteAt(plan.sites, model, pointing.board, reachMm) ??
    partAt(board, side, pointing.board, reachMm) ??
    coverAt(board.covers, side, pointing.board)
  );
}

function glyphAt(tags: readonly Tag[], board: Board, projection: Projection, { scene, touch }: Pointing): Pick | null {
  const reach = GLYPH_PX / 2 + (touch ? 6 : 0);
  const glyph = shownGlyphs(tags, board.parts, projection).findLast(
    ({ at }) => Math.abs(at.x - scene.x) <= reach && Math.abs(at.y - scene.y) <= reach,
  );
  if (!glyph) return null;
  return glyph.tag.kind === 'watchPoint'
    ? { kind: 'watch', tagId: glyph.tag.id }
    : { kind: 'part', refdes: glyph.tag.refdes };
}

function siteAt(sites: readonly Site[], model: CanvasModel, at: Point, reachMm: number): Pick | null {
  const hit = sites.findLast((site) => {
    if (site.side !== model.shownSide || !insideArea(at, site.area, reachMm)) return false;
    if (site.id === model.selectedSiteId) return true;
    const { lengthMm, widthMm } = site.area;
    const inner = { ...site.area, lengthMm: lengthMm - 2 * reachMm, widthMm: widthMm - 2 * reachMm };
    return inner.lengthMm <= 0 || inner.widthMm <= 0 || !insideArea(at, inner);
  });
  return hit ? { kind: 'site', siteId: hit.id } : null;
}

function partAt(board: Board, side: Side, at: Point, reachMm: number): Pick | null {
  const part = indexOf(board, side).at(at, reachMm);
  return part && { kind: 'part', refdes: part.refdes };
}

function coverAt(covers: readonly Cover[], side: Side, at: Point): Pick | null {
  const hit = covers.findLast((cover) => cover.side === side && insideArea(at, coverArea(cover)));
  return hit ? { kind: 'cover', id: hit.id } : null;
}

/** Parts of a side that touch a polygon on the board. */
export const partsTouching = (board: Board, side: Side, polygon: readonly Point[]): Pick[] =>
  indexOf(board, side)
    .touching(polygon)
    .map((part) => ({ kind: 'part', refdes: part.refdes }));
