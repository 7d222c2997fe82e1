import { type Figures, numberOf, textOf } from '../figures.ts';
import { type Measures, rounded } from '../measures.ts';
import { type FindingSentence, oneOrMany, parts, refdes } from './sentence.ts';

const hours = (value: number): string => (value >= 48 && value % 24 === 0 ? `${value / 24} d` : `${rounded(value)} h`);

/** 'bake it 9 h at 125 °C, 33 h at 90 °C or 13 d at 40 °C', or where the table has no row, the data sheet. */
function bakeWords(f: Figures, m: Measures): string {
  if (numberOf(f, 'at125H') <= 0) return 'The usual table has no row for it: bake as its data sheet says.';
  const [warm, mild, cool] = ['at125H', 'at90H', 'at40H'].map((name) => hours(numberOf(f, name)));
  return `Bake it ${warm} at ${m.temperature(125)}, ${mild} at ${m.temperature(90)} or ${cool} at ${m.temperature(40)} (both at 5 % humidity or less); tapes and reels stand only the last.`;
}

/** The one line above all others. */
export const VERDICT_SENTENCES = {
  'decline-or-quote': (f) => ({
    what: [
      numberOf(f, 'lostCount') > 0 ? `${textOf(f, 'lost')} cannot be saved` : '',
      numberOf(f, 'wornCount') > 0 ? `the place of ${textOf(f, 'worn')} has been exchanged too often` : '',
    ]
      .filter(Boolean)
      .join(', and ')
      .replace(/^t/, 'T'),
    todo: 'Decline, or quote the replacement and the risk before the board is hot.',
  }),
} satisfies Record<string, FindingSentence>;

export const HANDLING_SENTENCES = {
  'exchanged-too-often': (f) => ({
    what: `This would be exchange no. ${numberOf(f, 'number')} at ${refdes(f)}; shops stop after ${numberOf(f, 'most')}`,
    todo: 'Look at the pads and the laminate; decline, or agree in writing that pads may lift.',
  }),
  'floor-life-over': (f, m) => ({
    what: `The part for ${refdes(f)} (level ${textOf(f, 'level')}) was out of its bag for ${hours(numberOf(f, 'openH'))}; its floor life is ${hours(numberOf(f, 'lifeH'))}`,
    todo: bakeWords(f, m),
  }),
  'floor-life-unknown': (f, m) => ({
    what: `Nobody knows how long the part for ${refdes(f)} (level ${textOf(f, 'level')}, floor life ${hours(numberOf(f, 'lifeH'))}) was out of its bag`,
    todo: bakeWords(f, m),
  }),
  'bake-before-every-use': (f) => ({
    what: `The part for ${refdes(f)} is of level 6`,
    todo: 'Bake it as its label says and solder it within the time on the label.',
  }),
  'in-circuit-first': (f) => ({
    what: `${refdes(f)} holds firmware and is to come off`,
    todo: 'Ask first whether it can be written in circuit: no heat at all. Either way read it out twice until both agree, and keep the data block that belongs to this unit.',
  }),
  'exchanged-before': (f) => ({
    what: `This is exchange no. ${numberOf(f, 'number')} at ${refdes(f)}`,
    todo: `Check the pads before and after; shops stop after ${numberOf(f, 'most')}.`,
  }),
  'moisture-level-untold': (f) => ({
    what: `Moisture level and open time of what goes on at ${parts(f)} ${oneOrMany(f, 'is', 'are')} not told`,
    todo: 'Read the label of the dry bag; from an open bag or a donor board, bake first.',
  }),
  'history-untold': (f) => ({
    what: `Nobody has told how often ${parts(f)} ${oneOrMany(f, 'was', 'were')} exchanged before`,
    todo: 'Look for flux, lifted pads and discoloured laminate.',
  }),
} satisfies Record<string, FindingSentence>;
