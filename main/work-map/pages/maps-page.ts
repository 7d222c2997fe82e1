import type { Side } from '../../../shared-types/geometry.ts';
import { SHEET } from '../../../shared-types/words/work-map.ts';
import type { IsothermSource } from '../drawing/isotherm-picture.ts';
import { fittingScale, turnedBox } from '../drawing/view.ts';
import { neighbourSolidus } from '../facts/sheet-facts.ts';
import { blockOverhead, drawPictureBlock, type PictureContent } from '../layout/picture-block.ts';
import type { Sheet } from '../layout/sheet.ts';
import { CONTENT_WIDTH, POINTS_PER_MM } from '../paper.ts';

const SCALES = [4, 3, 2.5, 2, 1.75, 1.5, 1.25, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.15, 0.1, 0.05];
const SIDES: readonly Side[] = ['top', 'bottom'];
/** Room round the board for labels, points. */
const ROUND = 26;

/** The whole board from both sides: the tags on one page, the isotherms on another. */
export function drawMapPages(sheet: Sheet): void {
  const { evaluation } = sheet.facts.assessment;
  drawBothSides(sheet, SHEET.allTags, { kind: 'tags', close: false });
  if (evaluation.runs.length === 0) return;
  const source: IsothermSource = {
    fields: evaluation.fields,
    grid: evaluation.grid,
    limitsC: neighbourSolidus(sheet.facts),
  };
  drawBothSides(sheet, SHEET.peaks, { kind: 'isotherms', source });
}

function drawBothSides(sheet: Sheet, title: string, content: PictureContent): void {
  const { facts, flow } = sheet;
  flow.startPage(SHEET.wholeBoard);
  const half = flow.left() / 2 - 6;
  const turnDeg = facts.plan.clampedTurnDeg;
  for (const side of SIDES) {
    const box = turnedBox(facts.outline, side, turnDeg);
    const size = { widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
    const overhead = blockOverhead(sheet, { title, side, content, scale: 1 });
    const space = { width: CONTENT_WIDTH - ROUND, height: half - overhead - ROUND };
    const scale = fittingScale(SCALES, size, space);
    const wanted = size.heightMm * scale * POINTS_PER_MM + overhead + 2 * ROUND;
    const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
    drawPictureBlock(sheet, { title, side, content, scale, middle, height: Math.min(half, wanted) });
    flow.space(10);
  }
}
