import type { TargetResult, WatchReading } from '../../../shared-types/evaluation.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import type { SheetFigures } from '../../../shared-types/words/sheet-figures.ts';
import { meltsAt, spanWords } from '../../../shared-types/words/sheet-run.ts';
import { clock, SHEET, seconds, TABLES, VERDICTS, whole } from '../../../shared-types/words/work-map.ts';
import { CHART_KEY_HEIGHT, drawChartKey, drawProfileChart } from '../drawing/profile-chart.ts';
import { type ActNumbers, segmentEnds } from '../facts/act-numbers.ts';
import { neighbourSolidus } from '../facts/sheet-facts.ts';
import { cropScale, groupSites, middleOfSites } from '../facts/site-groups.ts';
import { FIGURES, SOFT, STRONG } from '../layout/flow.ts';
import { blockOverhead, drawPictureBlock, type PictureContent } from '../layout/picture-block.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, type Column, drawTable } from '../layout/table.ts';
import { CONTENT, CONTENT_WIDTH } from '../paper.ts';
import { drawActBox } from './act-box.ts';

const C = TABLES.columns;
const CHART_HEIGHT = 150;
const LEAST_PICTURE = 190;
/** A picture that has a page to itself takes more of it: what lies round the site is worth more than empty paper. */
const MOST_PICTURE = { below: 400, alone: 560 };
const WATCH_IN_ONE_TABLE = 3;
const figure = (title: string, width: number): Column => ({ title, width, align: 'right', style: FIGURES });

/** One heat run: its numbers, segments, thermocouples, targets and isotherms; the actual column stays empty. */
export function drawRunSheet(sheet: Sheet, act: ActNumbers, place: number): void {
  const { flow, facts } = sheet;
  const { run } = act;
  const { words } = facts;
  const sites = facts.plan.sites.filter((site) => run.siteIds.includes(site.id));
  flow.startPage(SHEET.runTitle(place + 1, sheet.acts.length, run.name));
  flow.heading(SHEET.runTitle(place + 1, sheet.acts.length, run.name));
  flow.paragraph(words.runFacts(run.kind, run.side, sites.map((site) => site.target).join(', '), act.seconds), SOFT);
  flow.paragraph(words.setUp, SOFT);
  flow.space(3);
  drawActBox(sheet, [act]);
  if (act.overParts.length > 0) flow.paragraph(words.act.over(act.overParts), STRONG);
  drawSpare(sheet, act);
  drawSegments(sheet, act);
  drawWatch(sheet, act);
  drawTargets(sheet, act);
  drawChart(sheet, act);
  drawIsotherms(sheet, act);
}

/** The least time between a target being molten and the first neighbour passing its limit. */
function drawSpare(sheet: Sheet, act: ActNumbers): void {
  const told = act.numbers.filter((one) => one.firstOver !== undefined && one.secondsToSpare !== undefined);
  const [least] = told.sort((a, b) => (a.secondsToSpare ?? 0) - (b.secondsToSpare ?? 0));
  if (!least) return;
  const { act: words } = sheet.facts.words;
  sheet.flow.paragraph(words.spare(least.refdes, least.firstOver ?? '', least.secondsToSpare ?? 0, least.spareBandS));
}

/** What the segments of a run set, and what the board is expected to read at their ends. An emitter has neither outlet nor flow. */
function drawSegments(sheet: Sheet, act: ActNumbers): void {
  const { flow } = sheet;
  const { columns, figures, emits } = sheet.facts.words;
  const ends = segmentEnds(act.run);
  drawTable(
    flow,
    [
      { title: C.segment, share: 1 },
      figure(C.length, 42),
      figure(C.ends, 42),
      figure(columns.preheater, 72),
      figure(columns.gasSet, 72),
      ...(emits ? [] : [figure(columns.outlet, 56), figure(C.flow, 40)]),
      figure(columns.boardEnd, 66),
      { title: columns.actual, width: 56 },
    ],
    act.run.segments.map((segment, index): Cell[] => {
      const told = act.result?.segments[index];
      const set = segment.gas && sheet.facts.plan.station.gasReads === 'setting';
      return [
        segment.name,
        seconds(segment.seconds),
        clock(ends[index]),
        figures.ramp(segment.preheater.startC, segment.preheater.endC),
        segment.gas ? (set || emits ? figures.ramp(segment.gas.startC, segment.gas.endC) : SHEET.byOutlet) : SHEET.off,
        ...(emits ? [] : gasCells(figures, segment, set ? (told?.gasOutletC ?? null) : null)),
        told ? figures.bare(told.siteC, told.siteBandK) : '',
        { blank: true },
      ];
    }),
    TABLES.segments,
  );
}

/** Outlet temperature, as estimated from the dial or else as the plan measured it; and the flow. */
function gasCells(figures: SheetFigures, { gas, flowLMin }: Segment, estimatedC: number | null): string[] {
  return gas ? [figures.bare(estimatedC ?? gas.endC), whole(flowLMin)] : [SHEET.off, SHEET.off];
}

