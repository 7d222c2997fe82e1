import type { Part } from '../board.ts';
import type { Mention } from '../rules/board-update/mentions.ts';
import type { Alignment, BoardChanges, CoverChange, PartAspect, PartChange } from '../rules/board-update/types.ts';
import { nameList } from './imports.ts';
import { METRIC, type Measures, rounded } from './measures.ts';

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** Kinds of change, as headings of their lists. */
export const ASPECT_WORDS: Record<PartAspect, string> = {
  place: 'Moved',
  turn: 'Turned',
  side: 'Other side',
  size: 'Body size',
  package: 'Package name',
  value: 'Value',
  height: 'Height',
  fitted: 'Fitted or empty',
  pins: 'Pin 1 and pads',
};

const angle = (degrees: number): string => `${rounded(degrees, 1)}°`;
const SIDES = { top: 'top', bottom: 'bottom' } as const;
/** Hundredths of a millimetre where lengths are in mm: the least difference counted is 0.05. */
const fine = (mm: number, measures: Measures): string =>
  measures.length(1).endsWith('mm') ? `${rounded(mm, 2)} mm` : measures.length(mm);
const sizeOf = ({ package: { lengthMm, widthMm } }: Part, measures: Measures): string =>
  `${fine(lengthMm, measures)} × ${fine(widthMm, measures)}`;
const orNone = (text: string): string => text || 'none';

/** What one aspect of a part changes from and to. */
export function aspectWords(aspect: PartAspect, change: PartChange, measures: Measures = METRIC): string {
  const { before, after } = change;
  const to = (from: string, next: string) => `${from} → ${next}`;
  switch (aspect) {
    case 'place':
      return `by ${fine(change.movedMm, measures)}, to x ${fine(after.x, measures)}, y ${fine(after.y, measures)}${change.originDoubt ? '; may be another point of the same part: no pads tell' : ''}`;
    case 'turn':
      return `by ${angle(change.turnedDeg)}, ${to(angle(before.turn), angle(after.turn))}`;
    case 'side':
      return to(SIDES[before.side], SIDES[after.side]);
    case 'size':
      return to(sizeOf(before, measures), sizeOf(after, measures));
    case 'package':
      return to(orNone(before.package.name), after.package.name);
    case 'value':
      return to(orNone(before.value), after.value);
    case 'height':
      return to(heightWords(before, measures), heightWords(after, measures));
    case 'fitted':
      return after.fitted ? 'empty → fitted' : 'fitted → empty';
    default:
      return pinWords(before, after);
  }
}

const heightWords = ({ package: { heightMm } }: Part, measures: Measures): string =>
  heightMm === null ? 'not known' : fine(heightMm, measures);

function pinWords(before: Part, after: Part): string {
  const pins = after.pinCount === undefined ? '' : many(after.pinCount, 'pin', 'pins');
  const mark = after.pin1 ? (before.pin1 ? 'pin 1 elsewhere' : 'pin 1 known') : '';
  return [pins, mark].filter(Boolean).join(', ') || 'other pad area';
}

/** What the ticket says of a part beside the part itself. */
export function mentionWords(mention: Mention): string {
  switch (mention.kind) {
    case 'tag':
      return `tag ${mention.tag}${mention.note ? `: ${mention.note}` : ''}`;
    case 'site':
      return `target of the site ${mention.name}`;
    case 'strap':
      return `strap group ${mention.name}`;
    case 'watch':
      return `thermocouple ${mention.name}`;
    case 'destination':
      return `${mention.of} relocates to it`;
    case 'ticked':
      return 'checked as a strap';
    default:
      return 'match point of a photo';
  }
}

const BY: Record<Alignment['by'], string> = {
  references: 'by the parts that both have',
  corner: "by the outlines' lower left corners",
  none: 'not known: they are taken as they stand',
  chosen: 'chosen',
};
const LIES = { same: 'as the files have it', mirrored: 'mirrored', over: 'with its other side up' } as const;
export const lieOf = ({ frame }: Alignment): keyof typeof LIES =>
  frame.over ? 'over' : frame.mirror ? 'mirrored' : 'same';

/** `mentions`: what the ticket says of the part whose place a cover takes. */
export function coverChangeWords(
  { cover, kind }: CoverChange,
  mentions: readonly Mention[] = [],
  measures: Measures = METRIC,
): string {
  const size = `${cover.kind} of ${measures.length(cover.lengthMm)} × ${measures.length(cover.widthMm)}`;
  if (kind === 'part') {
    const said =
      mentions.length > 0 ? `; what the ticket says of it is kept (${nameList(mentions.map(mentionWords))})` : '';
    return `${size} in place of the part of this name${said}`;
  }
  return kind === 'moved' ? `${size}, lies or measures otherwise than drawn` : size;
}

export const boardUpdateWords = {
  aspects: ASPECT_WORDS,
  lies: LIES,
  alignedBy: ({ by, votes, of }: Alignment) => (of > 0 ? `${BY[by]}: ${votes} of ${of} lie there` : BY[by]),
  /** Files of another board share designators with this one, and hardly a place. */
  strange: ({ alignment: { votes, of }, common, added, gone, untold }: BoardChanges) => {
    if (of >= 4 && votes < of / 4) return 'Hardly a part lies where these files put it. Are they of this board?';
    const stranger = common === 0 && added.length > 0 && gone.length + untold > 0;
    return stranger ? 'No part of these files is on the board, by its designator. Are they of this board?' : null;
  },
  alignment: (alignment: Alignment) =>
    `moved by x ${rounded(alignment.frame.by.x, 3)}, y ${rounded(alignment.frame.by.y, 3)} mm, turned by ${90 * alignment.frame.quarters}°, ${LIES[lieOf(alignment)]}; ${boardUpdateWords.alignedBy(alignment)}`,
  same: (same: number, common: number) =>
    `${same} of ${many(common, 'part', 'parts')} that both have ${same === 1 ? 'is' : 'are'} the same`,
  more: (count: number) => `and ${many(count, 'part', 'parts')} more`,
  added: 'New',
  gone: 'Gone',
  untold: (count: number) =>
    `${many(count, 'part', 'parts')} not in these files stay: the files place nothing on their side, or no parts at all`,
  atPin1: (names: readonly string[]) => `Put at pin 1 by the files, not moved: ${nameList(names)}`,
  unplaced: (names: readonly string[]) =>
    `In the bill of materials, to be fitted, but with no place on the board: ${nameList(names)}`,
  outline: (changes: BoardChanges) =>
    `Another outline or cutouts (${many(changes.cutouts.added, 'cutout', 'cutouts')} new, ${changes.cutouts.gone} gone)`,
  fiducials: (changes: BoardChanges) => `Fiducials (${changes.fiducials?.length ?? 0})`,
  layers: (changes: BoardChanges) => `${many(changes.layers?.length ?? 0, 'copper layer', 'copper layers')}`,
  revision: (changes: BoardChanges) => `Revision ${changes.revision ?? ''}`,
  question: (refdes: string, count: number) =>
    `${refdes}: the files have ${many(count, 'part', 'parts')} of this designator, none at its place`,
  nothing: 'The files say nothing new of this board.',
} as const;
