import { fileIsFine } from '../../../shared-types/words/command-line.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { factsOfBoard, factsOfPlan } from './facts.ts';
import { type Input, openInput } from './open-input.ts';
import { type Command, done, problem } from './outcome.ts';

/** `check FILE`: says that a board, plan or ticket is valid, or the first thing that is not. */
export const check: Command = async (words) => {
  const given = readArguments(words, {}, 1, 1);
  if (isOutcome(given)) return given;
  const [file] = given.positionals;
  const input = openInput(file);
  return input.ok ? done(fileIsFine(file, input.value.kind, factsOf(input.value))) : problem(input.problem);
};

function factsOf(input: Input): string {
  if (input.kind === 'board') return factsOfBoard(input.board);
  if (input.kind === 'plan') return factsOfPlan(input.plan);
  return `${factsOfPlan(input.document.plan)} Board: ${factsOfBoard(input.document.board)}`;
}
