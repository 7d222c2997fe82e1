import { numberOf, textOf } from '../figures.ts';
import { rounded } from '../measures.ts';
import { type FindingSentence, refdes, runName } from './sentence.ts';

/** What brings a target over liquidus. */
const HELPS: Record<string, string> = {
  stiffener: 'take the stiffener off, it takes the heat',
  gas: 'let the gas blow at this site',
  preheat: 'preheat more or longer',
  longer: 'keep the gas on longer',
  hotter: 'more flow or hotter gas',
};

function helps(codes: string): string {
  const said = codes.split(' ').flatMap((code) => HELPS[code] ?? []);
  const sentence = said.join('; or ');
  return sentence ? `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.` : 'Change the profile.';
}

export const TARGET_SENTENCES = {
  'target-does-not-melt': (f, m) => ({
    what: `${refdes(f)} does not melt in ${runName(f)}: coldest corner ${m.temperature(numberOf(f, 'coldestC'))}, ${m.difference(numberOf(f, 'shortK'))} below liquidus ${m.degrees(numberOf(f, 'liquidusC'))}`,
    todo: helps(textOf(f, 'helps')),
  }),
  'target-unsure': (f, m) => ({
    what: `The coldest corner of ${refdes(f)} reaches ${m.temperature(numberOf(f, 'coldestC'))} in ${runName(f)}, ±${m.difference(numberOf(f, 'bandK'))}: within its band it may stay below liquidus ${m.degrees(numberOf(f, 'liquidusC'))}`,
    todo: 'Put a thermocouple at its coldest corner and go by its reading; a logged run on a scrap board narrows the band.',
  }),
  'package-too-hot': (f, m) => ({
    what: `The top of ${refdes(f)} reaches ${m.temperature(numberOf(f, 'skinC'))} in ${runName(f)}; Tc less 5 is ${m.degrees(numberOf(f, 'limitC'))}`,
    todo: 'Use cooler gas for longer, or more preheat and less gas.',
  }),
  'window-missed-cold': (f, m) => ({
    what: `${refdes(f)} melts in ${runName(f)}, but its coldest joint stops at ${m.temperature(numberOf(f, 'coldestC'))}; the window is ${m.degrees(numberOf(f, 'fromC'))} to ${m.degrees(numberOf(f, 'toC'))}`,
    todo: 'Keep the gas on longer or raise it a little.',
  }),
  'window-missed-hot': (f, m) => ({
    what: `The coldest joint of ${refdes(f)} reaches ${m.temperature(numberOf(f, 'coldestC'))} in ${runName(f)}; the window is ${m.degrees(numberOf(f, 'fromC'))} to ${m.degrees(numberOf(f, 'toC'))}`,
    todo: 'Shorten the gas or lower it: everything near it gets hotter than it needs to.',
  }),
  'outgoing-package-too-hot': (f, m) => ({
    what: `The top of ${refdes(f)} reaches ${m.temperature(numberOf(f, 'skinC'))} when it comes off; Tc less 5 is ${m.degrees(numberOf(f, 'limitC'))}`,
    todo: 'Cooler gas if the part is to be used or examined again.',
  }),
  'too-long-above-liquidus': (f, m) => ({
    what: `Joints of ${refdes(f)} stay molten for ${m.seconds(numberOf(f, 'anyS'))} in ${runName(f)}, more than ${m.seconds(numberOf(f, 'limitS'))}`,
    todo: 'Shorten the gas, or start it from a warmer board.',
  }),
  'above-liquidus-short': (f, m) => ({
    what: `All joints of ${refdes(f)} are molten for ${m.seconds(numberOf(f, 'allS'))} in ${runName(f)}; ${numberOf(f, 'fromS')} to ${m.seconds(numberOf(f, 'toS'))} is usual`,
    todo: 'Keep the gas on longer after the coldest corner melts.',
  }),
  'above-liquidus-long': (f, m) => ({
    what: `Joints of ${refdes(f)} stay molten for ${m.seconds(numberOf(f, 'anyS'))} in ${runName(f)}; ${numberOf(f, 'fromS')} to ${m.seconds(numberOf(f, 'toS'))} is usual`,
    todo: 'Shorten the gas, or cool sooner.',
  }),
  'short-for-lifting': (f, m) => ({
    what: `All joints of ${refdes(f)} are molten for only ${m.seconds(numberOf(f, 'allS'))} in ${runName(f)}; lifting takes about ${m.seconds(numberOf(f, 'wantedS'))}`,
    todo: 'Keep the gas on longer: lifting over a solid joint tears pads off.',
  }),
  'lifting-may-take-longer': (f, m) => ({
    what: `In ${runName(f)} ${textOf(f, 'neighbour')} goes over its limit ${m.seconds(numberOf(f, 'spareS'))} after ${refdes(f)} is molten; a part lifts after about ${m.seconds(numberOf(f, 'usualS'))}, at worst after ${m.seconds(numberOf(f, 'worstS'))}`,
    todo: `Do what is advised for ${textOf(f, 'neighbour')} first, or stop then and let all cool before another try.`,
  }),
  'target-rises-fast': (f, m) => ({
    what: `${refdes(f)} itself rises by up to ${m.rate(numberOf(f, 'riseKPerS'))}; at most ${m.rate(numberOf(f, 'limitKPerS'))}`,
    todo: 'Preheat more or bring the gas up more slowly, above all when the new part goes on.',
  }),
  'target-melts-in-other-runs': (f) => ({
    what: `${refdes(f)} melts in ${numberOf(f, 'reflows')} heat runs, ${numberOf(f, 'own')} of them its own`,
    todo: 'Exchange both in one heat run, or do the one that reaches the other first.',
  }),
  'target-uneven': (f, m) => ({
    what: `Joints of ${refdes(f)} differ by ${m.difference(numberOf(f, 'spreadK'))} in ${runName(f)}`,
    todo: 'More preheat, a larger nozzle or a wider sweep makes it even.',
  }),
  'cool-when-gas-starts': (f, m) => ({
    what: `The site is at ${m.temperature(numberOf(f, 'siteC'))} when the gas of ${runName(f)} starts; about ${m.degrees(numberOf(f, 'usualC'))} is usual`,
    todo: 'Preheat longer or hotter: the gas then has less to do, and neighbours get less of it.',
  }),
  'long-to-peak': (f) => ({
    what: `${refdes(f)} peaks after ${rounded(numberOf(f, 'seconds') / 60, 1)} min of ${runName(f)}, more than ${rounded(numberOf(f, 'limitS') / 60)} min`,
    todo: 'Shorten preheat or soak, or give the sites runs of their own.',
  }),
} satisfies Record<string, FindingSentence>;

