import type { FindingWords } from './sentence.ts';

/**
 * What to say instead where infrared heats from above: there is no gas, no flow and no nozzle to change, but power, time and an aperture.
 * Pieces of our own sentences, the longer ones first.
 */
const INSTEAD: readonly (readonly [RegExp, string])[] = [
  [/\bmore flow or hotter gas\b/gi, 'more power, or the heater on longer'],
  [/\blet the gas blow at this site\b/gi, 'let the heater stand over this site'],
  [/\bkeep the gas on longer or raise it a little\b/gi, 'keep the heater on longer or raise its power a little'],
  [/\bkeep the gas on longer\b/gi, 'keep the heater on longer'],
  [
    /\buse cooler gas for longer, or more preheat and less gas\b/gi,
    'less power for longer, or more preheat and less from above',
  ],
  [/\bcooler gas\b/gi, 'less power'],
  [/\bshorten the gas or lower it\b/gi, 'a shorter time under the heater, or less power'],
  [/\bshorten the gas, or start it\b/gi, 'a shorter time under the heater, or start it'],
  [/\bshorten the gas\b/gi, 'a shorter time under the heater'],
  [
    /\bbring the gas up more slowly, or keep the nozzle further off\b/gi,
    'bring the heater up more slowly, or keep it further off',
  ],
  [/\bbring the gas up\b/gi, 'bring the heater up'],
  [/\bkeep the gas away from it\b/gi, 'screen it from the heater'],
  [/\bkeep the gas away\b/gi, 'screen them from the heater'],
  [/\bthe gas then has less to do\b/gi, 'the heater then has less to do'],
  [/\bbefore the gas\b/gi, 'before the heater is on'],
  [/\bin the gas\b/gi, 'under the heater'],
  [/\bthe gas of\b/gi, 'the heater of'],
  [/\bturn the jet away from it\b/gi, 'screen it from the heater'],
  [/\bno gas blows there\b/gi, 'no heater stands there'],
  [/\bsegment with gas\b/gi, 'segment with the heater on'],
  [/\bfoil at the nozzle side, a smaller nozzle\b/gi, 'foil at the side of the heater, a smaller aperture'],
  [
    /\ba smaller nozzle, less flow or the jet turned away from it\b/gi,
    'a smaller aperture, less power or polished foil over it',
  ],
  [/\ba larger nozzle or a wider sweep\b/gi, 'a larger aperture or more distance'],
  [/\ba closing nozzle\b/gi, 'a heater close to the board'],
  [/\bcheck the nozzle\b/gi, 'check the heater'],
  [/\bchange nozzle, preheat\b/gi, 'change aperture, preheat'],
  [/\blow air, do not touch it\b/gi, 'do not touch it'],
  [/\bnozzle\b/gi, 'heater'],
];

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A sentence about gas said for an infrared heater; its first letter stays as it was. */
export function saidForEmitter(text: string): string {
  const said = INSTEAD.reduce((before, [gas, emitter]) => before.replace(gas, emitter), text);
  return /^[A-Z]/.test(text) ? upperFirst(said) : said;
}

export const wordsForEmitter = ({ what, todo }: FindingWords): FindingWords => ({
  what: saidForEmitter(what),
  todo: saidForEmitter(todo),
});