/** Thermocouples side by side, three to a table: predicted beside an empty field. */
function drawWatch(sheet: Sheet, act: ActNumbers): void {
  const readings = act.result?.watch ?? [];
  if (readings.length === 0) return;
  sheet.flow.heading(sheet.facts.words.columns.watch);
  for (const tag of sheet.facts.watchTags) {
    if (!readings.some((reading) => reading.tagId === tag.id)) continue;
    sheet.flow.paragraph(SHEET.watchPlace(tag.name, tag.side, tag.refdes, tag.note));
  }
  sheet.flow.space(3);
  for (let from = 0; from < readings.length; from += WATCH_IN_ONE_TABLE)
    drawWatchTable(sheet, act, readings.slice(from, from + WATCH_IN_ONE_TABLE));
}

function drawWatchTable(sheet: Sheet, act: ActNumbers, readings: readonly WatchReading[]): void {
  const ends = segmentEnds(act.run);
  const { columns: titles, figures } = sheet.facts.words;
  const columns: Column[] = [
    { title: C.segment, share: 1 },
    figure(C.ends, 44),
    ...readings.flatMap((reading): Column[] => [
      figure(titles.predicted(reading.name), 76),
      { title: C.actualOf(reading.name), width: 58 },
    ]),
  ];
  const rows = act.run.segments.map((segment, index): Cell[] => [
    segment.name,
    clock(ends[index]),
    ...readings.flatMap((reading): Cell[] => [
      figures.bare(reading.atSegmentEndC[index] ?? Number.NaN, reading.atSegmentEndBandK?.[index]),
      { blank: true },
    ]),
  ]);
  const peaks: Cell[] = [
    SHEET.highest,
    '',
    ...readings.flatMap((reading): Cell[] => [
      figures.peakAt(reading.peakC, reading.peakAtS, reading.peakBandK),
      { blank: true },
    ]),
  ];
  drawTable(sheet.flow, columns, [...rows, peaks]);
}

function drawTargets(sheet: Sheet, act: ActNumbers): void {
  const targets = act.result?.targets ?? [];
  if (targets.length === 0) return;
  const { columns, figures } = sheet.facts.words;
  drawTable(
    sheet.flow,
    [
      { title: C.target, width: 58, style: { ...FIGURES, face: 'monoStrong' } },
      figure(columns.coldest, 68),
      figure(columns.hottest, 68),
      figure(columns.window, 62),
      figure(columns.skin, 92),
      figure(C.above, 74),
      { title: C.verdict, share: 1 },
    ],
    targets.map((target): Cell[] => targetCells(figures, target)),
    TABLES.targets,
  );
}

const targetCells = (figures: SheetFigures, { bands, ...target }: TargetResult): Cell[] => [
  target.refdes,
  figures.bare(target.coldestJointC, bands?.coldestK),
  figures.bare(target.hottestJointC, bands?.hottestK),
  target.windowC ? figures.range(target.windowC.from, target.windowC.to) : '',
  figures.ofLimit(target.skinMaxC, target.skinLimitC, bands?.skinK),
  spanWords({ value: target.secondsAllAbove, band: bands?.allAboveS }),
  target.moltenAtS === null
    ? VERDICTS[target.verdict]
    : meltsAt(VERDICTS[target.verdict], target.moltenAtS, bands?.moltenS),
];

function drawChart(sheet: Sheet, act: ActNumbers): void {
  const { flow, ink } = sheet;
  flow.heading(TABLES.profile, CHART_HEIGHT + CHART_KEY_HEIGHT);
  const box = { x0: CONTENT.left, x1: CONTENT.right, y0: flow.y, y1: flow.y + CHART_HEIGHT };
  drawProfileChart(ink, sheet.facts.words, act.run, act.result, box);
  drawChartKey(ink, sheet.facts.words, CONTENT.left, box.y1 + 1);
  flow.y = box.y1 + CHART_KEY_HEIGHT + 8;
}

/** The run's own isotherms round its sites, on the side that faces the nozzle. */
function drawIsotherms(sheet: Sheet, act: ActNumbers): void {
  const { flow, facts } = sheet;
  const { result, run } = act;
  const sites = facts.plan.sites.filter((site) => run.siteIds.includes(site.id));
  if (!result || sites.length === 0) return;
  const turnDeg = facts.plan.clampedTurnDeg;
  const content: PictureContent = {
    kind: 'isotherms',
    source: {
      fields: result.fields,
      grid: facts.assessment.evaluation.grid,
      limitsC: neighbourSolidus(facts),
    },
  };
  for (const group of groupSites(sites, turnDeg, { width: CONTENT_WIDTH, height: 300 })) {
    const alone = flow.need(LEAST_PICTURE);
    const title = SHEET.peaksOf(run.name);
    const height = Math.min(flow.left(), alone ? MOST_PICTURE.alone : MOST_PICTURE.below);
    const overhead = blockOverhead(sheet, { title, side: group.side, content, scale: 2 });
    const scale = cropScale(group.sites, group.side, turnDeg, { width: CONTENT_WIDTH, height: height - overhead });
    const middle = middleOfSites(group.sites, group.side, turnDeg);
    drawPictureBlock(sheet, { title, side: group.side, scale, middle, content, height });
    flow.space(8);
  }
}
