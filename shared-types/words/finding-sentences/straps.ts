import { numberOf, textOf } from '../figures.ts';
import { type FindingSentence, refdes } from './sentence.ts';

const more = (count: number): string => (count > 0 ? ` (and ${count} more)` : '');

export const STRAP_SENTENCES = {
  'strap-refused': (f) => ({
    what: `Straps '${textOf(f, 'group')}': ${textOf(f, 'reason')}`,
    todo: 'Settle it in the stage Straps: wrong straps cost a second heat run.',
  }),
  'capacity-differs': (f) => ({
    what: `Straps '${textOf(f, 'group')}': ${textOf(f, 'reason')}`,
    todo: 'Choose the setting of the parts that go on, or correct their capacity.',
  }),
  'strap-group-faulty': (f) => ({
    what: `Straps '${textOf(f, 'group')}': ${textOf(f, 'reason')}${more(numberOf(f, 'more'))}`,
    todo: 'Correct the group in the stage Straps.',
  }),
  'incoming-differs': (f) => ({
    what: `The part that goes on at ${refdes(f)} does not agree with the old one${textOf(f, 'reason') ? `: ${textOf(f, 'reason')}` : ''}`,
    todo: 'Compare both data sheets before any heat.',
  }),
  'balls-differ': (f) => ({
    what: `The balls of the part for ${refdes(f)} are ${textOf(f, 'balls')}, the plan says ${textOf(f, 'joints')} for the joints that go on`,
    todo: 'Correct one of the two: the profile hangs on it.',
  }),
  'incoming-height': (f, m) => ({
    what: `The part that goes on at ${refdes(f)} is ${m.length(Math.abs(numberOf(f, 'heightMm')))} ${numberOf(f, 'heightMm') > 0 ? 'taller' : 'lower'} than the old one`,
    todo: 'Choose the thermal pad for it.',
  }),
  'straps-move': (f) => ({ what: `Straps: ${textOf(f, 'moves')}`, todo: 'The moves stand in their own table.' }),
  'capacity-unknown': (f) => ({
    what: `Straps '${textOf(f, 'group')}': ${textOf(f, 'reason')}`,
    todo: 'Enter it, so that the sum can be checked.',
  }),
} satisfies Record<string, FindingSentence>;
