import type { Point } from '../../../shared-types/geometry.ts';
import type { Frame } from '../../../shared-types/rules/board-frame.ts';
import {
  addedKey,
  aspectKey,
  coverKey,
  type Decisions,
  WHOLE_KEYS,
} from '../../../shared-types/rules/board-update/decide.ts';
import { type BoardChanges, PART_ASPECTS } from '../../../shared-types/rules/board-update/types.ts';
import { UPDATE_USE } from '../../../shared-types/words/update-lines.ts';
import type { Arguments } from './arguments.ts';

/** What is decided on the command line about an update. */
export type UpdateChoices = {
  /** How the files' board lies on the ticket's; null: by vote. */
  readonly lie: Omit<Frame, 'by'> | null;
  readonly move: Point | null;
  readonly answers: Readonly<Record<string, string>>;
  readonly renames: readonly (readonly [from: string, to: string])[];
  decide(changes: BoardChanges): Decisions;
};

export const UPDATE_OPTIONS = {
  show: { type: 'boolean' },
  move: { type: 'string' },
  turn: { type: 'string' },
  mirror: { type: 'boolean' },
  over: { type: 'boolean' },
  take: { type: 'string', multiple: true },
  leave: { type: 'string', multiple: true },
  stay: { type: 'string', multiple: true },
  same: { type: 'string', multiple: true },
  renamed: { type: 'string', multiple: true },
} as const;

const TURNS = ['0', '90', '180', '270'];
const KINDS: readonly string[] = [...PART_ASPECTS, 'added', 'cover', ...WHOLE_KEYS];

/** The choices, or the sentence of what does not fit. */
export function updateChoices(given: Arguments): UpdateChoices | string {
  const turn = given.text('turn');
  if (turn !== undefined && !TURNS.includes(turn)) return UPDATE_USE.turn;
  const [, x, y] = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/.exec(given.text('move') ?? '') ?? [];
  if (given.text('move') !== undefined && y === undefined) return UPDATE_USE.move;
  const answers = pairsOf(given.texts('same'));
  const renames = pairsOf(given.texts('renamed'));
  if (!answers || !renames) return UPDATE_USE.pair;
  const kinds = [...given.texts('take'), ...given.texts('leave')].map((word) => word.split('=')[0]);
  if (!kinds.every((kind) => KINDS.includes(kind))) return UPDATE_USE.kinds(KINDS);
  const over = given.flag('over');
  const lies = turn !== undefined || over || given.flag('mirror') || y !== undefined;
  const quarters = TURNS.indexOf(turn ?? '0') as Frame['quarters'];
  return {
    lie: lies ? { mirror: over || given.flag('mirror'), ...(over ? { over } : {}), quarters } : null,
    move: y === undefined ? null : { x: Number(x), y: Number(y) },
    answers: Object.fromEntries(answers),
    renames,
    decide: (changes) => ({ ticks: ticksOf(given, changes), stay: given.texts('stay') }),
  };
}

function pairsOf(words: readonly string[]): [string, string][] | null {
  const pairs = words.map((word) => /^([^=]+)=([^=]*)$/.exec(word));
  return pairs.every((pair) => pair !== null) ? pairs.map(([, from, to]) => [from, to]) : null;
}

/** `KIND` is every change of the kind, `KIND=REF` that of one part; what is left wins over what is taken. */
function ticksOf(given: Arguments, changes: BoardChanges): Record<string, boolean> {
  const keys = keysOf(changes);
  const ticks: Record<string, boolean> = {};
  for (const [option, taken] of [
    ['take', true],
    ['leave', false],
  ] as const)
    for (const word of given.texts(option)) {
      const [kind, name] = word.split('=');
      for (const [key, of] of keys)
        if (of.kind === kind && (name === undefined || of.name === name)) ticks[key] = taken;
    }
  return ticks;
}

function keysOf({ changed, added, covers }: BoardChanges): Map<string, { kind: string; name: string }> {
  return new Map([
    ...changed.flatMap(({ refdes, aspects }) =>
      aspects.map((kind) => [aspectKey(kind, refdes), { kind: kind as string, name: refdes }] as const),
    ),
    ...added.map(({ refdes }) => [addedKey(refdes), { kind: 'added', name: refdes }] as const),
    ...covers.map(({ cover }) => [coverKey(cover.id), { kind: 'cover', name: cover.id }] as const),
    ...WHOLE_KEYS.map((kind) => [kind, { kind, name: '' }] as const),
  ]);
}
