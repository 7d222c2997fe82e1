import type { GroupFault } from '../rules/straps/check.ts';
import type { CodeReading, DividerSpan } from '../rules/straps/divider.ts';
import type { CapacitySum, ExchangeDifference } from '../rules/straps/exchange.ts';
import type { SettingFault } from '../rules/straps/needs.ts';
import type { StrapMove, StrapPlan, StrapRefusal } from '../rules/straps/plan-straps.ts';
import type { ReadDoubt, StrapReading } from '../rules/straps/read.ts';
import type { Capacity } from '../straps.ts';

const volts = (value: number): string => `${value.toFixed(3)} V`;
/** '4.7 kΩ'. */
export function ohmsWords(ohms: number): string {
  const [factor, sign] = ohms >= 1e9 ? [1e9, 'G'] : ohms >= 1e6 ? [1e6, 'M'] : ohms >= 1e3 ? [1e3, 'k'] : [1, ''];
  if (ohms > 0 && ohms < 0.1) return `${Number((ohms * 1000).toPrecision(4))} mΩ`;
  return `${Number((ohms / factor).toPrecision(4))} ${sign}Ω`;
}
const counted = (count: number, words: string): string => (count > 0 ? `${count} ${words}` : '');

export const capacityWords = ({ amount, unit }: Capacity): string => `${amount} ${unit}`;

/** '1 relocate, 1 add, 1 off'. */
export const movesLine = ({ relocated, added, off }: Pick<StrapPlan, 'relocated' | 'added' | 'off'>): string =>
  [counted(relocated, 'relocate'), counted(added, 'add'), counted(off, 'off')].filter(Boolean).join(', ') ||
  'nothing to move';

export const MOVE_NAMES: Record<StrapMove['kind'], string> = { relocate: 'Relocate', add: 'Add', off: 'Take off' };

/** 'R101 to R102', 'from stock to R105', 'R104, stays off'. */
export function moveWay({ kind, from, to }: StrapMove): string {
  if (kind === 'relocate') return `${from} to ${to}`;
  return kind === 'add' ? `from stock to ${to}` : `${from}, stays off`;
}
export const movePart = ({ value, size }: StrapMove): string => [value, size].filter(Boolean).join(' ');
export const WAITS = 'waits in the tray until its place is free';
/** A move in one line. */
export const moveLine = (move: StrapMove): string =>
  `${MOVE_NAMES[move.kind]} ${movePart(move)}: ${moveWay(move)}${move.waits ? ` (${WAITS})` : ''}`;

const SETTING_FAULTS: { [C in SettingFault['code']]: (fault: Extract<SettingFault, { code: C }>) => string } = {
  'code-length': (f) => `its code has ${f.given} places, the group has ${f.needed}: write one for each`,
  'no-pull': (f) =>
    `${f.bit} cannot be ${f.level}: there is no position that pulls it ${f.level === '1' ? 'up' : 'down'}, and open it reads otherwise or nothing defined`,
  'positions-clash': (f) => `${f.refdes} would have to be two things at once`,
  'value-not-readable': (f) => `the value '${f.value}' for ${f.refdes} is no resistance: write it as 10k, 4k7 or 0R`,
  'divider-open': () => 'nothing defines the voltage: both arms are empty, or both are 0 ohm',
  'no-window': (f) => `the converter has no window for code ${f.wanted}: add its thresholds`,
  'code-ambiguous': (f) =>
    `code ${f.wanted} is ambiguous: over all tolerances ${volts(f.lowV)} to ${volts(f.highV)} can be read as ${f.codes}; take tighter parts or other values`,
  'other-code': (f) =>
    `its values do not give code ${f.wanted}: ${volts(f.lowV)} to ${volts(f.highV)} is ${f.codes ? `read as ${f.codes}` : 'in no window'}`,
};
const settingFault = (fault: SettingFault): string =>
  (SETTING_FAULTS[fault.code] as (f: SettingFault) => string)(fault);

const SETTING_CODES = new Set<string>(Object.keys(SETTING_FAULTS));
const isSettingFault = (fault: { code: string }): boolean => SETTING_CODES.has(fault.code);

