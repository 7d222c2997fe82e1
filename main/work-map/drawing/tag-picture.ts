import { inOrder, outlineOf, type SheetFacts, stateMark } from '../facts/sheet-facts.ts';
import { boxInside, grownBox, INK, type PageBox } from '../paper.ts';
import { distanceRings } from './contour-lines.ts';
import { drawWatchMark } from './glyph.ts';
import { type Ink, textBox } from './ink.ts';
import { createLabelField, type LabelField } from './label-field.ts';
import { type NumberedLine, numberLines, seenStretches } from './line-numbers.ts';
import {
  composePicture,
  drawBoard,
  drawCovers,
  drawMoves,
  drawParts,
  drawSites,
  drawSitesBehind,
  framed,
  type Picture,
  type PictureFrame,
  photosOf,
  type SeenPart,
} from './picture.ts';
import { type BodyLabel, placeLabel } from './tag-labels.ts';

/** What a picture holds, for its legend, and what found no room, for the note under it. */
export type PictureReport = { picture: Picture; unlabelled: string[]; ringsShown: number[] };

/**
 * Tags, states, rework areas and distance rings. `close`: a crop in which states, rings and every designator that fits
 * are drawn; otherwise the whole board with its tags.
 */
export function drawTagPicture(ink: Ink, facts: SheetFacts, place: PictureFrame, close: boolean): PictureReport {
  const picture = composePicture(facts, place);
  const field = createLabelField(grownBox(place.frame, -2));
  const rings = close ? ringLines(facts, picture) : [];
  const photos = photosOf(facts, place.side);
  framed(ink, place.frame, () => {
    drawBoard(ink, facts, picture, photos);
    for (const ring of rings) ink.polyline(ring.points, { width: 0.45, colour: INK.soft, dash: [4, 2] });
    drawParts(ink, facts, picture, close ? 'all' : 'over', photos.length > 0);
    drawCovers(ink, facts, picture);
    drawSitesBehind(ink, facts, picture);
    drawSites(ink, facts, picture);
    for (const move of drawMoves(ink, facts, picture)) field.takeLeader(move);
  });
  const special = picture.seen.filter((one) => facts.tagsOf.has(one.part.refdes) || one.outline === 'over');
  for (const one of special) field.avoid(one.shape.box);
  const unlabelled = [
    ...labelWatchPoints(ink, facts, picture, field),
    ...labelBodies(ink, facts, picture, field, close),
  ];
  numberLines(ink, field, rings);
  if (close) labelPlainParts(ink, picture, field, photos.length > 0);
  return { picture, unlabelled, ringsShown: [...new Set(rings.map((ring) => Number.parseInt(ring.text, 10)))] };
}

function ringLines(facts: SheetFacts, picture: Picture): NumberedLine[] {
  const areas = facts.plan.sites.filter((site) => site.side === picture.view.side).map((site) => site.area);
  const seen = ({ x, y }: { x: number; y: number }) =>
    boxInside({ x0: x, x1: x, y0: y, y1: y }, grownBox(picture.frame, -1));
  return distanceRings(areas, facts.words.figures.ringsMm).flatMap(({ level, rings }) =>
    rings.flatMap((ring) =>
      seenStretches(ring.map(picture.view.toPage), seen).map((points) => ({
        points,
        text: facts.words.figures.length(level),
        strong: false,
      })),
    ),
  );
}

/** Thermocouples stand exactly where they are; their names find a place beside them. */
function labelWatchPoints(ink: Ink, facts: SheetFacts, picture: Picture, field: LabelField): string[] {
  const unlabelled: string[] = [];
  const here = facts.watchTags.filter((tag) => tag.side === picture.view.side);
  const spots = here.flatMap((tag) => {
    const at = picture.view.toPage(tag);
    const box = { x0: at.x - 6, x1: at.x + 6, y0: at.y - 6, y1: at.y + 6 };
    return boxInside(box, picture.frame) ? [{ tag, at, box }] : [];
  });
  for (const { at, box } of spots) {
    drawWatchMark(ink, at);
    field.take(box);
  }
  for (const { tag, box } of spots) {
    const label: BodyLabel = { body: box, glyphs: [], text: tag.name, strong: true, reach: 200, onBody: false };
    if (!placeLabel(ink, field, label)) unlabelled.push(tag.name);
  }
  return unlabelled;
}

