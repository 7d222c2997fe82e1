import type { HealthEntry, HealthKind } from '../rules/health/types.ts';
import type { Measures } from './measures.ts';

type Lengths = Pick<Measures, 'length'>;
const many = (count: number, one: string, several: string): string => `${count} ${count === 1 ? one : several}`;

/** One kind of oddity in a few words: the pieces of '3 overlap · 1 outside · 12 heights missing'. */
const KINDS: Record<HealthKind, (count: number) => string> = {
  'site-lost': (n) => many(n, 'site without its part', 'sites without their part'),
  'site-side': (n) => many(n, 'site on the wrong side', 'sites on the wrong side'),
  'tag-lost': (n) => many(n, 'tag without its part', 'tags without their part'),
  'no-parts': () => 'no parts',
  overlap: (n) => `${n} overlap`,
  'lies-over': (n) => many(n, 'lies over others', 'lie over others'),
  outside: (n) => `${n} outside`,
  'over-cutout': (n) => `${n} over a cutout`,
  'same-name': (n) => many(n, 'name nearly twice', 'names nearly twice'),
  'body-odd': (n) => many(n, 'odd body', 'odd bodies'),
  'cover-low': (n) => many(n, 'cover too low', 'covers too low'),
  'no-layers': () => 'no copper layers',
  'class-unknown': (n) => many(n, 'class unknown', 'classes unknown'),
  'class-guessed': (n) => many(n, 'class guessed', 'classes guessed'),
  'height-missing': (n) => many(n, 'height missing', 'heights missing'),
  'layers-guessed': () => 'copper layers guessed',
};

/** 'overlap': pairs. */
export const healthCount = (kind: HealthKind, count: number): string => KINDS[kind](count);

/** What the kind means for the work, in one line. */
export const healthReason: Record<HealthKind, string> = {
  'site-lost': 'The target is not on the board: the site heats a place without a part.',
  'site-side': 'The target lies on the other side.',
  'tag-lost': 'What they name is not on the board.',
  'no-parts': 'Draw parts or import placements.',
  overlap: 'Bodies on one side reach into each other by more than 0.1 mm: a size, a turn or a place is wrong.',
  'lies-over': 'They hold three or more smaller parts: a can or frame is better drawn as a cover.',
  outside: 'Their centre lies off the board: they get no heat figures.',
  'over-cutout': 'There is no board under their centre.',
  'same-name': 'Only case or blanks tell them apart: on the bench they are one.',
  'body-odd': 'No part measures so: the heat of the body comes out wrong.',
  'cover-low': 'The part does not fit under the cover: one of the heights is wrong.',
  'no-layers': 'The heat spreads by copper. Set the layers under Laminate.',
  'class-unknown': 'Judged as the weakest plastic until somebody says.',
  'class-guessed': 'Read out of package names. Limits go by class, so a look is worth it.',
  'height-missing': "Their class's usual height is used, with a wider look at what may be over.",
  'layers-guessed': 'Count them at the edge if you can, then set them under Laminate.',
};

const ODD: Record<string, (figures: HealthEntry['figures'], measures: Lengths) => string> = {
  small: ({ lengthMm, widthMm }) => `${lengthMm} × ${widthMm} mm is smaller than any part`,
  large: ({ lengthMm, widthMm }, m) =>
    `${m.length(Number(lengthMm))} × ${m.length(Number(widthMm))}, larger than the board`,
  tall: ({ heightMm }, m) => `${m.length(Number(heightMm))} high`,
  flat: ({ heightMm }) => `${heightMm} mm high: thinner than any part`,
};

const under = (refdes: readonly string[]): string =>
  refdes.length > 6 ? `${refdes.slice(0, 5).join(', ')} and ${refdes.length - 5} more` : refdes.join(', ');

/** What is said behind the name of the part (or of the site, tag or cover) that an entry is about. */
export function healthSentence({ kind, refdes, figures, coverId }: HealthEntry, measures: Lengths): string {
  const length = (name: string): string => measures.length(Number(figures[name]));
  switch (kind) {
    case 'overlap':
      return `and ${refdes[1]}, by ${length('depthMm')}`;
    case 'lies-over':
      return `over ${under(refdes.slice(1))}`;
    case 'outside':
      return `${length('byMm')} off the board`;
    case 'same-name':
      return `and ${refdes.slice(1).join(', ')}`;
    case 'body-odd':
      return ODD[String(figures.why)](figures, measures);
    case 'cover-low':
      return `${length('heightMm')} high, under ${coverId}, which leaves ${length('roomMm')}`;
    case 'site-lost':
      return `is gone; ${figures.name} was marked on it`;
    case 'site-side':
      return `lies on the other side than ${figures.name} (${figures.side})`;
    case 'tag-lost':
      return 'is gone; it carries a tag';
    case 'no-layers':
    case 'layers-guessed':
    case 'no-parts':
    case 'over-cutout':
    case 'class-unknown':
    case 'class-guessed':
    case 'height-missing':
      return '';
  }
}

/** All kinds in one line; nothing odd: said so. */
export const healthSummary = (groups: readonly { kind: HealthKind; entries: readonly unknown[] }[]): string =>
  groups.length === 0
    ? healthWords.fine
    : groups.map(({ kind, entries }) => healthCount(kind, entries.length)).join(' · ');

/** One kind on the command line, with the first names. */
export function healthLine(kind: HealthKind, entries: readonly HealthEntry[], measures: Lengths): string {
  const shown = entries
    .slice(0, 8)
    .map((entry) => `${entry.refdes[0] ?? ''} ${healthSentence(entry, measures)}`.trim());
  const more = entries.length > shown.length ? `; ${entries.length - shown.length} more` : '';
  const named = shown.some((text) => text !== '') ? `: ${shown.join('; ')}${more}` : '';
  return `  ${healthCount(kind, entries.length)}${named}. ${healthReason[kind]}`;
}

export const healthWords = {
  title: 'Board health',
  fine: 'Nothing odd found.',
  lineTitle: (summary: string) => `Board health: ${summary}`,
  show: (refdes: string) => `Show ${refdes}`,
  showAll: (count: number) => `${count} more`,
  list: 'List them',
  fixes: {
    sites: (count: number) => `Take ${many(count, 'site', 'sites')} out`,
    tags: (count: number) => `Take ${many(count, 'tag', 'tags')} off`,
    classes: (count: number) => `Confirm ${many(count, 'guessed class', 'guessed classes')}`,
    heights: (count: number) =>
      count === 1 ? 'Take 1 height from its class' : `Take ${count} heights from their classes`,
  },
} as const;
