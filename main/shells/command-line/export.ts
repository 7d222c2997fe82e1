import type { Board } from '../../../shared-types/board.ts';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { ESTIMATE, EXPORT_OUTPUT, EXPORT_USE, tableFacts } from '../../../shared-types/words/exports.ts';
import { exposuresCsv } from '../../document/exports/exposures-csv.ts';
import { placementsCsv } from '../../document/exports/placements-csv.ts';
import { writeBoard } from '../../document/open-document.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { assessTicket } from './evaluate.ts';
import { factsOfBoard } from './facts.ts';
import { openInput, openTicket } from './open-input.ts';
import { type Command, done, problem, type Tools, wrong } from './outcome.ts';
import { writeOutput } from './write-output.ts';

const options = { output: { type: 'string', short: 'o' }, coarse: { type: 'boolean' } } as const;

interface Made {
  readonly bytes: Uint8Array;
  readonly facts: string;
  readonly lines?: readonly string[];
}

const MAKERS: Readonly<Record<string, (path: string, coarse: boolean, tools: Tools) => Result<Made>>> = {
  board: (path) =>
    withBoard(path, (board) => ({ bytes: new TextEncoder().encode(writeBoard(board)), facts: factsOfBoard(board) })),
  placements: (path) =>
    withBoard(path, (board) => ({ bytes: placementsCsv(board), facts: tableFacts(board.parts.length) })),
  exposures,
};

/** `export board|placements|exposures TICKET -o FILE`: what others can read; a bare board does for the first two. */
export const exportCommand: Command = async (words, tools) => {
  const given = readArguments(words, options, 2, 2);
  if (isOutcome(given)) return given;
  const [what, path] = given.positionals;
  if (!Object.hasOwn(MAKERS, what)) return wrong(wrongUse(EXPORT_USE));
  const output = given.text('output');
  if (!output) return wrong(wrongUse(EXPORT_OUTPUT));
  const made = MAKERS[what](path, given.flag('coarse'), tools);
  if (!made.ok) return problem(made.problem);
  const { bytes, facts, lines } = made.value;
  const saved = writeOutput(output, bytes);
  return saved.ok ? done(written(output, facts), ...(lines ?? [])) : problem(saved.problem);
};

function withBoard(path: string, make: (board: Board) => Made): Result<Made> {
  const input = openInput(path);
  if (!input.ok) return input;
  if (input.value.kind === 'board') return succeed(make(input.value.board));
  const ticket = openTicket(path);
  return ticket.ok ? succeed(make(ticket.value.board)) : ticket;
}

function exposures(path: string, coarse: boolean, tools: Tools): Result<Made> {
  const opened = openTicket(path);
  if (!opened.ok) return opened;
  const { board, plan } = opened.value;
  const assessed = assessTicket(opened.value, path, coarse ? 'coarse' : 'fine', tools);
  if (!assessed.ok) return assessed;
  const { parts, notEvaluated } = assessed.value.evaluation;
  return succeed({
    bytes: exposuresCsv(board, plan, assessed.value),
    facts: tableFacts(parts.length + notEvaluated.length),
    lines: [ESTIMATE],
  });
}
