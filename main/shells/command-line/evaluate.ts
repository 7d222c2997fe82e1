import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import type { Result } from '../../../shared-types/problem.ts';
import { evaluate } from '../../heat/evaluate.ts';
import { assessFully } from '../../planning/band-numbers.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { assessmentJson } from './assessment-json.ts';
import { assessmentLines } from './assessment-lines.ts';
import { openTicket } from './open-input.ts';
import { type Command, done, type Outcome, problem, type Tools } from './outcome.ts';

const options = { json: { type: 'boolean' }, coarse: { type: 'boolean' } } as const;

/** `evaluate TICKET [--json] [--coarse]`: exposure of every part, advice and findings. */
export const evaluateCommand: Command = (words, tools) => tellAssessed(words, tools, assessmentJson, assessmentLines);

/** `COMMAND TICKET [--json] [--coarse]`: what an evaluated ticket tells, as JSON or in lines. */
export async function tellAssessed(
  words: string[],
  tools: Tools,
  json: (document: TicketDocument, assessment: Assessment) => unknown,
  lines: (document: TicketDocument, assessment: Assessment) => string[],
): Promise<Outcome> {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const [path] = given.positionals;
  const opened = openTicket(path);
  if (!opened.ok) return problem(opened.problem);
  const assessed = assessTicket(opened.value, path, given.flag('coarse') ? 'coarse' : 'fine', tools);
  if (!assessed.ok) return problem(assessed.problem);
  if (given.flag('json')) return done(JSON.stringify(json(opened.value, assessed.value), null, 2));
  return done(...lines(opened.value, assessed.value));
}

/** Evaluates and assesses a ticket, its bands too; problems name its file. */
export function assessTicket(
  document: TicketDocument,
  path: string,
  phase: 'coarse' | 'fine',
  { share }: Tools,
): Result<Assessment> {
  const evaluated = evaluate(document.board, document.plan, { phase, share });
  if (!evaluated.ok) return { ok: false, problem: { ...evaluated.problem, file: path } };
  return assessFully(document.board, document.plan, evaluated.value, { share });
}
