import { isOutcome, readArguments } from './arguments.ts';
import { assessTicket } from './evaluate.ts';
import { openTicket } from './open-input.ts';
import { type Command, done, problem } from './outcome.ts';
import { stepJson, stepLinesOf } from './step-lines.ts';

const options = { json: { type: 'boolean' }, coarse: { type: 'boolean' } } as const;

/** `steps TICKET [--json] [--coarse]`: the work in order, with what is ticked. */
export const stepsCommand: Command = async (words, tools) => {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const [path] = given.positionals;
  const opened = openTicket(path);
  if (!opened.ok) return problem(opened.problem);
  const assessed = assessTicket(opened.value, path, given.flag('coarse') ? 'coarse' : 'fine', tools);
  if (!assessed.ok) return problem(assessed.problem);
  if (given.flag('json')) return done(JSON.stringify(stepJson(opened.value, assessed.value), null, 2));
  return done(...stepLinesOf(opened.value, assessed.value));
};
