import type { Side } from '../../../shared-types/geometry.ts';
import { SHEET } from '../../../shared-types/words/work-map.ts';
import type { IsothermSource } from '../drawing/isotherm-picture.ts';
import { fittingScale, turnedBox } from '../drawing/view.ts';
import { neighbourSolidus } from '../facts/sheet-facts.ts';
import { blockOverhead, drawPictureBlock, type PictureContent, type Span } from '../layout/picture-block.ts';
import type { Sheet } from '../layout/sheet.ts';
import { CONTENT, POINTS_PER_MM } from '../paper.ts';

const SCALES = [
  4,
  3,
  2.5,
  2,
  1.5,
  1.25,
  1,
  1 / 1.25,
  1 / 1.5,
  1 / 2,
  1 / 2.5,
  1 / 3,
  1 / 4,
  1 / 5,
  1 / 8,
  1 / 10,
  1 / 20,
];
const SIDES: readonly Side[] = ['top', 'bottom'];
/** Room round the board for labels, points. */
const ROUND = 26;
const GAP = 10;

/** The whole board from both sides, first its tags, then its isotherms. */
export function drawMapPages(sheet: Sheet): void {
  const { evaluation } = sheet.facts.assessment;
  drawBothSides(sheet, SHEET.allTags, { kind: 'tags', close: false }, true);
  if (evaluation.runs.length === 0) return;
  const source: IsothermSource = {
    fields: evaluation.fields,
    grid: evaluation.grid,
    limitsC: neighbourSolidus(sheet.facts),
  };
  drawBothSides(sheet, SHEET.peaks, { kind: 'isotherms', source }, false);
}

type Arrangement = { spans: readonly [Span, Span]; besides: boolean; most: number };

/** One side over the other, or beside it: whichever lets the board be drawn larger. */
function drawBothSides(sheet: Sheet, title: string, content: PictureContent, first: boolean): void {
  const { flow } = sheet;
  const whole = CONTENT.bottom - CONTENT.top - 28;
  const middle = (CONTENT.left + CONTENT.right) / 2;
  const full = { left: CONTENT.left, right: CONTENT.right };
  const stacked: Arrangement = { spans: [full, full], besides: false, most: (whole - GAP) / 2 };
  const halves: Arrangement = {
    spans: [
      { left: CONTENT.left, right: middle - GAP / 2 },
      { left: middle + GAP / 2, right: CONTENT.right },
    ],
    besides: true,
    most: whole,
  };
  const scaleOf = (arrangement: Arrangement) =>
    Math.min(...SIDES.map((side, index) => layOut(sheet, { title, side, content }, arrangement, index).scale));
  const chosen = scaleOf(halves) > scaleOf(stacked) ? halves : stacked;
  const scale = scaleOf(chosen);
  const height = layOut(sheet, { title, side: 'top', content }, chosen, 0).heightFor(scale);
  // One side over the other fills a page: the two stay together. Side by side they begin where there is room.
  if (!chosen.besides) flow.startPage(SHEET.wholeBoard);
  else if (first) flow.section(SHEET.wholeBoard, height);
  else flow.need(height);
  const top = flow.y;
  for (const [index, side] of SIDES.entries()) {
    const { middle: at, heightFor } = layOut(sheet, { title, side, content }, chosen, index);
    if (chosen.besides) flow.y = top;
    drawPictureBlock(sheet, {
      title,
      side,
      content,
      scale,
      middle: at,
      span: chosen.spans[index],
      height: heightFor(scale),
    });
    flow.space(GAP);
  }
}

/** The largest scale for one side in an arrangement, and the height its block then takes. */
function layOut(
  sheet: Sheet,
  request: { title: string; side: Side; content: PictureContent },
  arrangement: Arrangement,
  index: number,
) {
  const { facts } = sheet;
  const box = turnedBox(facts.outline, request.side, facts.plan.clampedTurnDeg);
  const span = arrangement.spans[index];
  const overhead = blockOverhead(sheet, { ...request, scale: 1, span });
  const size = { widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
  const space = { width: span.right - span.left - ROUND, height: arrangement.most - overhead - ROUND };
  const heightFor = (scale: number) =>
    Math.min(arrangement.most, size.heightMm * scale * POINTS_PER_MM + overhead + 2 * ROUND);
  return {
    scale: fittingScale(SCALES, size, space),
    middle: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
    heightFor,
  };
}
