import { type Figures, numberOf, textOf } from '../figures.ts';
import type { Measures } from '../measures.ts';
import { type FindingSentence, oneOrMany, parts, refdes } from './sentence.ts';

/** How hot the board may be baked, and which part says so. */
function boardBake(f: Figures, m: Measures): string {
  const weakest = `${textOf(f, 'weakest')} (${textOf(f, 'className')}) stands ${m.temperature(numberOf(f, 'standsC'))}`;
  if (numberOf(f, 'bakeC') === 0) return `Nothing hotter than that: ${weakest}. Take it off before a bake.`;
  if (numberOf(f, 'bakeC') === numberOf(f, 'hottestBakeC'))
    return `No part that stays asks for less than ${m.temperature(numberOf(f, 'bakeC'))}; its data sheet may.`;
  return `At most ${m.temperature(numberOf(f, 'bakeC'))}: ${weakest}.`;
}

export const NEIGHBOUR_SENTENCES = {
  'always-off-still-on': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'is', 'are')} still on the board`,
    todo: `Take ${oneOrMany(f, 'it', 'them')} off before any heat, whatever the distance.`,
  }),
  'neighbour-cannot-be-saved': (f) => ({
    what: `${refdes(f)} cannot be saved by a shield, and cannot come off and go back`,
    todo: 'Change nozzle, preheat or time before the board is hot; else decline, or quote its replacement.',
  }),
  'neighbours-need-action': (f) => ({
    what: `${parts(f)} should come off first or be shielded, and the plan does not do it yet`,
    todo: 'Take the suggestions, or change the profile.',
  }),
  'parts-under-can': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'stands', 'stand')} under the can ${textOf(f, 'cover')}, which stays on`,
    todo:
      numberOf(f, 'soldered') === 1
        ? 'The can comes off first, in a heat run of its own; or change the profile so that they may stay.'
        : 'Take the can off first and tag it; or change the profile so that they may stay.',
  }),
  'margins-slim': (f, m) => ({
    what: `${parts(f)}: less than ${m.difference(numberOf(f, 'repeatK'))} under ${oneOrMany(f, 'its', 'their')} limit (least: ${m.difference(numberOf(f, 'marginK'))}), and no band is computed`,
    todo: 'Put a thermocouple on the tightest, or shield them anyway.',
  }),
  'drop-off': (f, m) => ({
    what: `${refdes(f)} hangs on the underside, melts at ${m.temperature(numberOf(f, 'jointMaxC'))} and is too heavy for its pads`,
    todo: 'Hold it from below before heat, or take it off first.',
  }),
  'drop-off-held': (f) => ({
    what: `${refdes(f)} hangs on the underside and is to be held from below`,
    todo: 'Check the hold before heat and do not knock the board while it is hot.',
  }),
  'large-parts-reflow': (f, m) => ({
    what: `${parts(f)} ${oneOrMany(f, 'reflows', 'reflow')} as ${oneOrMany(f, 'a whole', 'wholes')} (joints up to ${m.temperature(numberOf(f, 'jointC'))})`,
    todo: 'Do not move the board until all is solid; inspect every joint afterwards, hidden ones by X-ray.',
  }),
  'array-may-crack': (f, m) => ({
    what: `${parts(f)}: middle ${m.temperature(numberOf(f, 'meanC'))}, hottest joint ${m.degrees(numberOf(f, 'cornerC'))}; array parts beyond ${m.degrees(numberOf(f, 'centreLimitC'))} in the middle or ${m.degrees(numberOf(f, 'cornerLimitC'))} at a corner were found cracked`,
    todo: 'Foil at the nozzle side, a smaller nozzle or less time; inspect by X-ray afterwards.',
  }),
  'joints-over-preset': (f, m) => ({
    what: `Joints of ${parts(f)} stay solid but pass the usual ${m.temperature(numberOf(f, 'limitC'))} for neighbours (up to ${m.degrees(numberOf(f, 'jointC'))})`,
    todo: 'Less time in the gas; inspect them afterwards.',
  }),
  'reflow-count': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'melts', 'melt')} in up to ${numberOf(f, 'reflows')} heat runs, after ${numberOf(f, 'before')} at assembly: more than ${numberOf(f, 'most')}`,
    todo: 'Check the data sheet; combine heat runs or keep the gas away.',
  }),
  'data-at-risk': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'holds', 'hold')} data and ${oneOrMany(f, 'reflows', 'reflow')}`,
    todo: 'Read the data out first; read again afterwards and compare.',
  }),
  'coated-joints-melt': (f) => ({
    what: `${parts(f)} ${oneOrMany(f, 'melts', 'melt')} under a coating`,
    todo: 'Remove the coating there first: molten solder under a coating is squeezed out.',
  }),
  'electrolytic-close': (f, m) => ({
    what: `${parts(f)}: electrolytic within ${m.length(numberOf(f, 'clearanceMm'))} of the rework area (body ${m.temperature(numberOf(f, 'bodyC'))})`,
    todo: 'Turn the jet away from it and keep the face away; it may vent below its limit.',
  }),
  'port-close': (f, m) => ({
    what: `${parts(f)}: open port ${m.length(numberOf(f, 'clearanceMm'))} from the rework area`,
    todo: 'Cover the port dry, never with gel; no air into it and no cleaner.',
  }),
  'rises-too-fast': (f, m) => ({
    what: `${parts(f)} ${oneOrMany(f, 'rises', 'rise')} by up to ${m.rate(numberOf(f, 'riseKPerS'))}; at most ${m.rate(numberOf(f, 'limitKPerS'))}`,
    todo: 'Preheat more, bring the gas up more slowly, or keep the nozzle further off.',
  }),
  'small-parts-rise-fast': (f, m) => ({
    what: `${parts(f)}: small parts that rise by up to ${m.rate(numberOf(f, 'riseKPerS'))}; packages are held to ${m.rate(numberOf(f, 'limitKPerS'))}`,
    todo: 'Bring the gas up more slowly where it costs nothing.',
  }),
  'ceramic-jump-over': (f, m) => ({
    what: `${parts(f)}: ceramic capacitors jump by about ${m.difference(numberOf(f, 'jumpK'))}, more than ${m.difference(numberOf(f, 'limitK'))}: they crack`,
    todo: 'Preheat before the gas, and replace the ones that saw the jump.',
  }),
  'ceramic-jump': (f, m) => ({
    what: `${parts(f)}: ceramic capacitors jump by about ${m.difference(numberOf(f, 'jumpK'))}; from ${m.difference(numberOf(f, 'warnK'))} they may crack`,
    todo: 'Preheat more before the gas.',
  }),
  'reflow-count-small': (f) => ({
    what: `${parts(f)}: small parts that melt in up to ${numberOf(f, 'reflows')} heat runs, after ${numberOf(f, 'before')} at assembly`,
    todo: 'Inspect them; replace the ones whose ends look leached or dull.',
  }),
  'within-keep-out': (f, m) => ({
    what: `${parts(f)} ${oneOrMany(f, 'stands', 'stand')} within ${m.length(numberOf(f, 'keepOutMm'))} of the rework area: a closing nozzle or a mini-stencil may not fit`,
    todo: 'Check the nozzle on the cold board.',
  }),
  'bake-first': (f, m) => ({
    what: `${numberOf(f, 'count')} bodies pass ${m.temperature(numberOf(f, 'aboveC'))}`,
    todo: `Ask whether the board must be baked first (J-STD-033). ${boardBake(f, m)}`,
  }),
} satisfies Record<string, FindingSentence>;
