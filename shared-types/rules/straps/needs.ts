import type { StrapGroup, StrapPosition, StrapSetting } from '../../straps.ts';
import { parseResistance } from '../resistance.ts';
import { armOf, codesOf, dividerSpan } from './divider.ts';

/** What a setting asks of one position. `value`: what must stand there, as written. */
export type SettingNeed =
  | { refdes: string; is: 'fitted'; value: string; tolerancePercent: number | null }
  | { refdes: string; is: 'empty' | 'either' | 'leave' };

/** Why a setting cannot be planned. */
export type SettingFault =
  | { code: 'code-length'; given: number; needed: number }
  | { code: 'no-pull'; bit: string; level: string }
  | { code: 'positions-clash'; refdes: string }
  | { code: 'value-not-readable'; refdes: string; value: string }
  | { code: 'divider-open' }
  | { code: 'no-window'; wanted: string }
  | { code: 'code-ambiguous'; wanted: string; codes: string; lowV: number; highV: number }
  | { code: 'other-code'; wanted: string; codes: string; lowV: number; highV: number };

export type SettingNeeds = { needs: SettingNeed[]; faults: SettingFault[] };

/** What the positions of a group must be for a setting; faults: why the board cannot be made to say it. */
export function needsOf(group: StrapGroup, setting: StrapSetting): SettingNeeds {
  if (group.kind === 'divider') return dividerNeeds(group, setting as (typeof group.settings)[number]);
  const places = group.kind === 'bits' ? group.bits.length : group.positions.length;
  if (setting.code.length !== places)
    return { needs: [], faults: [{ code: 'code-length', given: setting.code.length, needed: places }] };
  const levels = [...setting.code];
  if (group.kind === 'jumpers')
    return unified(
      group.positions.map((position, index) =>
        levels[index] === 'x'
          ? { refdes: position.refdes, is: 'leave' }
          : levels[index] === '1'
            ? fittedNeed(position)
            : { refdes: position.refdes, is: 'empty' },
      ),
      [],
    );
  return bitNeeds(group, levels);
}

const fittedNeed = (position: StrapPosition): SettingNeed => ({
  refdes: position.refdes,
  is: 'fitted',
  value: position.value,
  tolerancePercent: position.tolerancePercent,
});

function bitNeeds(group: Extract<StrapGroup, { kind: 'bits' }>, levels: readonly string[]): SettingNeeds {
  const positionOf = (refdes: string): StrapPosition =>
    group.positions.find((one) => one.refdes === refdes) ?? { refdes, value: '', tolerancePercent: null, meaning: '' };
  const faults: SettingFault[] = [];
  const needs = group.bits.flatMap((bit, index): SettingNeed[] => {
    const level = levels[index];
    const pulls = [bit.pullUp, bit.pullDown].flatMap((refdes) => refdes ?? []);
    if (level === 'x') return pulls.map((refdes) => ({ refdes, is: 'leave' }));
    const [wanted, other] = level === '1' ? [bit.pullUp, bit.pullDown] : [bit.pullDown, bit.pullUp];
    const open = String(bit.whenOpen) === level;
    if (wanted === null && !open) faults.push({ code: 'no-pull', bit: bit.name, level });
    return [
      ...(wanted === null ? [] : [open ? ({ refdes: wanted, is: 'either' } as const) : fittedNeed(positionOf(wanted))]),
      ...(other === null ? [] : [{ refdes: other, is: 'empty' } as const]),
    ];
  });
  return unified(needs, faults);
}

function dividerNeeds(
  group: Extract<StrapGroup, { kind: 'divider' }>,
  setting: (typeof group.settings)[number],
): SettingNeeds {
  const arms = [
    { refdes: group.top, value: setting.top },
    { refdes: group.bottom, value: setting.bottom },
  ];
  const dark = arms.filter(({ value }) => value !== null && !parseResistance(value));
  if (dark.length > 0)
    return {
      needs: [],
      faults: dark.map(({ refdes, value }) => ({ code: 'value-not-readable', refdes, value: value ?? '' })),
    };
  const needs = arms.map(({ refdes, value }): SettingNeed => {
    const told = group.positions.find((one) => one.refdes === refdes)?.tolerancePercent ?? null;
    return value === null ? { refdes, is: 'empty' } : { refdes, is: 'fitted', value, tolerancePercent: told };
  });
  return unified(needs, windowFaults(group, setting));
}

/** Whether the setting's own values give its code over all tolerances. */
function windowFaults(
  group: Extract<StrapGroup, { kind: 'divider' }>,
  setting: (typeof group.settings)[number],
): SettingFault[] {
  const wanted = setting.code;
  if (!group.windows.some((window) => window.code === wanted)) return [{ code: 'no-window', wanted }];
  const span = dividerSpan(group, armOf(group, group.top, setting.top), armOf(group, group.bottom, setting.bottom));
  if (!span) return [{ code: 'divider-open' }];
  const { codes, alone } = codesOf(group, span);
  if (alone?.code === wanted) return [];
  const figures = { wanted, codes: codes.join(', '), lowV: span.lowV, highV: span.highV };
  return [{ code: codes.includes(wanted) ? 'code-ambiguous' : 'other-code', ...figures }];
}

/** One need for each position; a position asked to be two things at once is a fault. */
export function unified(needs: readonly SettingNeed[], faults: readonly SettingFault[]): SettingNeeds {
  const byName = new Map<string, SettingNeed>();
  const clashes: SettingFault[] = [];
  for (const need of needs) {
    const known = byName.get(need.refdes);
    const met = known ? meetingBoth(known, need) : need;
    if (met) byName.set(need.refdes, met);
    else clashes.push({ code: 'positions-clash', refdes: need.refdes });
  }
  return { needs: [...byName.values()], faults: [...faults, ...clashes] };
}

const RANK = { leave: 0, either: 1, empty: 2, fitted: 2 };

/** The need that meets both; null: they exclude each other. */
function meetingBoth(a: SettingNeed, b: SettingNeed): SettingNeed | null {
  if (a.is === 'fitted' && b.is === 'fitted') {
    const same = a.value === b.value || parseResistance(a.value)?.ohms === parseResistance(b.value)?.ohms;
    const finer = (a.tolerancePercent ?? Infinity) <= (b.tolerancePercent ?? Infinity) ? a : b;
    return same ? finer : null;
  }
  if (RANK[a.is] === 2 && RANK[b.is] === 2) return a.is === b.is ? a : null;
  return RANK[a.is] >= RANK[b.is] ? a : b;
}
