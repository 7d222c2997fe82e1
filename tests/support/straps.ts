import { type Board, emptyBoard, type Part } from '../../shared-types/board.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { emptyPlan } from '../../shared-types/rules/new-plan.ts';
import type { StrapGroup, StrapGroupOf, StrapPosition, StrapStock } from '../../shared-types/straps.ts';

/** A chip resistor position: `value` fitted, or 'value -' empty; 0402 unless told otherwise. */
export function strapPart(refdes: string, written: string, more: Partial<Part> = {}): Part {
  const empty = written.endsWith(' -');
  return {
    refdes,
    side: 'top',
    x: 10,
    y: 10,
    turn: 0,
    package: { name: 'R 0402', shape: 'rectangle', lengthMm: 1, widthMm: 0.5, heightMm: 0.35 },
    class: 'chip-resistor',
    classGuessed: false,
    value: empty ? written.slice(0, -2) : written,
    fitted: !empty,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...more,
  };
}

export const position = (refdes: string, value = '10k', tolerancePercent: number | null = null): StrapPosition => ({
  refdes,
  value,
  tolerancePercent,
  meaning: '',
});

/** Settings as 'label': code. */
const settingsOf = (codes: Record<string, string>) =>
  Object.entries(codes).map(([label, code], index) => ({
    id: `setting-${index + 1}`,
    label,
    maker: '',
    capacity: null,
    code,
  }));

export const jumpers = (
  id: string,
  positions: StrapPosition[],
  codes: Record<string, string>,
): StrapGroupOf<'jumpers'> => ({
  kind: 'jumpers',
  id,
  name: id,
  describes: [],
  positions,
  settings: settingsOf(codes),
});

type Bit = { name: string; up?: string; down?: string; open?: 0 | 1 };
export const bits = (id: string, list: Bit[], codes: Record<string, string>): StrapGroupOf<'bits'> => ({
  kind: 'bits',
  id,
  name: id,
  describes: [],
  positions: list.flatMap(({ up, down }) => [up, down].flatMap((refdes) => (refdes ? [position(refdes)] : []))),
  bits: list.map(({ name, up, down, open }) => ({
    name,
    pullUp: up ?? null,
    pullDown: down ?? null,
    whenOpen: open ?? null,
  })),
  settings: settingsOf(codes),
});

/** Parts, groups and what is wanted ('group': 'label') as board and plan. */
export function strapTicket(
  parts: Part[],
  groups: StrapGroup[],
  wanted: Record<string, string> = {},
  stock: StrapStock[] = [],
  stockFirst = false,
): { board: Board; plan: Plan } {
  const plan = emptyPlan('S-1');
  const wishes = Object.entries(wanted).map(([groupId, label]) => {
    const setting = groups.find((group) => group.id === groupId)?.settings.find((one) => one.label === label);
    return { groupId, settingId: setting?.id ?? 'gone' };
  });
  return {
    board: { ...emptyBoard('Strap board', 60, 40), parts, straps: groups },
    plan: { ...plan, straps: { ...plan.straps, wanted: wishes, stock, stockFirst } },
  };
}

export const reel = (
  value: string,
  size = '0402',
  count: number | null = null,
  tolerancePercent: number | null = 1,
) => ({
  value,
  size,
  tolerancePercent,
  count,
});
