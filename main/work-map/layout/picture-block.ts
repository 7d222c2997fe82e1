import type { Point, Side } from '../../../shared-types/geometry.ts';
import { SHEET, sideWords } from '../../../shared-types/words/work-map.ts';
import { drawIsothermPicture, type IsothermSource } from '../drawing/isotherm-picture.ts';
import {
  drawLegend,
  isothermEntry,
  LEGEND,
  type LegendEntry,
  legendHeight,
  limitEntry,
  scaleBar,
  tagEntry,
} from '../drawing/legend.ts';
import type { OutlineKind } from '../drawing/part-outline.ts';
import { wrap } from '../drawing/phrase.ts';
import { photosOf } from '../drawing/picture.ts';
import { drawTagPicture } from '../drawing/tag-picture.ts';
import { outlineOf, type SheetFacts } from '../facts/sheet-facts.ts';
import { CONTENT } from '../paper.ts';
import { FIGURES, SOFT, STRONG } from './flow.ts';
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
  /** Left and right edge; the whole width when not given. */
  span?: Span;
};

export type Span = { left: number; right: number };
const FULL: Span = { left: CONTENT.left, right: CONTENT.right };

const TITLE_HEIGHT = 19;
const SECOND_LINE = 14;
/** A narrow picture writes what it shows under its side, not beside it. */
const titleHeight = ({ left, right }: Span): number => TITLE_HEIGHT + (right - left < 400 ? SECOND_LINE : 0);

const barOf = ({ facts }: Sheet, scale: number) => scaleBar(facts.words.figures, scale);

/** Height that title and legend take from a block. */
export function blockOverhead(sheet: Sheet, request: Omit<PictureRequest, 'height' | 'middle'>): number {
  const span = request.span ?? FULL;
  const width = span.right - span.left;
  return (
    titleHeight(span) + legendHeight(sheet.ink, entriesOf(sheet.facts, request), barOf(sheet, request.scale), width) + 4
  );
}

/** A title line, the picture in its frame, scale bar and legend; names whatever found no room. */
export function drawPictureBlock(sheet: Sheet, request: PictureRequest): void {
  const { ink, flow, facts } = sheet;
  const entries = entriesOf(facts, request);
  const { left, right } = request.span ?? FULL;
  const legend = legendHeight(ink, entries, barOf(sheet, request.scale), right - left);
  const top = flow.y + titleHeight({ left, right });
  const bottom = flow.y + request.height - legend - 4;
  const frame = { x0: left, x1: right, y0: top, y1: bottom };
  const place = {
    side: request.side,
    turnDeg: facts.plan.clampedTurnDeg,
    scale: request.scale,
    frame,
    middle: request.middle,
  };
  const unlabelled =
    request.content.kind === 'tags' ? drawTagPicture(ink, facts, place, request.content.close).unlabelled : [];
  if (request.content.kind === 'isotherms') drawIsothermPicture(ink, facts, place, request.content.source);
  titleLine(sheet, request, unlabelled);
  drawLegend(ink, entries, barOf(sheet, request.scale), { x: left, y: bottom + 3, width: right - left });
  flow.y += request.height;
}

/** Side and turn, what is shown, the scale; and the names that found no room in the picture. */
function titleLine(sheet: Sheet, request: PictureRequest, unlabelled: readonly string[]): void {
  const { ink, flow, facts } = sheet;
  const baseline = flow.y + 12;
  const span = request.span ?? FULL;
  const title = unlabelled.length > 0 ? `${request.title}; ${SHEET.unlabelled(unlabelled)}` : request.title;
  const side = sideWords(request.side, facts.plan.clampedTurnDeg);
  const scale = SHEET.scale(request.scale);
  const scaleWidth = ink.type.width(scale, 'mono', 10);
  const below = titleHeight(span) > TITLE_HEIGHT;
  const lower = baseline + (below ? SECOND_LINE : 0);
  ink.text(span.right - scaleWidth, lower, scale, { face: FIGURES.face, size: 10 });
  ink.text(span.left, baseline, side, { face: STRONG.face, size: 12 });
  const x = span.left + (below ? 0 : ink.type.width(side, 'sansStrong', 12) + 10);
  const room = span.right - scaleWidth - 12 - x;
  const [line, more] = wrap(title, room, SOFT, ink.type);
  const [short] = wrap(`${request.title}; ${SHEET.unlabelledShort(unlabelled.length)}`, room, SOFT, ink.type);
  ink.line(more && unlabelled.length > 0 ? short : line, x, lower, SOFT);
}

function entriesOf(facts: SheetFacts, request: Pick<PictureRequest, 'side' | 'content'>): LegendEntry[] {
  const { content, side } = request;
  const here = facts.plan.sites.some((site) => site.side === side);
  const behind = facts.plan.sites.some((site) => site.side !== side);
  const areas = [...(here ? [LEGEND.area] : []), ...(behind ? [LEGEND.areaBehind] : [])];
  const covers = facts.board.covers.some((cover) => cover.side === side) ? [LEGEND.cover] : [];
  const watch = facts.watchTags.some((tag) => tag.side === side) ? [tagEntry('watchPoint')] : [];
  if (content.kind === 'isotherms') {
    const reached = content.source.limitsC.filter((limit) =>
      content.source.fields[side].some((value) => value >= limit),
    );
    const limit = reached.length === 0 ? [] : [limitEntry(facts.words.limits(reached))];
    return [isothermEntry(facts.words.isotherms), ...limit, ...areas, ...watch, ...covers];
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
  const empty = content.close && outlines.has('empty') ? [LEGEND.empty] : [];
  const photo = photosOf(facts, side).length > 0 ? [LEGEND.photo] : [];
  return [...tags, ...watch, ...areas, ...states, ...covers, ...empty, ...photo];
}
