import { numberOf, textOf } from '../figures.ts';
import type { FindingSentence } from './sentence.ts';

/** What was ticked off in the steps and does not agree. */
export const STEP_SENTENCES = {
  'tray-count-differs': (f) => ({
    what: `Counted ${textOf(f, 'which')}: ${numberOf(f, 'counted')}; the plan has ${numberOf(f, 'planned')}`,
    todo: 'Find the part, or the tag that is wrong, before you go on.',
  }),
  'read-outs-differ': (f) => ({
    what: `The two read-outs of ${textOf(f, 'refdes')} differ`,
    todo: 'Clean the contacts and read again before it is heated or lifted.',
  }),
  'strap-code-read-differs': (f) => ({
    what: `${textOf(f, 'of')} was read as ${textOf(f, 'read')}; wanted is ${textOf(f, 'wanted')}`,
    todo: 'Look at the straps again before power.',
  }),
} satisfies Record<string, FindingSentence>;