export const SITE_SENTENCES = {
  'target-not-on-board': (f) => ({
    what: `The board has no part ${refdes(f)} to exchange`,
    todo: 'Choose another part for the site, or draw it.',
  }),
  'target-on-other-side': (f) => ({
    what: `${refdes(f)} lies on the other side than its site`,
    todo: 'Mark the site again on the side of the part.',
  }),
  'target-not-for-heat': (f) => ({
    what: `${refdes(f)} is to be exchanged with a heat run, but it must never be heated (${textOf(f, 'className')})`,
    todo: 'Take it off another way, as its data sheet says, and remove the site.',
  }),
  'target-tagged-otherwise': (f) => ({
    what: `${refdes(f)} is the target of a site and tagged ${textOf(f, 'tag')} as well`,
    todo: 'Take one of the two back.',
  }),
  'lead-meets-bismuth': (f, m) => ({
    what: `At ${refdes(f)} ${textOf(f, 'on')} would go onto what is left of ${textOf(f, 'off')}: lead and bismuth form an alloy that melts at ${m.temperature(numberOf(f, 'meltsC'))}`,
    todo: 'Use another alloy, or wick to bare pads, tin anew, wick again, and say so in the order.',
  }),
  'soldered-can-over-target': (f) => ({
    what: `The soldered ${textOf(f, 'kind')} ${textOf(f, 'cover')} stands over ${refdes(f)}`,
    todo: 'Add a heat run that takes it off first, or remove it.',
  }),
  'can-over-target': (f) => ({
    what: `The ${textOf(f, 'kind')} ${textOf(f, 'cover')} stands over ${refdes(f)}`,
    todo: 'Take it off before heat and tag it.',
  }),
  'target-has-two-sites': (f) => ({
    what: `${refdes(f)} is the target of two sites`,
    todo: 'Remove one of them.',
  }),
  'target-not-fitted': (f) => ({
    what: `The position ${refdes(f)} is empty`,
    todo: 'Mark it fitted, or keep only the installation.',
  }),
  'target-underfilled': (f, m) => ({
    what: `${refdes(f)} is underfilled: it does not lift when its solder melts`,
    todo: `It takes more than ${m.temperature(numberOf(f, 'aboveC'))} and a twist, and pads may go with it: agree that with the customer first.`,
  }),
  'target-edge-bonded': (f, m) => ({
    what: `${refdes(f)} is edge-bonded`,
    todo: `Free the fillets first; residue comes off with air at about ${m.temperature(numberOf(f, 'residueC'))}.`,
  }),
  'target-coated': (f) => ({
    what: `${refdes(f)} lies under a coating`,
    todo: 'Remove the coating round it before heat.',
  }),
  'target-holds-data': (f) => ({
    what: `${refdes(f)} holds data`,
    todo: 'Read it out before it comes off, twice, and compare.',
  }),
  'site-alloy-unknown': (f, m) => ({
    what: `The alloy at ${refdes(f)} is not known: judged as ${textOf(f, 'targetAlloy')}, liquidus ${m.temperature(numberOf(f, 'targetLiquidusC'))}`,
    todo: 'Test a joint for lead, or ask.',
  }),
  'alloys-differ': (f) => ({
    what: `At ${refdes(f)} ${textOf(f, 'off')} comes off and ${textOf(f, 'on')} goes on`,
    todo: 'Wick the pads clean and tin them anew; check the profile for the mixture.',
  }),
} satisfies Record<string, FindingSentence>;
