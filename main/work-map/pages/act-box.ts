import type { SheetWords } from '../../../shared-types/words/sheet-run.ts';
import { type Phrase, SHEET, TABLES } from '../../../shared-types/words/work-map.ts';
import { type Line, lineHeight, wrap } from '../drawing/phrase.ts';
import { ASCENT } from '../drawing/typeface.ts';
import { type ActNumbers, gasEndsAt } from '../facts/act-numbers.ts';
import { BODY, STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { columnWidths } from '../layout/table.ts';
import { CONTENT, CONTENT_WIDTH, INK } from '../paper.ts';

const TITLE_HEIGHT = 18;
const PAD = 5;
const columnsOf = ({ columns }: SheetWords): { title: string; share: number }[] => [
  { title: TABLES.columns.run, share: 82 },
  { title: columns.gasOn, share: 86 },
  { title: TABLES.columns.molten, share: 84 },
  { title: TABLES.columns.stop, share: 46 },
  { title: columns.gasOff, share: 116 },
  { title: TABLES.columns.abort, share: 98 },
];

type ActWords = SheetWords['act'];
type LaidRow = { cells: Line[][]; wide: Line[] | null; height: number };

/** The box with the figures to act on: one row for each of the given heat runs. */
export function drawActBox(sheet: Sheet, acts: readonly ActNumbers[]): void {
  const { ink, flow } = sheet;
  const { words } = sheet.facts;
  const columns = columnsOf(words);
  const widths = columnWidths(columns, CONTENT_WIDTH - 2 * PAD);
  const head = columns.map((column, index) => wrap(column.title, widths[index] - 6, STRONG, ink.type));
  const headHeight = Math.max(...head.map((lines) => lines.length)) * lineHeight(STRONG) + 5;
  const rows = acts.map((act) => layRow(sheet, act, widths));
  const height = TITLE_HEIGHT + headHeight + rows.reduce((sum, row) => sum + row.height, 0) + 2;
  flow.need(height);
  const top = flow.y;
  ink.box({ x0: CONTENT.left, x1: CONTENT.right, y0: top, y1: top + TITLE_HEIGHT }, null, INK.black);
  ink.text(CONTENT.left + PAD + 3, top + 13, words.act.title, { face: 'sansStrong', size: 11, colour: INK.white });
  const band = SHEET.band(sheet.facts.assessment.evaluation.bands);
  const bandWidth = ink.type.width(band, 'sans', 10);
  ink.text(CONTENT.right - PAD - bandWidth, top + 13, band, { face: 'sans', size: 10, colour: INK.white });
  let y = top + TITLE_HEIGHT + 2;
  drawCells(sheet, head, widths, y, STRONG);
  y += headHeight - 2;
  for (const row of rows) {
    ink.segment({ x: CONTENT.left, y }, { x: CONTENT.right, y }, { width: 0.6 });
    if (row.wide) drawWide(sheet, row, widths, y);
    else drawCells(sheet, row.cells, widths, y + 2, BODY);
    y += row.height;
  }
  ink.box({ x0: CONTENT.left, x1: CONTENT.right, y0: top, y1: y }, { width: 1.6 });
  flow.y = y + 6;
}

function layRow(sheet: Sheet, act: ActNumbers, widths: readonly number[]): LaidRow {
  const { type } = sheet.ink;
  const words = sheet.facts.words.act;
  const room = widths.map((width) => width - 6);
  const run = [
    ...wrap(act.run.name, room[0], STRONG, type),
    ...wrap(words.runInfo(act.run.side, act.seconds), room[0], BODY, type),
  ];
  const blocked = blockedPhrase(words, act);
  const phrases = blocked ? [] : [gasOn, molten, stop, gasOff, aborts].map((say) => say(words, act));
  const cells = [run, ...phrases.map((phrase, index) => wrap(phrase, room[index + 1], BODY, type))];
  const wideWidth = widths.slice(1).reduce((sum, width) => sum + width, 0) - 6;
  const wide = blocked ? wrap(blocked, wideWidth, BODY, type) : null;
  const lines = Math.max(...cells.map((cell) => cell.length), wide?.length ?? 0);
  return { cells, wide, height: lines * lineHeight(BODY) + 5 };
}

/** What stands in the way of the run: no evaluation, or a target that does not melt. */
function blockedPhrase(words: ActWords, act: ActNumbers): Phrase | null {
  if (!act.result) return words.notEvaluated();
  return act.unmelted.length > 0 ? words.doNotStart(act.unmelted) : null;
}

const gasOn = (words: ActWords, act: ActNumbers): Phrase => {
  if (act.gasOnAtS === null) return words.noGas();
  if (act.gasOnAtS === 0) return words.gasAtStart();
  const told = act.numbers.find((numbers) => numbers.startGasAtC !== undefined);
  const board = told?.startGasAtC === undefined ? null : { celsius: told.startGasAtC, bandK: told.startGasBandK };
  const later = act.numbers.filter(({ gasFromS }) => gasFromS !== undefined && gasFromS > (act.gasOnAtS ?? 0));
  return stacked([
    words.gasOn(act.gasOnAtS, act.readsAtGasOn, board),
    ...later.map(({ refdes, gasFromS }) => words.gasOnFor(refdes, gasFromS ?? 0)),
  ]);
};

/** Phrases one below the other. */
const stacked = (phrases: readonly Phrase[]): Phrase =>
  phrases.flatMap((phrase, index) => (index === 0 ? phrase : ['\n', ...phrase]));

const melting = (act: ActNumbers) => act.numbers.filter((numbers) => numbers.moltenAtS !== undefined);

function molten(words: ActWords, act: ActNumbers): Phrase {
  const lines = melting(act).map(({ refdes, moltenAtS, moltenBandS }) =>
    words.molten(refdes, { value: moltenAtS ?? 0, band: moltenBandS }),
  );
  return lines.length > 0 ? stacked(lines) : words.nothing();
}

/** The end of the planned gas where planning gives no earlier time. */
const stop = (words: ActWords, act: ActNumbers): Phrase =>
  stacked(melting(act).map(({ notMoltenByS }) => words.stop(notMoltenByS ?? act.gasOffAtS ?? act.seconds)));

/** One target: the reading that goes with it. Several: when the gas leaves each, and its coldest joint then. */
const gasOff = (words: ActWords, act: ActNumbers): Phrase => {
  if (act.gasOffAtS === null) return words.nothing();
  const targets = act.result?.targets ?? [];
  if (targets.length > 1)
    return stacked(
      targets.map(({ refdes, siteId, coldestJointC }) =>
        words.gasOffFor(refdes, gasEndsAt(act.run, siteId) ?? act.gasOffAtS ?? 0, coldestJointC),
      ),
    );
  const [target] = targets;
  return words.gasOff(act.gasOffAtS, act.readsAtGasOff, target?.coldestJointC ?? null, target?.windowC ?? null);
};

function aborts(words: ActWords, act: ActNumbers): Phrase {
  const read = act.numbers.find((numbers) => numbers.abortAtC !== undefined);
  const early = read?.abortFor === read?.firstOver && (read?.secondsToSpare ?? 0) < 0;
  const skins = new Map<number, string[]>();
  for (const { refdes, skinLimitC } of act.result?.targets ?? [])
    if (Number.isFinite(skinLimitC)) skins.set(skinLimitC, [...(skins.get(skinLimitC) ?? []), refdes]);
  // A limit that is read where it applies is a figure to keep, not an estimate: it has no band.
  const bandK = read?.abortBandK !== undefined && read.abortBandK >= 0.5 ? read.abortBandK : undefined;
  const lines = [
    ...(read?.abortAtC === undefined
      ? []
      : [
          words.abortReading(
            read.abortOn ?? 'site',
            read.abortFor ?? '',
            { celsius: read.abortAtC, bandK },
            early ? read.refdes : null,
          ),
        ]),
    ...[...skins].map(([celsius, targets]) => words.abortSkin(targets.join(', '), celsius)),
  ];
  return lines.length > 0 ? stacked(lines) : words.noAbort();
}

function drawCells(
  sheet: Sheet,
  cells: readonly (readonly Line[])[],
  widths: readonly number[],
  top: number,
  style: typeof BODY,
): void {
  let x = CONTENT.left + PAD + 3;
  cells.forEach((lines, column) => {
    for (const [row, line] of lines.entries())
      sheet.ink.line(line, x, top + ASCENT * style.size + row * lineHeight(style), style);
    x += widths[column];
  });
}

function drawWide(sheet: Sheet, row: LaidRow, widths: readonly number[], y: number): void {
  drawCells(sheet, row.cells, widths, y + 2, BODY);
  const x = CONTENT.left + PAD + 3 + widths[0];
  for (const [index, line] of (row.wide ?? []).entries())
    sheet.ink.line(line, x, y + 2 + ASCENT * BODY.size + index * lineHeight(BODY), BODY);
}
