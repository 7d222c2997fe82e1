import type { Board } from '../../board.ts';
import { type Capacity, type StrapGroup, type StrapKind, type StrapPosition, strapGroupSchema } from '../../straps.ts';
import { parseResistance, parseTolerance } from '../resistance.ts';
import { figureOf, isBlank, levelOf } from './cells.ts';
import { parseCapacity } from './exchange.ts';

export type DraftTable = 'positions' | 'bits' | 'windows' | 'settings';

/** A group as it is typed: tables of words, some of which may not make sense yet. */
export type StrapDraft = {
  kind: StrapKind;
  name: string;
  /** Designators of the parts whose capacity the setting states, with commas. */
  describes: string;
  top: string;
  bottom: string;
  supplyV: number | null;
  supplyTolerancePercent: number | null;
  ratiometric: boolean;
  converterErrorMv: number | null;
  tables: Record<DraftTable, string[][]>;
};

/** A cell, or a field outside the tables, that cannot be taken over. */
export type DraftFault = { table: DraftTable | null; row: number; column: number; code: DraftFaultCode; text: string };
export type DraftFaultCode =
  | 'needs-name'
  | 'needs-position'
  | 'no-tolerance'
  | 'no-level'
  | 'no-figure'
  | 'no-capacity'
  | 'no-resistance'
  | 'needs-code'
  | 'needs-rows'
  | 'too-long';

export const emptyDraft = (kind: StrapKind): StrapDraft => ({
  kind,
  name: '',
  describes: '',
  top: '',
  bottom: '',
  supplyV: 3.3,
  supplyTolerancePercent: 3,
  ratiometric: true,
  converterErrorMv: 10,
  tables: { positions: [], bits: [], windows: [], settings: [] },
});

/** Tables that a kind of group has, in the order in which they are filled. */
export const TABLES_OF: Record<StrapKind, readonly DraftTable[]> = {
  jumpers: ['positions', 'settings'],
  bits: ['bits', 'positions', 'settings'],
  divider: ['positions', 'windows', 'settings'],
};

const FIXED_SETTING_COLUMNS = 3;
/** Names of the places of a code: positions of jumpers, names of bits. */
export const placesOf = (draft: StrapDraft): string[] =>
  (draft.kind === 'bits' ? draft.tables.bits : draft.tables.positions)
    .filter((row) => !isBlank(row))
    .map((row) => (row[0] ?? '').trim());

/** How many columns a table has. */
export function columnsOf(draft: StrapDraft, table: DraftTable): number {
  if (table === 'positions' || table === 'bits') return 4;
  if (table === 'windows') return 3;
  return FIXED_SETTING_COLUMNS + (draft.kind === 'divider' ? 3 : placesOf(draft).length);
}

const tolerance = (value: number | null): string => (value === null ? '' : String(value));
const capacity = (value: Capacity | null): string => (value ? `${value.amount} ${value.unit}` : '');

/** A group as a draft, to edit. */
export function draftOf(group: StrapGroup): StrapDraft {
  const head = { ...emptyDraft(group.kind), name: group.name, describes: group.describes.join(', ') };
  const positions = group.positions.map((one) => [one.refdes, one.value, tolerance(one.tolerancePercent), one.meaning]);
  const lead = ({ label, maker, capacity: told }: StrapGroup['settings'][number]) => [label, maker, capacity(told)];
  if (group.kind === 'divider')
    return {
      ...head,
      top: group.top,
      bottom: group.bottom,
      supplyV: group.supplyV,
      supplyTolerancePercent: group.supplyTolerancePercent,
      ratiometric: group.ratiometric,
      converterErrorMv: group.converterErrorMv,
      tables: {
        positions,
        bits: [],
        windows: group.windows.map(({ code, fromV, toV }) => [code, String(fromV), String(toV)]),
        settings: group.settings.map((one) => [...lead(one), one.code, one.top ?? '-', one.bottom ?? '-']),
      },
    };
  const bits =
    group.kind === 'bits'
      ? group.bits.map((bit) => [bit.name, bit.pullUp ?? '', bit.pullDown ?? '', tolerance(bit.whenOpen)])
      : [];
  const settings = group.settings.map((one) => [...lead(one), ...one.code]);
  return { ...head, tables: { positions, bits, windows: [], settings } };
}

