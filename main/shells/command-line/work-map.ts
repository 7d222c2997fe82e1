import { SHEET_DPI, type SheetFormat, sheetFormatSchema } from '../../../shared-types/sheet-format.ts';
import type { Units } from '../../../shared-types/units.ts';
import { sheetWords, written, wrongUse } from '../../../shared-types/words/command-line.ts';
import type { WorkMapInput } from '../../work-map/draw-sheet.ts';
import { renderWorkMap } from '../../work-map/render.ts';
import { loadSheetFonts } from '../fonts.ts';
import { sheetPages } from '../sheet-pages.ts';
import { type Arguments, isOutcome, readArguments } from './arguments.ts';
import { assessTicket } from './evaluate.ts';
import { openWholeTicket } from './open-input.ts';
import { type Command, done, type Outcome, problem, wrong } from './outcome.ts';
import { writeOutput } from './write-output.ts';

declare const __VERSION__: string;
const options = {
  output: { type: 'string', short: 'o' },
  coarse: { type: 'boolean' },
  date: { type: 'string' },
  page: { type: 'string' },
  dpi: { type: 'string' },
  unit: { type: 'string' },
  degrees: { type: 'string' },
} as const;

type Wish = {
  output: string;
  format: SheetFormat;
  page: number | undefined;
  dpi: number;
  date: string;
  coarse: boolean;
  units: Units;
};

/** `work-map TICKET -o OUT.pdf|svg|png`: evaluates the ticket and writes its sheet, or its pages as pictures. */
export const workMap: Command = async (words, tools) => {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const wish = wishOf(given);
  if (isOutcome(wish)) return wish;
  const [path] = given.positionals;
  const opened = openWholeTicket(path);
  if (!opened.ok) return problem(opened.problem);
  const assessed = assessTicket(opened.value.document, path, wish.coarse ? 'coarse' : 'fine', tools);
  if (!assessed.ok) return problem(assessed.problem);
  const input: WorkMapInput = {
    ...opened.value.document,
    pictures: opened.value.photos,
    assessment: assessed.value,
    fonts: loadSheetFonts(),
    date: wish.date,
    programVersion: __VERSION__,
    units: wish.units,
  };
  return wish.format === 'pdf' ? writePdf(input, wish) : writePages(input, wish, wish.format);
};

function wishOf(given: Arguments): Wish | Outcome {
  const output = given.text('output');
  const format = sheetFormatSchema.safeParse(output?.split('.').at(-1)?.toLowerCase());
  if (!output || !format.success) return wrong(wrongUse(sheetWords.output));
  const date = given.text('date') ?? new Date().toISOString();
  if (Number.isNaN(Date.parse(date))) return wrong(wrongUse(sheetWords.date));
  const page = given.text('page');
  if (page !== undefined && (!/^[1-9]\d{0,3}$/.test(page) || format.data === 'pdf'))
    return wrong(wrongUse(sheetWords.page));
  const dpi = Number(given.text('dpi') ?? SHEET_DPI.usual);
  if (!(dpi >= SHEET_DPI.least && dpi <= SHEET_DPI.most)) return wrong(wrongUse(sheetWords.dpi(SHEET_DPI)));
  const units = unitsOf(given);
  if (!units) return wrong(wrongUse(sheetWords.units));
  const [coarse, number] = [given.flag('coarse'), page === undefined ? undefined : Number(page)];
  return { output, format: format.data, page: number, dpi, date, coarse, units };
}

/** What the sheet's figures are written in; null: not told in a way that is known. */
function unitsOf(given: Arguments): Units | null {
  const length = given.text('unit') ?? 'mm';
  const temperature = given.text('degrees') ?? 'C';
  if ((length !== 'mm' && length !== 'mil') || (temperature !== 'C' && temperature !== 'F')) return null;
  return { length, temperature };
}

async function writePdf(input: WorkMapInput, { output }: Wish): Promise<Outcome> {
  const sheet = await renderWorkMap(input);
  const saved = writeOutput(output, sheet.bytes);
  return saved.ok ? done(written(output, sheetWords.facts(sheet.pages, sheet.bytes.length))) : problem(saved.problem);
}

/** One file for a chosen page; else one for each, numbered before the ending: OUT-01.svg and so on. */
async function writePages(input: WorkMapInput, wish: Wish, format: 'svg' | 'png'): Promise<Outcome> {
  const pages = await sheetPages(input, format, wish.dpi, wish.page);
  if (pages.length === 0) return wrong(wrongUse(sheetWords.noPage(wish.page ?? 1)));
  const lines: string[] = [];
  for (const [index, bytes] of pages.entries()) {
    const number = `-${String(index + 1).padStart(2, '0')}`;
    const path = wish.page === undefined ? wish.output.replace(/(\.\w+)$/, `${number}$1`) : wish.output;
    const saved = writeOutput(path, bytes);
    if (!saved.ok) return problem(saved.problem);
    lines.push(written(path, sheetWords.facts(1, bytes.length)));
  }
  return done(...lines);
}
