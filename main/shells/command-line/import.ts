import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { importBoard } from '../../document/imports/import-board.ts';
import { writeBoard } from '../../document/open-document.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { factsOfBoard } from './facts.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readBytes } from './read-input.ts';
import { writeOutput } from './write-output.ts';

const options = { output: { type: 'string', short: 'o' }, name: { type: 'string' }, unit: { type: 'string' } } as const;

/** `import FILES... -o NAME.board.json`: placements and Gerber layers to one board, with a report of everything guessed or odd. */
export const importCommand: Command = async (words) => {
  const given = readArguments(words, options, 1, 500);
  if (isOutcome(given)) return given;
  const output = given.text('output');
  if (!output) return wrong(wrongUse('Name the board to write with -o NAME.board.json.'));
  const unit = given.text('unit');
  if (unit !== undefined && unit !== 'mm' && unit !== 'mil') return wrong(wrongUse('--unit takes mm or mil.'));
  const files = [];
  for (const path of given.positionals) {
    const read = readBytes(path);
    if (!read.ok) return problem(read.problem);
    files.push(read.value);
  }
  const imported = importBoard(files, { name: given.text('name'), unit });
  if (!imported.ok) return problem({ ...imported.problem, file: imported.problem.file ?? given.positionals[0] });
  const { board, report } = imported.value;
  const saved = writeOutput(output, new TextEncoder().encode(writeBoard(board)));
  if (!saved.ok) return problem(saved.problem);
  return done(...importReportLines(report), written(output, factsOfBoard(board)));
};
