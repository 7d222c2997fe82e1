import type { Board } from '../../board.ts';
import type { StrapBit, StrapGroup, StrapGroupOf, StrapSetting, StrapTick } from '../../straps.ts';
import { parseResistance, sameOhms } from '../resistance.ts';
import { ASSUMED_TOLERANCE_PERCENT, codesOf, type DividerArm, type DividerSpan, dividerSpan } from './divider.ts';
import { type PositionNow, positionsNow } from './positions.ts';

/** Why a code, or a place of it, cannot be told. */
export type ReadDoubt =
  | { code: 'both-pulls-fitted'; bit: string; names: string }
  | { code: 'bit-open'; bit: string }
  | { code: 'value-differs'; refdes: string; value: string; belongs: string }
  | { code: 'divider-open' }
  | { code: 'value-not-readable'; refdes: string; value: string }
  | { code: 'code-ambiguous'; codes: string }
  | { code: 'outside-windows' };

/** What the board says with the positions as they are. '?' in the code stands for a bit that cannot be told. */
export type StrapReading = {
  code: string;
  /** Settings that say just this; none: a code that the table does not have. */
  settings: StrapSetting[];
  doubts: ReadDoubt[];
  /** Voltage at the converter; null for bits and jumpers, or where nothing defines it. */
  span: DividerSpan | null;
};

/** Reads a group as the board would at reset. */
export function readGroup(board: Board, ticks: readonly StrapTick[], group: StrapGroup): StrapReading {
  const now = new Map(positionsNow(board, ticks, group).map((position) => [position.refdes, position]));
  if (group.kind === 'divider') return readDivider(group, now);
  const places =
    group.kind === 'bits'
      ? group.bits.map((bit) => readBit(bit, now))
      : group.positions.map(({ refdes }) => ({ level: now.get(refdes)?.fitted ? '1' : '0', doubts: [] }));
  const code = places.map(({ level }) => level).join('');
  const doubts = [...places.flatMap((place) => place.doubts), ...strangeValues(group, now)];
  return { code, settings: group.settings.filter((setting) => says(setting.code, code)), doubts, span: null };
}

/** Fitted parts of another value than belongs there: the code may be read otherwise. */
function strangeValues(group: StrapGroup, now: ReadonlyMap<string, PositionNow>): ReadDoubt[] {
  return group.positions.flatMap(({ refdes, value }): ReadDoubt[] => {
    const position = now.get(refdes);
    const belongs = parseResistance(value)?.ohms;
    if (!position?.fitted || position.ohms === null || belongs === undefined) return [];
    return sameOhms(position.ohms, belongs)
      ? []
      : [{ code: 'value-differs', refdes, value: position.value, belongs: value }];
  });
}

/** True when a code read is the setting's; x in the setting stands for either, '?' in the reading for nothing. */
export const says = (setting: string, read: string): boolean =>
  setting.length === read.length && [...setting].every((level, index) => level === 'x' || level === read[index]);

function readBit(bit: StrapBit, now: ReadonlyMap<string, PositionNow>): { level: string; doubts: ReadDoubt[] } {
  const fitted = (refdes: string | null) => refdes !== null && (now.get(refdes)?.fitted ?? false);
  const [up, down] = [fitted(bit.pullUp), fitted(bit.pullDown)];
  if (up && down)
    return {
      level: '?',
      doubts: [{ code: 'both-pulls-fitted', bit: bit.name, names: `${bit.pullUp}, ${bit.pullDown}` }],
    };
  if (up) return { level: '1', doubts: [] };
  if (down) return { level: '0', doubts: [] };
  if (bit.whenOpen !== null) return { level: String(bit.whenOpen), doubts: [] };
  return { level: '?', doubts: [{ code: 'bit-open', bit: bit.name }] };
}

function readDivider(group: StrapGroupOf<'divider'>, now: ReadonlyMap<string, PositionNow>): StrapReading {
  const unread = [group.top, group.bottom].flatMap((refdes): ReadDoubt[] => {
    const position = now.get(refdes);
    const dark = position?.fitted && position.ohms === null;
    return dark ? [{ code: 'value-not-readable', refdes, value: position.value }] : [];
  });
  const none = { code: '?', settings: [], span: null };
  if (unread.length > 0) return { ...none, doubts: unread };
  const arm = (refdes: string): DividerArm => {
    const position = now.get(refdes);
    if (!position?.fitted || position.ohms === null) return null;
    const told = group.positions.find((one) => one.refdes === refdes)?.tolerancePercent;
    return { ohms: position.ohms, tolerancePercent: told ?? ASSUMED_TOLERANCE_PERCENT };
  };
  const span = dividerSpan(group, arm(group.top), arm(group.bottom));
  if (!span) return { ...none, doubts: [{ code: 'divider-open' }] };
  const { codes, alone } = codesOf(group, span);
  if (!alone) {
    const doubt: ReadDoubt =
      codes.length === 0 ? { code: 'outside-windows' } : { code: 'code-ambiguous', codes: codes.join(', ') };
    return { ...none, doubts: [doubt], span };
  }
  const settings = group.settings.filter((setting) => setting.code === alone.code);
  return { code: alone.code, settings, doubts: [], span };
}
