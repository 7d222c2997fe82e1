import type { Figures } from '../figures.ts';
import type { Measures } from '../measures.ts';
import { asSentence } from '../window/sentence.ts';

/** What is done, as a phrase that begins with a verb, and why or how; the second may be empty. */
export type StepSentence = (figures: Figures, measures: Measures) => { act: string; why: string };

export const textAt = (figures: Figures, name: string): string => String(figures[name] ?? '');
export const isSet = (figures: Figures, name: string): boolean =>
  figures[name] !== undefined && figures[name] !== '' && figures[name] !== 0;

/** 'C1, C2 and 4 more'. */
export const listed = (figures: Figures): string =>
  textAt(figures, 'names') + (isSet(figures, 'more') ? ` and ${figures.more} more` : '');

/** 'U1 (HG25Q64 firmware)'. */
export const named = (figures: Figures): string =>
  textAt(figures, 'refdes') + (isSet(figures, 'name') ? ` (${textAt(figures, 'name')})` : '');

/** Phrases that are not empty, as sentences one behind the other. */
export const joined = (...phrases: (string | false | undefined)[]): string =>
  phrases.flatMap((phrase) => (phrase ? [asSentence(phrase)] : [])).join(' ');
