import type { Part } from '../../../shared-types/board.ts';
import { type Point, rectangleCorners, type Side } from '../../../shared-types/geometry.ts';
import { TAG_GLYPHS } from '../../../shared-types/rules/tag-glyphs.ts';
import { outlineOf, type SheetFacts } from '../facts/sheet-facts.ts';
import { boxesOverlap, INK, type PageBox, type PagePoint } from '../paper.ts';
import { tagColour } from './glyph.ts';
import { hatchPolygons } from './hatch.ts';
import { cornersOfBox, type Ink } from './ink.ts';
import { drawPart, drawPinOne, type OutlineKind, type PartShape, shapeOf } from './part-outline.ts';
import type { SheetPhoto } from './photo-images.ts';
import { drawPhoto } from './photo-layer.ts';
import { createView, type View } from './view.ts';

/** Where a picture stands and what stretch of the board it shows. */
export type PictureFrame = {
  side: Side;
  turnDeg: number;
  scale: number;
  frame: PageBox;
  /** Point in the middle of the frame, view axes, mm. */
  middle: Point;
};

/** A part as it lies in a picture. */
export type SeenPart = { part: Part; shape: PartShape; outline: OutlineKind };

export type Picture = { view: View; frame: PageBox; boardPath: PagePoint[]; holes: PagePoint[][]; seen: SeenPart[] };

/** Computes what a picture shows; draws nothing. */
export function composePicture(facts: SheetFacts, place: PictureFrame): Picture {
  const view = createView(place.side, place.turnDeg, place.scale, place.frame, place.middle);
  const seen = facts.board.parts
    .filter((part) => part.side === place.side)
    .map((part) => ({ part, shape: shapeOf(part, view), outline: outlineOf(facts, part) }))
    .filter(({ shape }) => boxesOverlap(shape.box, place.frame));
  return {
    view,
    frame: place.frame,
    boardPath: facts.outline.map(view.toPage),
    holes: facts.cutouts.map((cutout) => cutout.map(view.toPage)),
    seen,
  };
}

/** Photos of the shown side, as `drawBoard` lays them under everything else. */
export const photosOf = (facts: SheetFacts, side: Side): SheetPhoto[] =>
  facts.photos.filter(({ photo }) => photo.side === side);

/** The bare board: photos where they are wanted, outline, cutouts, cans and frames, fiducials. */
export function drawBoard(ink: Ink, facts: SheetFacts, picture: Picture, photos: readonly SheetPhoto[] = []): void {
  const { view } = picture;
  ink.polygon(picture.boardPath, { width: 1.3 }, INK.white);
  for (const photo of photos) drawPhoto(ink, photo, picture);
  if (photos.length > 0) ink.polygon(picture.boardPath, { width: 1.3 });
  for (const hole of picture.holes) ink.polygon(hole, { width: 0.7 }, INK.white);
  for (const fiducial of facts.board.fiducials) {
    if (fiducial.side !== view.side) continue;
    const at = view.toPage(fiducial);
    ink.circle(at, Math.max(1, 0.5 * view.scale * 2.83), { width: 0.4, colour: INK.faint });
    ink.circle(at, 0.6, null, INK.faint);
  }
}

/** Cans, frames and stiffeners as long dashes over the parts they cover. */
export function drawCovers(ink: Ink, facts: SheetFacts, picture: Picture): void {
  for (const cover of facts.board.covers) {
    if (cover.side !== picture.view.side) continue;
    const corners = rectangleCorners({ ...cover, turnDeg: cover.turn }).map(picture.view.toPage);
    ink.polygon(corners, { width: 0.9, colour: INK.soft, dash: [7, 2.5] });
  }
}

/** Which part states a picture shows by their outline: all, those over their limit that need an act, or none. */
export type ShownStates = 'all' | 'over' | 'none';