type Faults = DraftFault[];
const faultAt = (
  table: DraftTable | null,
  row: number,
  column: number,
  code: DraftFaultCode,
  text = '',
): DraftFault => ({
  table,
  row,
  column,
  code,
  text,
});

/** Rows with something in them, with their place in the table. */
const rowsOf = (draft: StrapDraft, table: DraftTable): { row: number; cells: string[] }[] =>
  draft.tables[table].flatMap((cells, row) =>
    isBlank(cells)
      ? []
      : [{ row, cells: Array.from({ length: columnsOf(draft, table) }, (_, i) => (cells[i] ?? '').trim()) }],
  );

function positionsOf(draft: StrapDraft, board: Board, faults: Faults): StrapPosition[] {
  const listed = rowsOf(draft, 'positions').map(({ row, cells: [refdes, value, percent, meaning] }) => {
    if (refdes === '') faults.push(faultAt('positions', row, 0, 'needs-position'));
    if (value !== '' && !parseResistance(value)) faults.push(faultAt('positions', row, 1, 'no-resistance', value));
    const tolerancePercent =
      percent === '' ? (parseResistance(value)?.tolerancePercent ?? null) : parseTolerance(percent);
    if (percent !== '' && tolerancePercent === null) faults.push(faultAt('positions', row, 2, 'no-tolerance', percent));
    return { refdes, value, tolerancePercent, meaning };
  });
  const needed =
    draft.kind === 'bits'
      ? rowsOf(draft, 'bits').flatMap(({ cells }) => [cells[1], cells[2]])
      : draft.kind === 'divider'
        ? [draft.top.trim(), draft.bottom.trim()]
        : [];
  const known = new Set(listed.map(({ refdes }) => refdes));
  const missing = [...new Set(needed)].filter((refdes) => refdes !== '' && !known.has(refdes));
  // A position named elsewhere only takes its value from the drawing; a divider's comes with each setting.
  const added = missing.map((refdes) => ({
    refdes,
    value:
      draft.kind === 'divider' ? '' : (board.parts.find((part) => part.refdes === refdes)?.value ?? '').slice(0, 50),
    tolerancePercent: null,
    meaning: '',
  }));
  return [...listed, ...added];
}

function bitsOf(draft: StrapDraft, faults: Faults) {
  return rowsOf(draft, 'bits').map(({ row, cells: [name, up, down, open] }) => {
    if (name === '') faults.push(faultAt('bits', row, 0, 'needs-name'));
    const level = open === '' || /^(?:-|z|none|float.*)$/i.test(open) ? null : levelOf(open);
    if (level === 'x' || (open !== '' && level === null && !/^(?:-|z|none|float.*)$/i.test(open)))
      faults.push(faultAt('bits', row, 3, 'no-level', open));
    return { name, pullUp: up || null, pullDown: down || null, whenOpen: level === '1' ? 1 : level === '0' ? 0 : null };
  });
}

function settingLead(cells: readonly string[], row: number, faults: Faults) {
  const [label, maker, told] = cells;
  if (label === '') faults.push(faultAt('settings', row, 0, 'needs-name'));
  const amount = told === '' ? null : parseCapacity(told);
  if (told !== '' && !amount) faults.push(faultAt('settings', row, 2, 'no-capacity', told));
  return { label, maker, capacity: amount };
}

function codedSettings(draft: StrapDraft, ids: (row: number, label: string) => string, faults: Faults) {
  return rowsOf(draft, 'settings').map(({ row, cells }) => {
    const code = cells.slice(FIXED_SETTING_COLUMNS).map((cell, index) => {
      const level = levelOf(cell);
      if (level === null) faults.push(faultAt('settings', row, FIXED_SETTING_COLUMNS + index, 'no-level', cell));
      return level ?? 'x';
    });
    return { id: ids(row, cells[0]), ...settingLead(cells, row, faults), code: code.join('') };
  });
}

