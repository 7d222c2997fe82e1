import { COVER_CHOICES, LENGTH_WORDS, type LengthWord, SIDE_MEANINGS } from '../../../shared-types/import-choices.ts';
import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { IMPORT_USE, importReportLines } from '../../../shared-types/words/imports.ts';
import { type ImportChoices, importBoard } from '../../document/imports/import-board.ts';
import { writeBoard } from '../../document/open-document.ts';
import { type Arguments, isOutcome, readArguments } from './arguments.ts';
import { factsOfBoard } from './facts.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readFiles } from './read-input.ts';
import { writeOutput } from './write-output.ts';

/** Options of every command that reads drawing files. */
export const importOptions = {
  output: { type: 'string', short: 'o' },
  name: { type: 'string' },
  unit: { type: 'string' },
  'drawing-unit': { type: 'string' },
  'bottom-x': { type: 'string' },
  'bottom-y': { type: 'string' },
  offset: { type: 'string' },
  outline: { type: 'string' },
  panel: { type: 'string' },
  side: { type: 'string', multiple: true },
  cover: { type: 'string', multiple: true },
} as const;

/** `import FILES OR FOLDERS... -o NAME.board.json`: drawing files to one board, with a report of everything guessed or odd. */
export const importCommand: Command = async (words) => {
  const given = readArguments(words, importOptions, 1, 500);
  if (isOutcome(given)) return given;
  const output = given.text('output');
  if (!output) return wrong(wrongUse('Name the board to write with -o NAME.board.json.'));
  const choices = readChoices(given);
  if (typeof choices === 'string') return wrong(wrongUse(choices));
  const files = readFiles(given.positionals);
  if (!files.ok) return problem(files.problem);
  const imported = importBoard(files.value, choices);
  if (!imported.ok) return problem({ ...imported.problem, file: imported.problem.file ?? given.positionals[0] });
  const { board, report } = imported.value;
  const saved = writeOutput(output, new TextEncoder().encode(writeBoard(board)));
  if (!saved.ok) return problem(saved.problem);
  return done(...importReportLines(report), written(output, factsOfBoard(board)));
};

/** What is decided on the command line, or the sentence of what does not fit. */
export function readChoices(given: Arguments): ImportChoices | string {
  const unit = given.text('unit');
  if (!isLength(unit)) return IMPORT_USE.unit;
  const drawingUnit = given.text('drawing-unit');
  if (!isLength(drawingUnit)) return IMPORT_USE.drawingUnit;
  const bottomX = given.text('bottom-x');
  if (bottomX !== undefined && !Object.hasOwn(SIGNS, bottomX)) return IMPORT_USE.bottomX;
  const bottomY = given.text('bottom-y');
  if (bottomY !== undefined && !Object.hasOwn(SIGNS, bottomY)) return IMPORT_USE.bottomY;
  const panel = given.text('panel');
  if (panel !== undefined && panel !== 'all' && panel !== 'one') return IMPORT_USE.panel;
  const outline = given.text('outline');
  if (outline !== undefined && !/^\d{1,3}$/.test(outline)) return IMPORT_USE.outline;
  const offset = given.text('offset');
  const [, x, y] = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/.exec(offset ?? '') ?? [];
  if (offset !== undefined && y === undefined) return IMPORT_USE.offset;
  const sideWords = pairsOf(given.texts('side'), SIDE_MEANINGS);
  if (!sideWords) return IMPORT_USE.side;
  const covers = pairsOf(given.texts('cover'), COVER_CHOICES);
  if (!covers) return IMPORT_USE.cover;
  return {
    name: given.text('name'),
    unit,
    drawingUnit,
    panel,
    ...(bottomX ? { bottomX: SIGNS[bottomX as keyof typeof SIGNS] } : {}),
    ...(bottomY ? { bottomY: SIGNS[bottomY as keyof typeof SIGNS] } : {}),
    sideWords,
    covers,
    ...(outline ? { outline: Number(outline) } : {}),
    ...(offset ? { offset: { x: Number(x), y: Number(y) } } : {}),
  };
}

const SIGNS = { top: 'asSeenFromTop', negated: 'negated' } as const;

function isLength(word: string | undefined): word is LengthWord | undefined {
  return word === undefined || (LENGTH_WORDS as readonly string[]).includes(word);
}

/** `WORD=MEANING` pairs as a record; null where one has no such meaning. */
function pairsOf<T extends string>(words: readonly string[], meanings: readonly T[]): Record<string, T> | null {
  const pairs = words.map((word): [string, T | undefined] => {
    const at = word.lastIndexOf('=');
    return [word.slice(0, Math.max(0, at)), meanings.find((meaning) => meaning === word.slice(at + 1))];
  });
  const told = pairs.filter((pair): pair is [string, T] => pair[0] !== '' && pair[1] !== undefined);
  return told.length === pairs.length ? Object.fromEntries(told) : null;
}
