import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { planStraps } from '../../../shared-types/rules/straps/plan-straps.ts';
import { wrongUse } from '../../../shared-types/words/command-line.ts';
import { STRAP_LINES } from '../../../shared-types/words/straps.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { openInput } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { strapJson, strapLines } from './strap-lines.ts';

const options = {
  want: { type: 'string', multiple: true },
  'stock-first': { type: 'boolean' },
  json: { type: 'boolean' },
} as const;

/** `straps FILE [--want GROUP=SETTING ...] [--stock-first] [--json]`: what the straps say, and the moves to what is wanted. */
export const strapsCommand: Command = async (words) => {
  const given = readArguments(words, options, 1, 1);
  if (isOutcome(given)) return given;
  const [path] = given.positionals;
  const input = openInput(path);
  if (!input.ok) return problem(input.problem);
  if (input.value.kind === 'plan')
    return problem({ code: 'wrong-format', file: path, detail: { expected: 'board or ticket', found: 'a bare plan' } });
  const document =
    input.value.kind === 'ticket' ? input.value.document : { board: input.value.board, plan: emptyPlan('-') };
  if (document.board.straps.length === 0) return done(STRAP_LINES.none);
  const wishes = wanted(document.board, given.texts('want'));
  if ('sentence' in wishes) return wrong(wishes.sentence);
  const wished = new Set(wishes.wanted.map((wish) => wish.groupId));
  const straps: Plan['straps'] = {
    ...document.plan.straps,
    wanted: [...document.plan.straps.wanted.filter((wish) => !wished.has(wish.groupId)), ...wishes.wanted],
    stockFirst: document.plan.straps.stockFirst || given.flag('stock-first'),
  };
  const plan = { ...document.plan, straps };
  const moves = planStraps(document.board, plan);
  if (given.flag('json')) return done(JSON.stringify(strapJson(document.board, plan, moves), null, 2));
  return done(...strapLines(document.board, plan, moves));
};

/** `GROUP=SETTING`: each by its id, or by its name or label. */
function wanted(board: Board, words: readonly string[]): { wanted: Plan['straps']['wanted'] } | { sentence: string } {
  const found: Plan['straps']['wanted'] = [];
  for (const word of words) {
    const wish = wishOf(board, word);
    if (!wish.ok) return { sentence: wrongUse(STRAP_LINES.noSuchWish(word)) };
    found.push(wish.value);
  }
  return { wanted: found };
}

function wishOf(board: Board, word: string): Result<Plan['straps']['wanted'][number]> {
  const at = word.indexOf('=');
  const [groupName, settingName] = [word.slice(0, at), word.slice(at + 1)];
  const group = at < 0 ? undefined : board.straps.find(({ id, name }) => id === groupName || name === groupName);
  const setting = group?.settings.find(({ id, label }) => id === settingName || label === settingName);
  return group && setting ? succeed({ groupId: group.id, settingId: setting.id }) : fail('invalid-field');
}
