import type { Board } from '../../board.ts';
import type { StrapGroup } from '../../straps.ts';
import { seriesOf } from '../e-series.ts';
import { parseResistance } from '../resistance.ts';
import { needsOf, type SettingFault } from './needs.ts';

/** What is wrong with a group as described. `setting`: its label, where the fault is one setting's. */
export type GroupFault =
  | ({ setting: string } & SettingFault)
  | { code: 'position-on-no-part'; refdes: string }
  | { code: 'position-twice'; refdes: string }
  | { code: 'position-unused'; refdes: string }
  | { code: 'position-not-listed'; refdes: string; bit: string }
  | { code: 'bit-without-pull'; bit: string }
  | { code: 'same-pull-twice'; bit: string; refdes: string }
  | { code: 'settings-alike'; first: string; second: string }
  | { code: 'no-settings' }
  | { code: 'value-unreadable'; refdes: string; value: string }
  | { code: 'value-not-preferred'; refdes: string; value: string }
  | { code: 'window-empty'; wanted: string }
  | { code: 'windows-overlap'; first: string; second: string }
  | { code: 'describes-no-part'; refdes: string };

/** Faults that a group may be used with all the same. */
const NOTES: ReadonlySet<GroupFault['code']> = new Set(['value-not-preferred', 'position-unused']);
export const isNote = (fault: GroupFault): boolean => NOTES.has(fault.code);

/** Everything wrong with a group: positions, table of settings, windows. */
export function groupFaults(board: Board, group: StrapGroup): GroupFault[] {
  return [
    ...positionFaults(board, group),
    ...(group.kind === 'bits' ? bitFaults(group) : []),
    ...(group.kind === 'divider' ? dividerFaults(group) : []),
    ...settingFaults(group),
  ];
}

function positionFaults(board: Board, group: StrapGroup): GroupFault[] {
  const known = new Set(board.parts.map((part) => part.refdes));
  const names = group.positions.map(({ refdes }) => refdes);
  const lost = names.filter((refdes) => !known.has(refdes));
  const twice = names.filter((refdes, index) => names.indexOf(refdes) !== index);
  return [
    ...lost.map((refdes): GroupFault => ({ code: 'position-on-no-part', refdes })),
    ...[...new Set(twice)].map((refdes): GroupFault => ({ code: 'position-twice', refdes })),
    ...group.positions.flatMap(({ refdes, value }) => valueFaults(refdes, value)),
    ...group.describes
      .filter((refdes) => !known.has(refdes))
      .map((refdes): GroupFault => ({ code: 'describes-no-part', refdes })),
  ];
}

function valueFaults(refdes: string, value: string): GroupFault[] {
  if (value.trim() === '') return [];
  const written = parseResistance(value);
  if (!written) return [{ code: 'value-unreadable', refdes, value }];
  return written.ohms === 0 || seriesOf(written.ohms) ? [] : [{ code: 'value-not-preferred', refdes, value }];
}

function bitFaults(group: Extract<StrapGroup, { kind: 'bits' }>): GroupFault[] {
  const listed = new Set(group.positions.map(({ refdes }) => refdes));
  const used = new Set(group.bits.flatMap((bit) => [bit.pullUp, bit.pullDown]));
  return [
    ...group.bits.flatMap((bit): GroupFault[] => {
      const pulls = [bit.pullUp, bit.pullDown].flatMap((refdes) => refdes ?? []);
      if (pulls.length === 0) return [{ code: 'bit-without-pull', bit: bit.name }];
      const same: GroupFault[] =
        bit.pullUp === bit.pullDown ? [{ code: 'same-pull-twice', bit: bit.name, refdes: pulls[0] }] : [];
      const strange = pulls.filter((refdes) => !listed.has(refdes));
      return [
        ...same,
        ...strange.map((refdes): GroupFault => ({ code: 'position-not-listed', refdes, bit: bit.name })),
      ];
    }),
    ...group.positions
      .filter(({ refdes }) => !used.has(refdes))
      .map(({ refdes }): GroupFault => ({ code: 'position-unused', refdes })),
  ];
}

function dividerFaults(group: Extract<StrapGroup, { kind: 'divider' }>): GroupFault[] {
  const listed = new Set(group.positions.map(({ refdes }) => refdes));
  const windows = [...group.windows].sort((a, b) => a.fromV - b.fromV);
  const empty = windows.filter(({ fromV, toV }) => toV <= fromV);
  const values = group.settings.flatMap(({ top, bottom }) => [
    { refdes: group.top, value: top ?? '' },
    { refdes: group.bottom, value: bottom ?? '' },
  ]);
  const odd = values.flatMap(({ refdes, value }) => valueFaults(refdes, value));
  return [
    ...[group.top, group.bottom]
      .filter((refdes) => !listed.has(refdes))
      .map((refdes): GroupFault => ({ code: 'position-not-listed', refdes, bit: '' })),
    ...(group.top === group.bottom
      ? [{ code: 'same-pull-twice', bit: group.name, refdes: group.top } satisfies GroupFault]
      : []),
    ...empty.map(({ code }): GroupFault => ({ code: 'window-empty', wanted: code })),
    ...windows.flatMap((window, index): GroupFault[] => {
      const next = windows[index + 1];
      return next && next.fromV < window.toV && next.code !== window.code
        ? [{ code: 'windows-overlap', first: window.code, second: next.code }]
        : [];
    }),
    ...odd.filter(
      (fault, index) =>
        fault.code === 'value-not-preferred' &&
        odd.findIndex((one) => JSON.stringify(one) === JSON.stringify(fault)) === index,
    ),
  ];
}

/** True when some code fits both: x fits either level. */
const alike = (a: string, b: string): boolean =>
  a.length === b.length && [...a].every((level, index) => level === 'x' || b[index] === 'x' || level === b[index]);

function settingFaults(group: StrapGroup): GroupFault[] {
  if (group.settings.length === 0) return [{ code: 'no-settings' }];
  const faults: GroupFault[] = [];
  for (const [index, setting] of group.settings.entries()) {
    faults.push(...needsOf(group, setting).faults.map((fault) => ({ setting: setting.label, ...fault })));
    for (const other of group.settings.slice(0, index)) {
      const same = group.kind === 'divider' ? other.code === setting.code : alike(other.code, setting.code);
      if (same) faults.push({ code: 'settings-alike', first: other.label, second: setting.label });
    }
  }
  return faults;
}