function dividerSettings(draft: StrapDraft, ids: (row: number, label: string) => string, faults: Faults) {
  return rowsOf(draft, 'settings').map(({ row, cells }) => {
    const [code, top, bottom] = cells.slice(FIXED_SETTING_COLUMNS);
    if (code === '') faults.push(faultAt('settings', row, 3, 'needs-code'));
    const arm = (text: string, column: number): string | null => {
      if (text === '' || levelOf(text) === '0' ? !/^0+$/.test(text) : false) return null;
      if (!parseResistance(text)) faults.push(faultAt('settings', row, column, 'no-resistance', text));
      return text;
    };
    return {
      id: ids(row, cells[0]),
      ...settingLead(cells, row, faults),
      code,
      top: arm(top, 4),
      bottom: arm(bottom, 5),
    };
  });
}

function windowsOf(draft: StrapDraft, faults: Faults) {
  return rowsOf(draft, 'windows').map(({ row, cells: [code, from, to] }) => {
    if (code === '') faults.push(faultAt('windows', row, 0, 'needs-code'));
    const volts = (text: string, column: number) => {
      const value = figureOf(text);
      if (value === null || value < 0) faults.push(faultAt('windows', row, column, 'no-figure', text));
      return Math.max(0, value ?? 0);
    };
    return { code, fromV: volts(from, 1), toV: volts(to, 2) };
  });
}

/**
 * A draft as a group; `group` null and the faults where a cell makes no sense. `before`: the group that is edited, so
 * that its settings keep their ids.
 */
export function groupOfDraft(
  draft: StrapDraft,
  id: string,
  board: Board,
  before: StrapGroup | null,
): { group: StrapGroup | null; faults: DraftFault[] } {
  const faults: Faults = [];
  if (draft.name.trim() === '') faults.push(faultAt(null, 0, 0, 'needs-name'));
  const head = {
    id,
    name: draft.name.trim(),
    describes: draft.describes.split(/[\s,;]+/).filter(Boolean),
    positions: positionsOf(draft, board, faults),
  };
  if (head.positions.length === 0)
    faults.push(faultAt(draft.kind === 'bits' ? 'bits' : 'positions', 0, 0, 'needs-rows'));
  const ids = settingIds(before);
  const made = ((): unknown => {
    if (draft.kind === 'jumpers') return { kind: 'jumpers', ...head, settings: codedSettings(draft, ids, faults) };
    if (draft.kind === 'bits') {
      const bits = bitsOf(draft, faults);
      return { kind: 'bits', ...head, bits, settings: codedSettings(draft, ids, faults) };
    }
    return dividerOf(draft, head, ids, faults);
  })();
  if (faults.length > 0) return { group: null, faults };
  const checked = strapGroupSchema.safeParse(made);
  if (checked.success) return { group: checked.data, faults };
  return { group: null, faults: [faultAt(null, 0, 0, 'too-long', checked.error.issues[0].path.join(' '))] };
}

function dividerOf(
  draft: StrapDraft,
  head: object,
  ids: (row: number, label: string) => string,
  faults: Faults,
): unknown {
  if (draft.top.trim() === '' || draft.bottom.trim() === '') faults.push(faultAt(null, 0, 1, 'needs-position'));
  const windows = windowsOf(draft, faults);
  if (windows.length === 0) faults.push(faultAt('windows', 0, 0, 'needs-rows'));
  return {
    kind: 'divider',
    ...head,
    top: draft.top.trim(),
    bottom: draft.bottom.trim(),
    supplyV: draft.supplyV ?? 0,
    supplyTolerancePercent: draft.supplyTolerancePercent ?? 0,
    ratiometric: draft.ratiometric,
    converterErrorMv: draft.converterErrorMv ?? 0,
    windows,
    settings: dividerSettings(draft, ids, faults),
  };
}

/** A setting keeps the id it had under its label, so that a wish for it stays; a new one gets the next number. */
function settingIds(before: StrapGroup | null): (row: number, label: string) => string {
  const free = [...(before?.settings ?? [])].map(({ id, label }) => ({ id, label }));
  let last = free.reduce((most, { id }) => Math.max(most, Number(/^setting-(\d+)$/.exec(id)?.[1] ?? 0)), 0);
  return (_row, label) => {
    const at = free.findIndex((one) => one.label === label);
    if (at >= 0) return free.splice(at, 1)[0].id;
    last += 1;
    return `setting-${last}`;
  };
}