/** Tagged parts, then parts beyond or near their limit: the largest bodies first, as they keep their label on themselves. */
function labelBodies(ink: Ink, facts: SheetFacts, picture: Picture, field: LabelField, close: boolean): string[] {
  const area = ({ shape: { box } }: SeenPart) => (box.x1 - box.x0) * (box.y1 - box.y0);
  const tagged = picture.seen.filter((one) => facts.tagsOf.has(one.part.refdes)).sort((a, b) => area(b) - area(a));
  const marked = picture.seen.filter(
    (one) =>
      !facts.tagsOf.has(one.part.refdes) &&
      stateMark(one.outline) !== '' &&
      (close || facts.actionOf.get(one.part.refdes)?.action !== 'leave'),
  );
  const needsAct = (one: SeenPart) => Number(facts.actionOf.get(one.part.refdes)?.action !== 'leave');
  marked.sort((a, b) => needsAct(b) - needsAct(a) || Number(b.outline === 'over') - Number(a.outline === 'over'));
  const labels = [
    ...tagged.map((one) => ({ one, label: tagLabel(facts, one) })),
    ...marked.map((one) => ({ one, label: markLabel(facts, one) })),
  ];
  const bare = { text: '', onBody: false, reach: 420 };
  return labels
    .filter(({ one, label }) => {
      const body = clipBox(one.shape.box, picture.frame);
      if (placeLabel(ink, field, { ...label, body })) return false;
      if (label.glyphs.length > 0) return !placeLabel(ink, field, { ...label, body, ...bare });
      return facts.actionOf.get(one.part.refdes)?.action !== 'leave';
    })
    .map(({ one }) => one.part.refdes);
}

/** The part of a body that the frame shows: its label points there. */
const clipBox = (box: PageBox, frame: PageBox): PageBox => ({
  x0: Math.max(box.x0, frame.x0),
  x1: Math.min(box.x1, frame.x1),
  y0: Math.max(box.y0, frame.y0),
  y1: Math.min(box.y1, frame.y1),
});

function tagLabel(facts: SheetFacts, { part, shape }: SeenPart): BodyLabel {
  const tags = inOrder(facts.tagsOf.get(part.refdes) ?? []);
  return {
    body: shape.box,
    glyphs: tags.map((tag) => ({ kind: tag.kind, order: tag.order })),
    text: part.refdes + stateMark(outlineOf(facts, part)),
    strong: true,
    reach: 420,
    onBody: true,
  };
}

/** A part that needs an act is named wherever there is room; one that may be left only beside itself. */
function markLabel(facts: SheetFacts, { part, shape, outline }: SeenPart): BodyLabel {
  const left = facts.actionOf.get(part.refdes)?.action === 'leave';
  return {
    body: shape.box,
    glyphs: [],
    text: part.refdes + stateMark(outline),
    strong: outline === 'over',
    reach: left ? 2 : 160,
    onBody: true,
  };
}

/** Designators of the other parts, small, where they fit on their own body and nothing else stands; on white over a photo. */
function labelPlainParts(ink: Ink, picture: Picture, field: LabelField, onPhoto: boolean): void {
  for (const { part, shape } of picture.seen) {
    const { box } = shape;
    const size = [8, 7].find(
      (one) => ink.type.width(part.refdes, 'mono', one) + 2 <= box.x1 - box.x0 && 1.1 * one <= box.y1 - box.y0,
    );
    if (!size) continue;
    const width = ink.type.width(part.refdes, 'mono', size);
    const left = (box.x0 + box.x1 - width) / 2;
    const baseline = (box.y0 + box.y1) / 2 + 0.35 * size;
    const taken = textBox(left, baseline, width, size);
    if (!field.isClear(taken)) continue;
    field.take(taken);
    if (onPhoto) ink.box(taken, null, INK.white);
    ink.text(left, baseline, part.refdes, { face: 'mono', size, colour: onPhoto ? INK.black : INK.part });
  }
}
