import { fail } from '../../../shared-types/problem.ts';
import type { SearchBounds } from '../../../shared-types/profile-search.ts';
import { searchBoundsSchema } from '../../../shared-types/profile-search.ts';
import { shapeOf, usualBounds } from '../../../shared-types/rules/profile-shape.ts';
import { wrongUse } from '../../../shared-types/words/command-line.ts';
import { METRIC } from '../../../shared-types/words/measures.ts';
import { searchLines, searchWords as words } from '../../../shared-types/words/profile-search.ts';
import { searchProfile } from '../../planning/search/search-profile.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { openTicket } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';

/** Options that bound a figure, with the field of the bounds. */
const RANGES = { preheater: 'belowC', lead: 'leadS', gas: 'gasC', seconds: 'gasS' } as const;
type RangeName = keyof typeof RANGES;
const NAMES = Object.keys(RANGES) as RangeName[];

const options = {
  json: { type: 'boolean' },
  run: { type: 'string' },
  preheater: { type: 'string' },
  lead: { type: 'string' },
  gas: { type: 'string' },
  seconds: { type: 'string' },
  'to-peak': { type: 'string' },
} as const;

function rangeOf(text: string): { from: number; to: number } | null {
  const found = /^(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?$/.exec(text.trim());
  return found ? { from: Number(found[1]), to: Number(found[2] ?? found[1]) } : null;
}

/**
 * `search TICKET [--run ID] [--preheater 280-340] [--lead 220-300] [--gas 320-360] [--seconds 40-120] [--to-peak 480]
 * [--json]`: the profile in these bounds with the largest worst margin, and what less time costs.
 */
export const searchCommand: Command = async (given) => {
  const read = readArguments(given, options, 1, 1);
  if (isOutcome(read)) return read;
  const [path] = read.positionals;
  const opened = openTicket(path);
  if (!opened.ok) return problem(opened.problem);
  const { board, plan } = opened.value;
  const named = read.text('run');
  const run = plan.heatRuns.find((one) => (named ? [one.id, one.name].includes(named) : shapeOf(one) !== null));
  if (!run) return problem(fail('no-heat-run', { file: path, where: named ?? 'plan' }).problem);
  const shape = shapeOf(run);
  if (!shape) {
    const detail = { reason: words.noShape, todo: words.addGas };
    return problem(fail('invalid-field', { file: path, where: run.name, detail }).problem);
  }
  const bounds: SearchBounds = usualBounds(run, shape, plan);
  for (const name of NAMES) {
    const text = read.text(name);
    const range = text === undefined ? bounds[RANGES[name]] : rangeOf(text);
    if (!range) return wrong(wrongUse(words.boundsForm(name)));
    bounds[RANGES[name]] = range;
  }
  const toPeak = read.text('to-peak');
  if (toPeak !== undefined) bounds.toPeakS = Number(toPeak);
  if (!searchBoundsSchema.safeParse(bounds).success) return wrong(wrongUse(words.boundsForm('gas')));
  const answer = searchProfile(board, plan, { runId: run.id, bounds });
  if (!answer.ok) return problem({ ...answer.problem, file: path });
  if (read.flag('json')) return done(JSON.stringify({ bounds, ...answer.value }, null, 2));
  return done(...searchLines(answer.value, METRIC));
};
