import { numberOf } from '../figures.ts';
import { rounded } from '../measures.ts';
import { isSet, joined, listed, named, type StepSentence, textAt } from './sentence.ts';

const HELD: Record<string, string> = {
  clipped: 'unclip it',
  screwed: 'undo its screws',
  bonded: 'free its bond as its data sheet says',
  soldered: '',
};
const COVERS: Record<string, string> = { can: 'can', frame: 'frame', stiffener: 'stiffener' };
const coverName = (kind: string): string => COVERS[kind] ?? 'cover';

const inSlot = (slot: string): string => (slot ? `, to tray slot ${slot}` : '');

/** Steps from the unit's arrival to the first heat. */
export const BEFORE_SENTENCES = {
  record: (f) => ({
    act: `Record the unit as received${isSet(f, 'unit') ? `: ${textAt(f, 'unit')}` : ''}`,
    why: 'Serial number, marks, damage, traces of earlier work; photos of both sides as it is now.',
  }),
  'note-power': () => ({
    act: 'Note what it does at power-on, and the supply current',
    why: 'From a current-limited supply, and only if nothing speaks against powering it. The same figure is compared after the work.',
  }),
  'note-resistance': () => ({
    act: 'Measure each supply rail to ground, unpowered, and note it',
    why: 'The lowest goes into the field, the others into the note. Before power it is measured again: a bridge under a part shows there.',
  }),
  'in-circuit-first': (f) => ({
    act: `Ask whether ${named(f)} can be written in circuit`,
    why: 'Then nothing has to be heated at all.',
  }),
  'read-out': (f) => ({
    act: `Read out ${named(f)} twice and compare`,
    why:
      textAt(f, 'how') === 'stays'
        ? 'Its joints melt where it lies: keep a copy, whatever retention its data sheet states.'
        : 'Two read-outs that differ are none: clean the contacts, read again.',
  }),
  'data-block': (f) => ({
    act: `Keep the data block of ${textAt(f, 'refdes')} that belongs to this unit`,
    why: 'Calibration, serial number, addresses: apart from the firmware, with the ticket.',
  }),
  'power-off': () => ({
    act: 'Disconnect supplies and cables, let capacitors discharge, measure that they did',
    why: 'From here on nothing is powered until the checks before power are done.',
  }),
  'coating-off': (f) => ({
    act: `Take the coating off ${listed(f)}`,
    why: 'Find out which coating it is first; its data sheet says how. No iron, no gas before it is off.',
  }),
  off: (f) => ({
    act: `Take off ${named(f)}${inSlot(textAt(f, 'slot'))}`,
    why: joined(
      {
        cell: 'Cells come off whatever the distance; insulate the contacts',
        always: 'Comes off whatever the distance',
        tag: '',
      }[textAt(f, 'why')],
      isSet(f, 'note') && textAt(f, 'note'),
      !isSet(f, 'slot') && 'No tray slot in the plan yet',
      f.back === 0 && 'Stays off',
    ),
  }),
  'cover-off': (f) => ({
    act: `Take ${coverName(textAt(f, 'kind'))} ${textAt(f, 'cover')} off${inSlot(textAt(f, 'slot'))}: ${HELD[textAt(f, 'fixing')] || 'lift it'}`,
    why: '',
  }),
  'can-off': (f) => ({
    act: `Lift ${coverName(textAt(f, 'kind'))} ${textAt(f, 'cover')} off once all its joints are molten`,
    why:
      f.lacking === 1
        ? 'It is soldered: this takes a heat run of its own, and the plan has none. Add a cover-removal run.'
        : 'With a tool, level; then wick its pads.',
  }),
  'count-off': (f) => ({
    act: `Count the tray: ${numberOf(f, 'off')} off`,
    why: `${numberOf(f, 'back')} of them ${numberOf(f, 'back') === 1 ? 'goes' : 'go'} back.`,
  }),
  'bake-part': (f, m) => ({
    act: `Bake what goes on at ${textAt(f, 'refdes')}${
      numberOf(f, 'at125H') > 0
        ? `: ${rounded(numberOf(f, 'at125H'))} h at ${m.temperature(125)}, ${rounded(numberOf(f, 'at90H'))} h at ${m.temperature(90)} or ${rounded(numberOf(f, 'at40H') / 24)} d at ${m.temperature(40)}`
        : ' as its label and data sheet say'
    }`,
    why: joined(
      textAt(f, 'why') === 'floor-life-over' && 'Its floor life is over',
      textAt(f, 'why') === 'floor-life-unknown' && 'Nobody knows how long it was out of its bag',
      textAt(f, 'why') === 'bake-before-every-use' && 'Level 6: before every use',
      isSet(f, 'thicknessMm') &&
        `By level ${textAt(f, 'level')} and a body of ${m.length(numberOf(f, 'thicknessMm'))}; tapes and reels stand only the coolest`,
      'Its floor life begins anew when it is out of the oven',
    ),
  }),
  'bake-board': (f, m) => ({
    act:
      numberOf(f, 'bakeC') > 0
        ? `Bake the board at ${m.temperature(numberOf(f, 'bakeC'))} at most, where J-STD-033 or a data sheet asks for it`
        : 'Leave the board unbaked, or take the weakest part off first',
    why: joined(
      isSet(f, 'weakest') &&
        `${textAt(f, 'weakest')} (${textAt(f, 'className').toLowerCase()}) is the weakest that stays on: ${m.temperature(numberOf(f, 'standsC'))}`,
      `${numberOf(f, 'count')} bodies pass ${m.temperature(numberOf(f, 'aboveC'))}; hours by the most sensitive of them`,
    ),
  }),
  relocate: (f) => ({
    act: `Move ${textAt(f, 'refdes')} to ${textAt(f, 'to') || 'its new place'}`,
    why: joined(
      !isSet(f, 'to') && 'The plan does not say where to',
      isSet(f, 'note') && textAt(f, 'note'),
      f.near === 1
        ? 'When the site is cold: the gas of a run would melt or move a fresh joint'
        : 'Out of reach of the heat',
    ),
  }),
  secure: (f) => ({
    act: `Hold ${listed(f)} from below`,
    why: 'Too heavy for molten joints: they drop. Nothing under them may press on the board.',
  }),
  shield: (f) => ({
    act: `Shield ${textAt(f, 'refdes')}: ${textAt(f, 'shield')}`,
    why: joined(
      isSet(f, 'stack') && `From the part outwards: ${textAt(f, 'stack')}`,
      isSet(f, 'note') && textAt(f, 'note'),
      isSet(f, 'notGoodFor') &&
        `Not good for: ${textAt(f, 'notGoodFor').charAt(0).toLowerCase()}${textAt(f, 'notGoodFor').slice(1)}`,
    ),
  }),
  gel: (f, m) => ({
    act: `Lay wet gel on ${textAt(f, 'refdes')}, right before the heat run`,
    why: joined(
      f.driesS !== undefined &&
        `${textAt(f, 'run')}: dry after ${m.seconds(numberOf(f, 'driesS'))}, from then on it helps little`,
      isSet(f, 'run') && f.driesS === undefined && `${textAt(f, 'run')}: keeps some water to the end`,
      isSet(f, 'note') && textAt(f, 'note'),
      'Steam: keep faces away. It comes off whole',
    ),
  }),
  fence: (f, m) => ({
    act: `Stand the foil fence round ${textAt(f, 'refdes')}, ${m.length(numberOf(f, 'marginMm'))} from its area, ${m.length(numberOf(f, 'gapMm'))} off the board`,
    why: 'It conducts: off every pad.',
  }),
  thermocouple: (f, m) => ({
    act: `Fix ${textAt(f, 'watch')} ${isSet(f, 'on') ? `on ${textAt(f, 'on')}` : 'on the board'}, ${textAt(f, 'side')}, at ${m.length(numberOf(f, 'x'))}, ${m.length(numberOf(f, 'y'))}`,
    why: joined(
      isSet(f, 'note') && textAt(f, 'note'),
      'Soldered or bonded it reads the place, taped it reads low; note which',
    ),
  }),
  'set-up': (f) => ({
    act: `Clamp the board${isSet(f, 'turnDeg') ? `, turned ${rounded(numberOf(f, 'turnDeg'))}°` : ''}; nozzle, preheater and profile as on the sheet of the run`,
    why:
      textAt(f, 'extraction') === 'off'
        ? 'Extraction is off in the plan: switch it on, and have the heat worked out again.'
        : `Extraction ${textAt(f, 'extraction')}, running before the heat.`,
  }),
} satisfies Record<string, StepSentence>;