type OwnFault = Exclude<GroupFault, SettingFault & { setting: string }>;
const GROUP_FAULTS: { [C in OwnFault['code']]: (fault: Extract<OwnFault, { code: C }>) => string } = {
  'position-on-no-part': (f) => `${f.refdes} is not on the board: correct the designator or draw the part`,
  'position-twice': (f) => `${f.refdes} is listed twice`,
  'position-unused': (f) => `${f.refdes} belongs to no bit`,
  'position-not-listed': (f) => `${f.refdes}${f.bit ? ` of ${f.bit}` : ''} is not among the positions`,
  'bit-without-pull': (f) => `${f.bit} has no position: name a pull-up or a pull-down`,
  'same-pull-twice': (f) => `${f.bit} has ${f.refdes} on both sides`,
  'settings-alike': (f) => `'${f.first}' and '${f.second}' have the same code: the board cannot tell them apart`,
  'no-settings': () => 'the table has no settings yet',
  'value-unreadable': (f) => `the value '${f.value}' of ${f.refdes} is no resistance: write it as 10k, 4k7 or 0R`,
  'value-not-preferred': (f) => `${f.value} at ${f.refdes} is no preferred value of IEC 60063: check it`,
  'window-empty': (f) => `the window of code ${f.wanted} ends before it begins`,
  'windows-overlap': (f) => `the windows of codes ${f.first} and ${f.second} overlap`,
  'describes-no-part': (f) => `${f.refdes}, which the setting describes, is not on the board`,
};

/** A fault of a group, as a phrase. */
export function groupFaultWords(fault: GroupFault): string {
  if ('setting' in fault) return `setting '${fault.setting}': ${settingFault(fault)}`;
  return (GROUP_FAULTS[fault.code] as (f: OwnFault) => string)(fault as OwnFault);
}

/** Why something is refused, as a phrase. */
export function refusalWords(refusal: StrapRefusal): string {
  if (refusal.code === 'setting-not-there') return 'the wanted setting is no longer in the table: choose again';
  if (refusal.code === 'position-on-no-part') return `${refusal.refdes} is not on the board`;
  if (refusal.code === 'value-not-told')
    return `nobody says what belongs on ${refusal.refdes}: write its value in the group`;
  if (refusal.code === 'no-part-at-hand') {
    const what = [refusal.value, refusal.size].filter(Boolean).join(' ');
    const near = refusal.near ? `; at hand but not fitting: ${refusal.near}` : '';
    return `${refusal.refdes} needs ${what}, and none is at hand: add it to the stock${near}`;
  }
  return isSettingFault(refusal) ? settingFault(refusal) : '';
}

const DOUBTS: { [C in ReadDoubt['code']]: (doubt: Extract<ReadDoubt, { code: C }>) => string } = {
  'both-pulls-fitted': (d) => `${d.bit} has both pulls fitted (${d.names}): take one off`,
  'bit-open': (d) => `${d.bit} is open: nothing defines it`,
  'value-differs': (d) =>
    `${d.value} stands on ${d.refdes}, where ${d.belongs} belongs: the code may be read otherwise`,
  'divider-open': () => 'nothing defines the voltage: both arms are empty, or both are 0 ohm',
  'value-not-readable': (d) => `the value '${d.value}' of ${d.refdes} is no resistance: measure it out of circuit`,
  'code-ambiguous': (d) => `over all tolerances it can be read as ${d.codes}`,
  'outside-windows': () => 'the voltage lies in no window',
};
export const doubtWords = (doubt: ReadDoubt): string => (DOUBTS[doubt.code] as (d: ReadDoubt) => string)(doubt);

/** What a group says now, in one line. */
export function readingWords({ code, settings, span, doubts }: StrapReading): string {
  const at = span ? `, ${volts(span.nominalV)} (${volts(span.lowV)} to ${volts(span.highV)})` : '';
  const known = settings.map((setting) => setting.label).join(' or ');
  if (known) return `${code}${at}: ${known}`;
  return doubts.length > 0 ? `${code}${at}: cannot be told` : `${code}${at}: a code that the table does not have`;
}

