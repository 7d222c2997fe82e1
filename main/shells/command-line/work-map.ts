import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { renderWorkMap } from '../../work-map/render.ts';
import { loadSheetFonts } from '../fonts.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { assessTicket } from './evaluate.ts';
import { openWholeTicket } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { writeOutput } from './write-output.ts';

declare const __VERSION__: string;
const options = {
  output: { type: 'string', short: 'o' },
  coarse: { type: 'boolean' },
  date: { type: 'string' },
} as const;

/** `work-map TICKET -o OUT.pdf`: evaluates the ticket and prints its sheet. */
export const workMap: Command = async (words, tools) => {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const output = given.text('output');
  if (!output) return wrong(wrongUse('Name the sheet to write with -o NAME.pdf.'));
  const date = given.text('date') ?? new Date().toISOString();
  if (Number.isNaN(Date.parse(date))) return wrong(wrongUse('--date takes a date such as 2026-11-25.'));
  const [path] = given.positionals;
  const opened = openWholeTicket(path);
  if (!opened.ok) return problem(opened.problem);
  const assessed = assessTicket(opened.value.document, path, given.flag('coarse') ? 'coarse' : 'fine', tools);
  if (!assessed.ok) return problem(assessed.problem);
  const sheet = await renderWorkMap({
    ...opened.value.document,
    pictures: opened.value.photos,
    assessment: assessed.value,
    fonts: loadSheetFonts(),
    date,
    programVersion: __VERSION__,
  });
  const saved = writeOutput(output, sheet.bytes);
  if (!saved.ok) return problem(saved.problem);
  return done(
    written(
      output,
      `${sheet.pages} ${sheet.pages === 1 ? 'page' : 'pages'}, ${Math.ceil(sheet.bytes.length / 1024)} kB.`,
    ),
  );
};
