import { SHEET } from '../../../shared-types/words/work-map.ts';
import { cropScale, groupSites, middleOfSites, type SiteGroup } from '../facts/site-groups.ts';
import { SOFT } from '../layout/flow.ts';
import { blockOverhead, drawPictureBlock, type PictureContent } from '../layout/picture-block.ts';
import type { Sheet } from '../layout/sheet.ts';
import { CONTENT_WIDTH } from '../paper.ts';
import { drawActBox } from './act-box.ts';
import { drawHeader, type HeaderReport } from './header.ts';

const LEAST_CROP = 250;
const MOST_CROP = 460;
const RUNS_ON_FIRST_PAGE = 4;

const namesOf = (group: SiteGroup): string => group.sites.map((site) => site.target).join(', ');

/** First page: who and what, the figures to act on, the site as it lies in the clamp. */
export function drawBenchPage(sheet: Sheet): HeaderReport {
  const { flow, facts, acts } = sheet;
  flow.startPage(SHEET.workMap);
  const report = drawHeader(sheet);
  if (acts.length === 0) flow.paragraph(SHEET.noRun);
  else drawActBox(sheet, acts.slice(0, RUNS_ON_FIRST_PAGE));
  if (acts.length > RUNS_ON_FIRST_PAGE)
    flow.paragraph(
      SHEET.moreRuns(
        acts
          .slice(RUNS_ON_FIRST_PAGE)
          .map(({ run }) => run.name)
          .join(', '),
      ),
    );
  if (acts.length > 0) flow.paragraph(SHEET.stopRunning, SOFT);
  flow.paragraph(SHEET.defers, SOFT);
  flow.space(6);
  if (facts.plan.sites.length === 0) flow.paragraph(SHEET.noSite);
  else drawCrops(sheet);
  return report;
}

/** A crop of each group of sites, then of what lies opposite where anything there needs attention. */
function drawCrops(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const space = { width: CONTENT_WIDTH, height: 360 };
  const groups = groupSites(facts.plan.sites, facts.plan.clampedTurnDeg, space);
  for (const group of groups) {
    if (flow.left() < LEAST_CROP) flow.startPage(SHEET.workMap);
    drawCrop(sheet, group, group.side, SHEET.tagsOf(namesOf(group)), Math.min(flow.left(), MOST_CROP));
  }
  for (const group of groups) {
    const side = group.side === 'top' ? 'bottom' : 'top';
    if (!facts.board.parts.some((part) => part.side === side)) continue;
    if (flow.left() < LEAST_CROP) flow.startPage(SHEET.workMap);
    drawCrop(sheet, group, side, SHEET.underSite(namesOf(group)), Math.min(flow.left(), 380));
  }
}

function drawCrop(sheet: Sheet, group: SiteGroup, side: SiteGroup['side'], title: string, height: number): void {
  const { facts } = sheet;
  const turnDeg = facts.plan.clampedTurnDeg;
  const content: PictureContent = { kind: 'tags', close: true };
  const overhead = blockOverhead(sheet, { title, side, content, scale: 3 });
  const scale = cropScale(group.sites, side, turnDeg, { width: CONTENT_WIDTH, height: height - overhead });
  drawPictureBlock(sheet, {
    title,
    side,
    content,
    scale,
    middle: middleOfSites(group.sites, side, turnDeg),
    height,
  });
  sheet.flow.space(8);
}
