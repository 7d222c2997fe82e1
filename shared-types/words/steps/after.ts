import { numberOf } from '../figures.ts';
import { isSet, joined, listed, named, type StepSentence, textAt } from './sentence.ts';

const FRESH: Record<string, string> = {
  ceramic: 'a fresh one: ceramic capacitors are not used again',
  led: 'a fresh one: LEDs are not soldered again',
  'one-reflow': 'a fresh one: its class stands one reflow only',
};
const moveWords: Record<string, (f: Parameters<StepSentence>[0]) => string> = {
  relocate: (f) => `Move the strap ${textAt(f, 'from')} to ${textAt(f, 'to')}`,
  add: (f) => `Fit a strap at ${textAt(f, 'to')} from stock`,
  off: (f) => `Take the strap ${textAt(f, 'from')} off; it stays off`,
};
const partOf = (f: Parameters<StepSentence>[0]): string =>
  [textAt(f, 'value'), textAt(f, 'size')].filter(Boolean).join(' ');

/** Steps after the last heat run, up to handing back. */
export const AFTER_SENTENCES = {
  'shields-off': (f) => ({
    act: `Take the shields${f.fence === 1 ? ' and the fence' : ''} off: ${listed(f)}`,
    why:
      f.gel === 1
        ? 'Gel off whole; clean with alcohol and brush, prove that it is clean.'
        : 'Count them: none stays in the unit.',
  }),
  'inspect-joints': (f) => ({
    act: `Inspect the joints of ${listed(f)}`,
    why:
      f.array === 1
        ? 'Height and collapse even on all sides, no bridge at the outer rows; X-ray where the shop has it.'
        : 'Wetting, heels, bridges.',
  }),
  'move-strap': (f) => ({
    act:
      f.settled === 1
        ? textAt(f, 'words')
        : `${moveWords[textAt(f, 'move')]?.(f) ?? ''}${partOf(f) ? `: ${partOf(f)}` : ''}`,
    why: joined(
      f.settled !== 1 &&
        (f.near === 1
          ? 'When the site is cold, after the last run: its gas would melt or blow away a fresh joint'
          : 'Out of reach of the heat: any time when the board is cold'),
      f.waits === 1 && 'It waits in the tray until its place is free',
    ),
  }),
  back: (f) => ({
    act: `Put back ${named(f)}${isSet(f, 'slot') ? ` from slot ${textAt(f, 'slot')}` : ''}${isSet(f, 'fresh') ? `: ${FRESH[textAt(f, 'fresh')] ?? ''}` : ''}`,
    why: '',
  }),
  'cover-back': (f) => ({
    act: `Put ${textAt(f, 'kind') === 'can' ? 'can' : textAt(f, 'kind')} ${textAt(f, 'cover')} back`,
    why: joined(
      'What stands under it is inspected, clean and dry before',
      textAt(f, 'fixing') === 'soldered' &&
        'Tack its corners first; wipe its own flux off outside, nothing wet under it',
    ),
  }),
  'count-back': (f) => ({
    act: `Count back: ${numberOf(f, 'back')} on the board again`,
    why: isSet(f, 'cells')
      ? `${textAt(f, 'cells')} is still in the tray: cells wait for power-on.`
      : 'The tray holds only what stays off.',
  }),
  'inspect-reflowed': (f) => ({
    act:
      numberOf(f, 'count') === 1
        ? `Inspect ${listed(f)}, a neighbour whose joints melted`
        : `Inspect the ${numberOf(f, 'count')} neighbours whose joints melted`,
    why: `${numberOf(f, 'count') === 1 ? '' : `${listed(f)}. `}Shifted, tombstoned, bridged, lacking.`,
  }),
  clean: () => ({
    act: 'Clean off flux residues, both sides, and let it dry',
    why: 'Nothing wet into ports, switches, relays and under cans.',
  }),
  'no-shorts': (f) => ({
    act: 'Measure each supply rail to ground again: no shorts',
    why:
      f.noted === 1
        ? 'Beside what was noted when the unit came, or a good board.'
        : 'Beside a good board: nothing was noted before.',
  }),
  polarity: (f) => ({ act: `Check pin 1 and polarity of ${listed(f)}`, why: '' }),
  'strap-read': (f) => ({
    act: `Read the straps of ${textAt(f, 'group')} once more: ${textAt(f, 'code')}`,
    why: `That is '${textAt(f, 'label')}'. Measured in place, with the power off.`,
  }),
  'program-in-circuit': (f) => ({
    act: `Write ${named(f)} in circuit: firmware, and this unit's own data block; verify`,
    why: 'The programmer powers the board: after the check for shorts.',
  }),
  supply: (f) => ({
    act: 'Connect a current-limited supply, then raise the limit to what the unit takes',
    why: joined('Rails in the order in which they come up', f.cells === 1 && 'The cell comes last'),
  }),
  current: (f) => ({
    act: 'Compare the supply current',
    why: f.noted === 1 ? 'Beside the one noted when the unit came.' : 'Beside a good board: nothing was noted before.',
  }),
  'cell-back': (f) => ({
    act: `Put ${named(f)} back`,
    why: 'Last of all, the polarity checked; a cell that was hot or shorted is not used again.',
  }),
  'read-back': (f) => ({
    act: `Read ${named(f)} back and compare`,
    why:
      textAt(f, 'how') === 'stays'
        ? 'Its joints melted: what it holds must be what was read out.'
        : 'What it holds is what was written.',
  }),
  'strap-report': (f) => ({
    act: `Let the unit report what it takes ${textAt(f, 'group')} to be`,
    why: `It has to agree with '${textAt(f, 'label')}'.`,
  }),
  'function-test': (f) => ({ act: 'Test what was ordered', why: textAt(f, 'order') }),
  'coat-again': (f) => ({
    act: `Coat ${listed(f)} again`,
    why: 'Once it works: under a coating nothing can be mended. Same kind of coating, clean and dry before.',
  }),
  'hand-back': () => ({ act: 'Complete the record, photos as it leaves, hand back', why: '' }),
  own: (f) => ({ act: textAt(f, 'words'), why: '' }),
} satisfies Record<string, StepSentence>;