/** Parts without a tag first, then the tagged ones with the hatch of their tag on the body. `bare`: a photo shows through. */
export function drawParts(ink: Ink, facts: SheetFacts, picture: Picture, states: ShownStates, bare = false): void {
  const tagged = (one: SeenPart) => facts.tagsOf.has(one.part.refdes);
  const rank = (one: SeenPart) => (tagged(one) ? 2 : one.outline === 'over' ? 1 : 0);
  for (const one of [...picture.seen].sort((a, b) => rank(a) - rank(b))) {
    const exception = one.outline === 'over' && facts.actionOf.get(one.part.refdes)?.action !== 'leave';
    const shown = states === 'all' || one.outline === 'empty' || (states === 'over' && exception);
    const faint = !tagged(one) && states !== 'all' && !bare;
    drawPart(ink, one.part, one.shape, shown ? one.outline : 'clear', faint, bare ? undefined : INK.white);
    const tag = facts.tagsOf.get(one.part.refdes)?.[0];
    if (tag) hatchBody(ink, one.shape, tag.kind);
    drawPinOne(ink, one.part, picture.view);
  }
}

function hatchBody(ink: Ink, shape: PartShape, kind: keyof typeof TAG_GLYPHS): void {
  const size = Math.min(shape.box.x1 - shape.box.x0, shape.box.y1 - shape.box.y0);
  const pitch = size > 60 ? 6 : size > 25 ? 3.6 : 2.2;
  hatchPolygons(ink, [shape.polygon], TAG_GLYPHS[kind].hatch, { colour: tagColour(kind), pitch, width: 0.6 });
}

/** Relocations within the shown side: an arrow from where the part is to where it goes. Returns the lines, for labels to keep off. */
export function drawMoves(ink: Ink, facts: SheetFacts, picture: Picture): { from: PagePoint; to: PagePoint }[] {
  const { view } = picture;
  const moves = [...facts.tagsOf.values()].flat().flatMap((tag) => {
    const from = facts.partOf.get(tag.refdes);
    const to = tag.kind === 'relocate' ? facts.partOf.get(tag.toRefdes) : undefined;
    if (!from || !to || from.side !== view.side || to.side !== view.side) return [];
    return [{ from: view.toPage(from), to: view.toPage(to) }];
  });
  for (const { from, to } of moves) {
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length < 1) continue;
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    const back = { x: to.x - 6 * along.x, y: to.y - 6 * along.y };
    const wing = { x: -2.4 * along.y, y: 2.4 * along.x };
    ink.segment(from, back, { width: 0.9, colour: tagColour('relocate'), dash: [3, 1.5] });
    const head = [to, { x: back.x + wing.x, y: back.y + wing.y }, { x: back.x - wing.x, y: back.y - wing.y }];
    ink.polygon(head, null, tagColour('relocate'));
  }
  return moves;
}

/** Rework areas of the shown side: a heavy dash-dot line. */
export function drawSites(ink: Ink, facts: SheetFacts, picture: Picture): void {
  for (const site of facts.plan.sites) {
    if (site.side !== picture.view.side) continue;
    ink.polygon(rectangleCorners(site.area).map(picture.view.toPage), { width: 1.5, dash: [8, 2.5, 1.5, 2.5] });
  }
}

/** Where the sites of the other side lie, thin, so that both faces can be matched. */
export function drawSitesBehind(ink: Ink, facts: SheetFacts, picture: Picture): void {
  for (const site of facts.plan.sites) {
    if (site.side === picture.view.side) continue;
    const corners = rectangleCorners(site.area).map(picture.view.toPage);
    ink.polygon(corners, { width: 0.7, colour: INK.soft, dash: [1.5, 2.5] });
  }
}

/** Draws inside the frame only and puts the frame's line round it. */
export function framed(ink: Ink, frame: PageBox, draw: () => void): void {
  ink.clipped([cornersOfBox(frame)], draw);
  ink.box(frame, { width: 0.5, colour: INK.soft });
}