export function capacitySumWords({ sum, told, agrees, unknown }: CapacitySum): string {
  if (!sum) return `The setting tells ${capacityWords(told)}; the capacity of ${unknown.join(', ')} is not entered`;
  return agrees
    ? `Parts that go on add up to ${capacityWords(sum)}, as the setting tells`
    : `Parts that go on add up to ${capacityWords(sum)}, but the setting tells ${capacityWords(told)}`;
}

const signed = (value: number, decimals: number): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : '±'}${Number(Math.abs(value).toFixed(decimals))}`;

/** What differs between the part that comes off and the one that goes on; empty: nothing known. */
export function differenceWords({ heightMm, powerW }: ExchangeDifference): string[] {
  return [
    ...(heightMm === null
      ? []
      : [
          heightMm === 0
            ? 'same height'
            : `${signed(heightMm, 2)} mm in height: a thermal pad over it has to be ${heightMm > 0 ? 'thinner' : 'thicker'} by as much`,
        ]),
    ...(powerW === null || powerW === 0
      ? []
      : [`${signed(powerW, 2)} W${powerW > 0 ? ': check cooling and supply' : ''}`]),
  ];
}

export const SPAN_TABLE = {
  heads: ['Code', 'Setting', 'Lowest V', 'As calculated V', 'Highest V', 'Read as'],
} as const;

/** How a setting's code is read over all tolerances. `reading` null: nothing defines the voltage. */
export function spanVerdict(code: string, reading: CodeReading | null): string {
  if (!reading) return 'refused, nothing defines the voltage';
  if (reading.alone?.code === code) return 'this code only';
  if (reading.codes.length === 0) return 'refused, in no window';
  const ambiguous = reading.codes.length > 1 || !reading.alone;
  return `refused, ${ambiguous ? 'can be read as' : 'read as'} ${reading.codes.join(', ')}`;
}

/** Lines of the command line about straps. */
export const STRAP_LINES = {
  title: (name: string) => `Straps '${name}'`,
  now: (words: string) => `  now: ${words}`,
  wanted: (label: string, code: string) => `  wanted: ${label} (${code})`,
  noWish: '  no setting wanted',
  doubt: (words: string) => `  ? ${words}`,
  fault: (words: string) => `  ! ${words}`,
  sum: (words: string) => `  capacity: ${words}`,
  window: (label: string, code: string, span: DividerSpan | null, verdict: string) =>
    `  code ${code} (${label}): ${span ? `${volts(span.lowV)} to ${volts(span.highV)}, as calculated ${volts(span.nominalV)}: ` : ''}${verdict}`,
  moves: (line: string) => `Moves: ${line}`,
  move: (place: number, line: string) => `  ${place}. ${line}`,
  refused: (group: string, words: string) => `  refused, '${group}': ${words}`,
  none: 'The board has no strap groups.',
  noSuchWish: (word: string) => `--want ${word}: name a group and one of its settings, such as 'Memory=2 x 8 Gbit'.`,
};

/** Words of the printed tables about straps and exchanged parts. */
export const STRAP_SHEET = {
  title: 'Straps',
  movesTitle: (line: string) => `Strap moves: ${line}`,
  group: 'Group',
  now: 'Says now',
  wanted: 'Must say',
  nothingWanted: 'nothing wanted',
  refused: (group: string, reason: string) => `Refused, ${group}: ${reason}.`,
  place: '#',
  act: 'Do',
  from: 'From',
  to: 'To',
  side: 'Side',
  part: 'Part',
  check: 'Known by',
  done: 'Done',
  stock: 'stock',
  measured: 'no marking: measure out of circuit',
  marking: 'marking, or measured out of circuit',
  exchanges: 'Parts in and out',
  at: 'At',
  off: 'Off',
  on: 'On',
  difference: 'Difference',
  pieces: 'pieces',
  agrees: {
    agrees: 'agrees with the old part',
    differs: 'differs from the old part',
    'not-checked': 'agreement with the old part not checked',
  },
  marked: (marking: string) => `marked ${marking}`,
  balls: (alloy: string) => `balls ${alloy}`,
  height: (mm: number) => `${mm} mm high`,
  power: (watts: number) => `${watts} W`,
} as const;
