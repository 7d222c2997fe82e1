import { type Figures, numberOf, textOf } from '../figures.ts';
import type { Measures } from '../measures.ts';

/** What is found, and what to do about it. */
export type FindingWords = { what: string; todo: string };
export type FindingSentence = (figures: Figures, measures: Measures) => FindingWords;

/** 'C12, C14 and 3 more'. */
export function names(figures: Figures): string {
  const more = numberOf(figures, 'more');
  return more > 0 ? `${textOf(figures, 'names')} and ${more} more` : textOf(figures, 'names');
}

/** 'U7' for one part, '4 parts (U7, U8, U9, U11)' for many. */
export const parts = (figures: Figures): string =>
  numberOf(figures, 'count') === 1
    ? textOf(figures, 'names')
    : `${numberOf(figures, 'count')} parts (${names(figures)})`;

/** The verb or word for one or for many parts. */
export const oneOrMany = (figures: Figures, one: string, many: string): string =>
  numberOf(figures, 'count') === 1 ? one : many;

export const refdes = (figures: Figures): string => textOf(figures, 'refdes');
export const runName = (figures: Figures): string => textOf(figures, 'runName');
