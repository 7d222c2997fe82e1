import type { ImportNote } from '../import-report.ts';
import type { TicketDocument } from '../plan.ts';
import {
  type Decisions,
  takesAdded,
  takesAspect,
  takesCover,
  takesWhole,
  WHOLE_KEYS,
} from '../rules/board-update/decide.ts';
import { mentionsIn } from '../rules/board-update/mentions.ts';
import { type BoardChanges, PART_ASPECTS } from '../rules/board-update/types.ts';
import { aspectWords, coverChangeWords, mentionWords, boardUpdateWords as words } from './board-update.ts';
import { importNoteLine, nameList } from './imports.ts';

const line = (head: string, text: string): string => `${head.padEnd(10)} ${text}`;
const unlessTaken = (taken: boolean): string => (taken ? '' : ' (left as it is)');

/** What matters of a new board alone: an update takes nothing else for what files do not tell, and names itself what lacks a place. */
const OF_NEW_BOARDS: readonly ImportNote['code'][] = [
  'no-outline',
  'laminate-guessed',
  'laminate-not-known',
  'size-assumed',
  'class-not-known',
  'bill-missing',
];

/** What the reading of the files stumbled over, in plain lines: a guess there changes what the update finds. */
export const readingLines = (notes: readonly ImportNote[]): string[] =>
  notes.filter(({ weight, code }) => weight !== 'note' && !OF_NEW_BOARDS.includes(code)).map(importNoteLine);

/** What an update would do, in plain lines, as the command line prints them. */
export function updateLines(document: TicketDocument, changes: BoardChanges, decisions: Decisions): string[] {
  const { board } = document;
  const strange = words.strange(changes);
  const mentions = mentionsIn(document);
  const lines = [
    line('lies', words.alignment(changes.alignment)),
    ...(strange ? [line('warn', strange)] : []),
    line('same', words.same(changes.same, changes.common)),
    ...partLines(document, changes, decisions),
    ...changes.added.map(({ refdes, package: { name } }) =>
      line('added', `${[refdes, name].filter(Boolean).join(', ')}${unlessTaken(takesAdded(refdes, decisions))}`),
    ),
    ...goneLines(mentions, changes, decisions),
    ...changes.covers.map((change) =>
      line(
        'cover',
        `${change.cover.id}: ${coverChangeWords(change, mentions.get(change.cover.id))}${unlessTaken(takesCover(change, decisions))}`,
      ),
    ),
    ...changes.questions.map(({ part, candidates }) =>
      line(
        'asked',
        `${words.question(part.refdes, candidates.length)}; left as it is. Say which: --same ${part.refdes}=${candidates[0]?.refdes ?? 'NAME'} (${candidates.map(({ refdes, x, y }) => `${refdes} at ${x.toFixed(2)}, ${y.toFixed(2)}`).join('; ')})`,
      ),
    ),
    ...WHOLE_KEYS.flatMap((key) =>
      changes[key] === null
        ? []
        : [line(key, `${words[key](changes)}${unlessTaken(takesWhole(board, changes, key, decisions))}`)],
    ),
    ...(changes.untold > 0 ? [line('note', words.untold(changes.untold))] : []),
    ...(changes.atPin1.length > 0 ? [line('note', words.atPin1(changes.atPin1))] : []),
    ...(changes.unplaced.length > 0 ? [line('warn', words.unplaced(changes.unplaced))] : []),
  ];
  return lines;
}

function partLines({ board }: TicketDocument, { changed }: BoardChanges, decisions: Decisions): string[] {
  return PART_ASPECTS.flatMap((aspect) => {
    const lines = changed
      .filter(({ aspects }) => aspects.includes(aspect))
      .map((change) =>
        line(
          aspect,
          `${change.refdes}: ${aspectWords(aspect, change)}${unlessTaken(takesAspect(board, change, aspect, decisions))}`,
        ),
      );
    return lines.length <= MOST_LINES
      ? lines
      : [...lines.slice(0, MOST_LINES), line(aspect, words.more(lines.length - MOST_LINES))];
  });
}

/** Of one kind of change; what is the same for hundreds of parts needs no hundreds of lines. */
const MOST_LINES = 40;

function goneLines(
  mentions: ReturnType<typeof mentionsIn>,
  { gone, renamed }: BoardChanges,
  decisions: Decisions,
): string[] {
  return gone.map(({ refdes }) => {
    const said = (mentions.get(refdes) ?? []).map(mentionWords);
    const other = renamed.get(refdes);
    const fate = decisions.stay.includes(refdes) ? 'stays on the board' : 'taken off';
    const kept = said.length > 0 && fate === 'taken off' ? '; what the ticket says of it is kept' : '';
    return line(
      'gone',
      [
        `${refdes}: ${fate}${kept}${said.length > 0 ? ` (${nameList(said)})` : ''}`,
        ...(other ? [`${other} is new at its place: --renamed ${refdes}=${other} if it is the same part`] : []),
      ].join('; '),
    );
  });
}

/** What the options of an update on the command line take. */
export const UPDATE_USE = {
  output: 'Name the ticket to write with -o NAME.hmticket, or only look with --show.',
  turn: '--turn takes 0, 90, 180 or 270: quarters by which the board of the files is turned.',
  move: '--move takes x,y in mm, such as --move=-12.5,3.',
  pair: '--same and --renamed take two designators, such as --renamed R12=R112; --same R1= leaves R1 as it is.',
  kinds: (kinds: readonly string[]) =>
    `--take and --leave take a kind of change, alone or with a designator (place=R1): ${kinds.join(', ')}.`,
} as const;
