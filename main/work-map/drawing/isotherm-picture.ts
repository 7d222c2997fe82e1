import type { FaceFields, FieldGrid } from '../../../shared-types/evaluation.ts';
import { insidePolygon } from '../../../shared-types/geometry.ts';
import type { SheetFacts } from '../facts/sheet-facts.ts';
import { boxInside, grownBox, type PagePoint } from '../paper.ts';
import { isothermLevels, isothermLines } from './contour-lines.ts';
import { drawWatchMark } from './glyph.ts';
import type { Ink } from './ink.ts';
import { createLabelField } from './label-field.ts';
import { type NumberedLine, numberLines, seenStretches } from './line-numbers.ts';
import {
  composePicture,
  drawBoard,
  drawCovers,
  drawParts,
  drawSites,
  drawSitesBehind,
  framed,
  type Picture,
  type PictureFrame,
} from './picture.ts';
import { placeLabel } from './tag-labels.ts';

export type IsothermSource = {
  fields: FaceFields;
  grid: FieldGrid;
  /** Levels of the heavy lines, C. */
  limitsC: readonly number[];
};

/** Isotherms over faint parts: every 20 C (40 F) with its number in the line, the limit isotherm heavy. */
export function drawIsothermPicture(ink: Ink, facts: SheetFacts, place: PictureFrame, source: IsothermSource): Picture {
  const picture = composePicture(facts, place);
  const field = createLabelField(grownBox(place.frame, -2));
  const values = source.fields[place.side];
  const lines = isothermLines(values, source.grid, levelsOf(facts, values, source.limitsC)).flatMap(
    ({ level, rings }) =>
      rings.map((ring) => ({ level, ring: ring.map(picture.view.toPage), heavy: source.limitsC.includes(level) })),
  );
  framed(ink, place.frame, () => {
    drawBoard(ink, facts, picture);
    drawParts(ink, { ...facts, tagsOf: new Map() }, picture, 'none');
    drawCovers(ink, facts, picture);
    ink.clipped([picture.boardPath, ...picture.holes], () => {
      for (const { ring, heavy } of lines) ink.polygon(ring, heavy ? { width: 2 } : { width: 0.6 });
    });
    ink.polygon(picture.boardPath, { width: 1.3 });
    drawSitesBehind(ink, facts, picture);
    drawSites(ink, facts, picture);
  });
  drawWatchPoints(ink, facts, picture, field);
  numberLines(ink, field, numbered(facts, picture, lines));
  return picture;
}

/** A limit stands in for a plain isotherm closer than 4 C to it, so that the two do not run into one line. */
function levelsOf(facts: SheetFacts, values: Float32Array, limitsC: readonly number[]): number[] {
  const plain = isothermLevels(values, facts.words.figures.isothermsC).filter((level) =>
    limitsC.every((limit) => Math.abs(level - limit) >= 4),
  );
  return [...plain, ...limitsC].sort((a, b) => b - a);
}

function numbered(
  facts: SheetFacts,
  picture: Picture,
  lines: readonly { level: number; ring: PagePoint[]; heavy: boolean }[],
): NumberedLine[] {
  const frame = grownBox(picture.frame, -4);
  const seen = (point: PagePoint) =>
    boxInside({ x0: point.x, x1: point.x, y0: point.y, y1: point.y }, frame) &&
    insidePolygon(point, picture.boardPath) &&
    !picture.holes.some((hole) => insidePolygon(point, hole));
  return [...lines]
    .sort((a, b) => Number(b.heavy) - Number(a.heavy) || b.level - a.level)
    .flatMap(({ level, ring, heavy }) =>
      seenStretches(ring, seen).map((points) => ({ points, text: facts.words.figures.bare(level), strong: heavy })),
    );
}

function drawWatchPoints(
  ink: Ink,
  facts: SheetFacts,
  picture: Picture,
  field: ReturnType<typeof createLabelField>,
): void {
  for (const tag of facts.watchTags) {
    if (tag.side !== picture.view.side) continue;
    const at = picture.view.toPage(tag);
    const body = { x0: at.x - 6, x1: at.x + 6, y0: at.y - 6, y1: at.y + 6 };
    if (!boxInside(body, picture.frame)) continue;
    drawWatchMark(ink, at);
    field.take(body);
    placeLabel(ink, field, { body, glyphs: [], text: tag.name, strong: true, reach: 92, onBody: false });
  }
}
