import { TICKET_EXTENSION } from '../../../shared-types/format-version.ts';
import { alignAs, alignBoards } from '../../../shared-types/rules/board-update/align.ts';
import { compareBoards } from '../../../shared-types/rules/board-update/compare.ts';
import { updateTicket } from '../../../shared-types/rules/board-update/update-ticket.ts';
import { renameParts } from '../../../shared-types/rules/rename-part.ts';
import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { readingLines, UPDATE_USE, updateLines } from '../../../shared-types/words/update-lines.ts';
import { importForUpdate } from '../../document/imports/update-board.ts';
import { packTicket } from '../../document/ticket-archive.ts';
import { documentProblem } from '../../files/document-check.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { factsOfBoard } from './facts.ts';
import { importOptions, readChoices } from './import.ts';
import { openWholeTicket } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readFiles } from './read-input.ts';
import { UPDATE_OPTIONS, updateChoices } from './update-choices.ts';
import { writeOutput } from './write-output.ts';

/** `update-board TICKET FILES... -o OUT`: a ticket's drawing brought up to newer files; what the plan says is kept. */
export const updateBoardCommand: Command = async (words) => {
  const given = readArguments(words, { ...importOptions, ...UPDATE_OPTIONS }, 2, 500);
  if (isOutcome(given)) return given;
  const output = given.text('output');
  if (!given.flag('show') && !output?.endsWith(TICKET_EXTENSION)) return wrong(wrongUse(UPDATE_USE.output));
  const [importing, choices] = [readChoices(given), updateChoices(given)];
  if (typeof importing === 'string') return wrong(wrongUse(importing));
  if (typeof choices === 'string') return wrong(wrongUse(choices));
  const [path, ...paths] = given.positionals;
  const ticket = openWholeTicket(path);
  if (!ticket.ok) return problem(ticket.problem);
  const files = readFiles(paths);
  if (!files.ok) return problem(files.problem);
  const imported = importForUpdate(files.value, importing, ticket.value.document.board);
  if (!imported.ok) return problem({ ...imported.problem, file: imported.problem.file ?? paths[0] });
  const document = renameParts(ticket.value.document, choices.renames);
  const source = { board: imported.value.board, told: imported.value.report.told };
  const alignment = choices.lie
    ? alignAs(document.board, source, choices.lie, choices.move)
    : alignBoards(document.board, source);
  const changes = compareBoards(document.board, source, alignment, choices.answers);
  const decisions = choices.decide(changes);
  const lines = [...readingLines(imported.value.report.notes), ...updateLines(document, changes, decisions)];
  if (given.flag('show') || !output) return done(...lines);
  const next = updateTicket(document, changes, decisions);
  const fault = documentProblem(next, null);
  if (fault) return problem({ ...fault, file: path });
  const saved = writeOutput(output, packTicket({ document: next, photos: ticket.value.photos }));
  return saved.ok ? done(...lines, written(output, factsOfBoard(next.board))) : problem(saved.problem);
};
