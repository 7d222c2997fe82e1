import { boardHealth, healthGroups, planHealth } from '../../../shared-types/rules/health/board-health.ts';
import { healthLine, healthSummary, healthWords } from '../../../shared-types/words/board-health.ts';
import { fileIsFine } from '../../../shared-types/words/command-line.ts';
import { METRIC } from '../../../shared-types/words/measures.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { factsOfBoard, factsOfPlan } from './facts.ts';
import { type Input, openInput } from './open-input.ts';
import { type Command, done, problem } from './outcome.ts';

/** `check FILE`: says that a board, plan or ticket is valid and what is odd about its board, or the first thing that is not valid. */
export const check: Command = async (words) => {
  const given = readArguments(words, {}, 1, 1);
  if (isOutcome(given)) return given;
  const [file] = given.positionals;
  const input = openInput(file);
  if (!input.ok) return problem(input.problem);
  return done(fileIsFine(file, input.value.kind, factsOf(input.value)), ...healthLines(input.value));
};

function factsOf(input: Input): string {
  if (input.kind === 'board') return factsOfBoard(input.board);
  if (input.kind === 'plan') return factsOfPlan(input.plan);
  return `${factsOfPlan(input.document.plan)} Board: ${factsOfBoard(input.document.board)}`;
}

/** What is odd about the board, a kind in a line: nothing that makes the file invalid. */
function healthLines(input: Input): string[] {
  if (input.kind === 'plan') return [];
  const { board, plan } = input.kind === 'board' ? { board: input.board, plan: null } : input.document;
  const groups = healthGroups([...(plan ? planHealth(board, plan) : []), ...boardHealth(board)]);
  const summary = healthWords.lineTitle(healthSummary(groups));
  return [summary, ...groups.map(({ kind, entries }) => healthLine(kind, entries, METRIC))];
}
