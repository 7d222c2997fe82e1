import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import { type Profile, profileSchema } from '../../../shared-types/profile.ts';
import { planForTargets } from '../../../shared-types/rules/new-plan.ts';
import { withProfile } from '../../../shared-types/rules/profiles.ts';
import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { fieldProblem } from '../../document/open-document.ts';
import { parseJson } from '../../document/parse-json.ts';
import { packTicket } from '../../document/ticket-archive.ts';
import { type Arguments, isOutcome, readArguments } from './arguments.ts';
import { factsOfPlan } from './facts.ts';
import { openInput } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readText } from './read-input.ts';
import { writeOutput } from './write-output.ts';

const options = {
  output: { type: 'string', short: 'o' },
  site: { type: 'string', multiple: true },
  profile: { type: 'string' },
  number: { type: 'string' },
} as const;

/** `ticket BOARD -o X.hmticket --site REF [--profile FILE]`: a new ticket with a site at each named part. */
export const ticket: Command = async (words) => {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const output = given.text('output');
  if (!output) return wrong(wrongUse('Name the ticket to write with -o NAME.hmticket.'));
  if (given.texts('site').length === 0) return wrong(wrongUse('Name the part to exchange with --site REF.'));
  const board = boardOf(given.positionals[0]);
  if (!board.ok) return problem(board.problem);
  const plan = planOf(board.value, output, given, given.positionals[0]);
  if (!plan.ok) return problem(plan.problem);
  const saved = writeOutput(
    output,
    packTicket({ document: { board: board.value, plan: plan.value }, photos: new Map() }),
  );
  return saved.ok ? done(written(output, factsOfPlan(plan.value))) : problem(saved.problem);
};

function boardOf(path: string): Result<Board> {
  const input = openInput(path);
  if (!input.ok) return input;
  if (input.value.kind === 'board') return succeed(input.value.board);
  if (input.value.kind === 'ticket') return succeed(input.value.document.board);
  return fail('wrong-format', { file: path, detail: { expected: 'board', found: 'a plan' } });
}

function planOf(board: Board, output: string, given: Arguments, boardPath: string): Result<Plan> {
  const known = new Map(board.parts.map((part) => [part.refdes, part]));
  for (const refdes of given.texts('site')) {
    const part = known.get(refdes);
    if (!part) return fail('part-unknown', { file: boardPath, detail: { refdes } });
    if (!part.fitted)
      return fail('invalid-field', {
        file: boardPath,
        where: refdes,
        detail: { reason: 'is an empty position', todo: 'Choose a fitted part.' },
      });
  }
  const fileName = output.split(/[\\/]/).at(-1) ?? output;
  const number = given.text('number') ?? fileName.replace(/\.hmticket$/, '');
  const plan = planForTargets(board, number, [...new Set(given.texts('site'))]);
  const profilePath = given.text('profile');
  if (profilePath === undefined) return succeed(plan);
  const profile = profileOf(profilePath);
  return profile.ok ? succeed(withProfile(plan, profile.value)) : profile;
}

function profileOf(path: string): Result<Profile> {
  const text = readText(path);
  if (!text.ok) return text;
  const parsed = parseJson(text.value, path);
  if (!parsed.ok) return parsed;
  const checked = profileSchema.safeParse(parsed.value);
  return checked.success
    ? succeed(checked.data)
    : { ok: false, problem: { ...fieldProblem(checked.error, parsed.value), file: path } };
}
