import type { TermId, ThermocouplePlace } from '../uncertainty.ts';
import type { Measures } from './measures.ts';

/** What the model is not sure of, as it is named to a technician. */
const TERM_NAMES: Record<TermId | 'repeat', string> = {
  nozzle: 'how strongly the gas heats',
  dilution: 'how fast the gas cools beside the nozzle',
  outlet: 'the outlet temperature',
  preheater: 'how strongly the preheater heats',
  inPlane: 'the copper in the board',
  joints: 'how well the parts are joined to the board',
  idle: 'the heat lost to the room',
  repeat: 'the hand, from run to run',
};

/** Words about bands and what they come from. */
export const bandWords = {
  /** '± 12 °C'. */
  plusMinus: (value: string) => `±${value.startsWith('less') ? ' ' : ''}${value}`,
  leastSure: (term: TermId | 'repeat') => `Least sure: ${TERM_NAMES[term]}`,
};

/** Words about where thermocouples go. */
export const thermocoupleWords = {
  title: 'Thermocouples that tell most',
  place: (count: number) => (count === 1 ? 'Place 1 thermocouple' : `Place ${count} thermocouples`),
  onPart: 'On its body:',
  atCorner: 'At its coldest corner, on the board:',
  reads: (celsius: string, band: string) => `${celsius} ${band} expected at its peak.`,
  leaves: (band: string) => `Once read, the coldest joint is known within ${band}.`,
};

/** A place as one sentence: where, what it reads, what is left of the band. `target`: the part whose corner it is. */
export function thermocoupleSentence(place: ThermocouplePlace, target: string, m: Measures): string {
  const words = thermocoupleWords;
  const where = place.refdes === null ? `${target}. ${words.atCorner}` : `${place.refdes}. ${words.onPart}`;
  const reads = words.reads(m.temperature(place.expectedC), bandWords.plusMinus(m.difference(place.bandK)));
  return `${where} ${reads} ${words.leaves(bandWords.plusMinus(m.difference(place.targetBandK)))}`;
}
