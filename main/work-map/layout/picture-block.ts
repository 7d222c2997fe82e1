import type { Point, Side } from '../../../shared-types/geometry.ts';
import { SHEET, sideWords } from '../../../shared-types/words/work-map.ts';
import { drawIsothermPicture, type IsothermSource } from '../drawing/isotherm-picture.ts';
import { drawLegend, LEGEND, type LegendEntry, legendHeight, limitEntry, tagEntry } from '../drawing/legend.ts';
import type { OutlineKind } from '../drawing/part-outline.ts';
import { wrap } from '../drawing/phrase.ts';
import { drawTagPicture } from '../drawing/tag-picture.ts';
import { ASCENT } from '../drawing/typeface.ts';
import { outlineOf, type SheetFacts } from '../facts/sheet-facts.ts';
import { CONTENT, CONTENT_WIDTH } from '../paper.ts';
import { BODY, FIGURES, SOFT, STRONG } from './flow.ts';
import type { Sheet } from './sheet.ts';

/** What a picture shows; never tags and isotherms in one. */
export type PictureContent = { kind: 'tags'; close: boolean } | { kind: 'isotherms'; source: IsothermSource };

export type PictureRequest = {
  title: string;
  side: Side;
  scale: number;
  middle: Point;
  content: PictureContent;
  /** Height of the whole block: title, picture, legend. */
  height: number;
};

const TITLE_HEIGHT = 19;
const NOTE_HEIGHT = 15;
/** With fewer tags than this every label finds a place, and no line is kept for naming those that did not. */
const CROWDED = 12;

/** Height that title and legend take from a block. */
export const blockOverhead = (sheet: Sheet, request: Omit<PictureRequest, 'height' | 'middle'>): number =>
  TITLE_HEIGHT + legendHeight(sheet.ink, entriesOf(sheet.facts, request), request.scale, CONTENT_WIDTH) + 4;

/** A title line, the picture in its frame, scale bar and legend; names whatever found no room. */
export function drawPictureBlock(sheet: Sheet, request: PictureRequest): void {
  const { ink, flow, facts } = sheet;
  const entries = entriesOf(facts, request);
  const legend = legendHeight(ink, entries, request.scale, CONTENT_WIDTH);
  const top = flow.y + TITLE_HEIGHT;
  const bottom = flow.y + request.height - legend - 4;
  titleLine(sheet, request);
  const frame = { x0: CONTENT.left, x1: CONTENT.right, y0: top, y1: bottom };
  const place = {
    side: request.side,
    turnDeg: facts.plan.clampedTurnDeg,
    scale: request.scale,
    frame,
    middle: request.middle,
  };
  let unlabelled: string[] = [];
  if (request.content.kind === 'tags') {
    const crowded = facts.plan.tags.length > CROWDED;
    const roomForNote = { ...place, frame: { ...frame, y1: bottom - (crowded ? NOTE_HEIGHT : 0) } };
    unlabelled = drawTagPicture(ink, facts, roomForNote, request.content.close).unlabelled;
  } else drawIsothermPicture(ink, facts, place, request.content.source);
  if (unlabelled.length > 0) {
    const [line] = wrap(SHEET.unlabelled(unlabelled), CONTENT_WIDTH, BODY, ink.type);
    ink.line(line, CONTENT.left, bottom - NOTE_HEIGHT + ASCENT * 10 + 1, BODY);
  }
  drawLegend(ink, entries, request.scale, { x: CONTENT.left, y: bottom + 3, width: CONTENT_WIDTH });
  flow.y += request.height;
}

function titleLine(sheet: Sheet, request: PictureRequest): void {
  const { ink, flow, facts } = sheet;
  const baseline = flow.y + 12;
  const side = sideWords(request.side, facts.plan.clampedTurnDeg);
  const scale = SHEET.scale(request.scale);
  const scaleWidth = ink.type.width(scale, 'mono', 10);
  ink.text(CONTENT.right - scaleWidth, baseline, scale, { face: FIGURES.face, size: 10 });
  const sideWidth = ink.type.width(side, 'sansStrong', 12);
  ink.text(CONTENT.left, baseline, side, { face: STRONG.face, size: 12 });
  const room = CONTENT_WIDTH - sideWidth - scaleWidth - 24;
  const [line] = wrap(request.title, room, SOFT, ink.type);
  if (line) ink.line(line, CONTENT.left + sideWidth + 10, baseline, SOFT);
}

function entriesOf(facts: SheetFacts, request: Pick<PictureRequest, 'side' | 'content'>): LegendEntry[] {
  const { content, side } = request;
  const here = facts.plan.sites.some((site) => site.side === side);
  const behind = facts.plan.sites.some((site) => site.side !== side);
  const areas = [...(here ? [LEGEND.area] : []), ...(behind ? [LEGEND.areaBehind] : [])];
  const covers = facts.board.covers.some((cover) => cover.side === side) ? [LEGEND.cover] : [];
  const watch = facts.watchTags.some((tag) => tag.side === side) ? [tagEntry('watchPoint')] : [];
  if (content.kind === 'isotherms') {
    const { limitsC } = content.source;
    const limit = limitsC.length === 0 ? [] : [limitEntry(limitsC)];
    return [LEGEND.isotherm, ...limit, ...areas, ...watch, ...covers];
  }
  const kinds = new Set(
    facts.board.parts
      .filter((part) => part.side === side)
      .flatMap((part) => (facts.tagsOf.get(part.refdes) ?? []).map((tag) => tag.kind)),
  );
  const outlines = new Set<OutlineKind>(
    facts.board.parts.filter((part) => part.side === side).map((part) => outlineOf(facts, part)),
  );
  const tags = (['remove', 'relocate', 'shield', 'replace', 'reprogram'] as const)
    .filter((kind) => kinds.has(kind))
    .map(tagEntry);
  const states = (['over', 'unsure', 'reflow'] as const)
    .filter((kind) => outlines.has(kind) && (content.close || kind === 'over'))
    .map((kind) => LEGEND[kind]);
  const rings = content.close && here ? [LEGEND.ring] : [];
  const empty = content.close && outlines.has('empty') ? [LEGEND.empty] : [];
  return [...tags, ...watch, ...areas, ...rings, ...states, ...covers, ...empty];
}
