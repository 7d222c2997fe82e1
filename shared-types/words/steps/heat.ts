import { numberOf } from '../figures.ts';
import { rounded } from '../measures.ts';
import { clock } from '../work-map.ts';
import { isSet, joined, named, type StepSentence, textAt } from './sentence.ts';

const side = (f: Parameters<StepSentence>[0]): string => (textAt(f, 'side') === 'bottom' ? 'bottom' : 'top');

/** Steps of the heat runs and between them. */
export const HEAT_SENTENCES = {
  heat: (f, m) => ({
    act: isSet(f, 'solid')
      ? `Do not start ${textAt(f, 'run')}: ${textAt(f, 'solid')} does not melt whole`
      : `Run ${textAt(f, 'run')}${isSet(f, 'targets') ? ` at ${textAt(f, 'targets')}` : ''}, ${side(f)} to the nozzle`,
    why: joined(
      isSet(f, 'solid') && 'Change the profile first',
      f.gasOnS !== undefined && `Gas on at ${clock(numberOf(f, 'gasOnS'))}, and not below its reading`,
      f.abortC !== undefined &&
        `Off at once if ${textAt(f, 'abortOn') === 'site' ? 'the board at the site' : textAt(f, 'abortOn')} reads ${m.temperature(numberOf(f, 'abortC'))}${isSet(f, 'abortFor') ? ` (for ${textAt(f, 'abortFor')})` : ''}`,
      'Times and readings on its sheet; what reads beside its prediction stops the run',
    ),
  }),
  lift: (f, m) => ({
    act: `Lift ${named(f)} when all its joints are molten`,
    why: joined(
      f.byS !== undefined && `Not molten by ${clock(numberOf(f, 'byS'))}: stop`,
      textAt(f, 'held') === 'underfilled' &&
        `Underfilled: soften it${f.aboveC === undefined ? '' : ` above ${m.temperature(numberOf(f, 'aboveC'))}`}, then twist`,
      textAt(f, 'held') === 'bonded' && 'Edge-bonded: cut or soften the bond before it is lifted',
      textAt(f, 'held') === 'underfilled'
        ? 'Without prying: a pad that does not come willingly tears'
        : 'Straight up, without prying: a pad that does not come willingly tears',
    ),
  }),
  cool: (f, m) => ({
    act: `Let it cool without moving it`,
    why: joined(
      f.solidusC !== undefined &&
        `Joints are soft down to ${m.temperature(numberOf(f, 'solidusC'))}; nothing is touched above`,
      'No cold air, no cloth',
    ),
  }),
  dress: (f) => ({
    act: `Wick the pads of ${textAt(f, 'refdes')} level${f.warm === 1 ? ', the board still warm' : ', preheated'}`,
    why: joined(
      f.mixed === 1 &&
        `Off to the bare pads, tin with ${textAt(f, 'to') || 'the new alloy'}, wick again: ${textAt(f, 'from') || 'the old alloy'} must not stay in the joint`,
      'Flux, a wide tip, no pressure',
    ),
  }),
  'inspect-pads': (f) => ({
    act: `Inspect pads and laminate of ${textAt(f, 'refdes')} under the microscope`,
    why: joined(
      'Lifted or torn pads, torn mask, measling',
      f.number !== undefined && `Exchange no. ${rounded(numberOf(f, 'number'))} at this place`,
    ),
  }),
  incoming: (f) => ({
    act: `Check what goes on at ${named(f)}`,
    why: joined(
      isSet(f, 'marking') ? `Marked ${textAt(f, 'marking')}` : 'Marking against the order',
      numberOf(f, 'count') > 1 && `${numberOf(f, 'count')} pieces`,
      isSet(f, 'balls') && isSet(f, 'joints')
        ? textAt(f, 'balls') === textAt(f, 'joints')
          ? `Balls ${textAt(f, 'balls')}, as the joints`
          : `Balls ${textAt(f, 'balls')}, joints ${textAt(f, 'joints')}: they must not be mixed unthought`
        : `Alloy of its balls or leads${isSet(f, 'joints') ? `: joints are planned in ${textAt(f, 'joints')}` : ''}`,
      textAt(f, 'level') === 'unknown'
        ? 'Moisture level and open time are not told: read the bag'
        : `Moisture level ${textAt(f, 'level')}${f.lifeH === undefined ? '' : `, floor life ${rounded(numberOf(f, 'lifeH'))} h`}`,
      textAt(f, 'agrees') === 'differs' && 'It differs from the old part: see the exchange',
    ),
  }),
  'program-part': (f) => ({
    act:
      f.alone === 1
        ? `Take ${named(f)} off, write it with this unit's own data block, verify, put it back`
        : `Write the part for ${textAt(f, 'refdes')}: firmware, and this unit's own data block; verify`,
    why: 'Before it is soldered; the check sum is read again at power-on.',
  }),
  place: (f) => ({
    act: `Flux and place ${named(f)}`,
    why: joined(
      f.array === 1
        ? 'Tacky flux, or paste where its data sheet asks for it; centred on its pads'
        : 'Paste or flux on the pads; leads centred',
      f.pin1 === 1 ? 'Pin 1 as on the drawing' : 'Pin 1 by the part’s mark: the drawing does not show it',
    ),
  }),
} satisfies Record<string, StepSentence>;
