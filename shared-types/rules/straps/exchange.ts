import type { Board } from '../../board.ts';
import type { Plan } from '../../plan.ts';
import type { Capacity, SiteExchange, StrapGroup, StrapSetting } from '../../straps.ts';

/** Bits in a unit: 2^20 and 2^30 as memory is counted (JEDEC JESD100B, from memory). */
const BITS: Record<Capacity['unit'], number> = { Mbit: 2 ** 20, Gbit: 2 ** 30, MB: 2 ** 23, GB: 2 ** 33 };
export const bitsOf = ({ amount, unit }: Capacity): number => amount * BITS[unit];

/** '8 Gbit', '512MB', '2 GB'; null: none of them. */
export function parseCapacity(text: string): Capacity | null {
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*([mg])(?:i)?(bit|bits|byte|bytes|b)\s*$/i.exec(text);
  if (!match) return null;
  const amount = Number(match[1].replace(',', '.'));
  const bytes = match[3] === 'B' || /^byte/i.test(match[3]);
  const unit = `${match[2].toUpperCase()}${bytes ? 'B' : 'bit'}` as Capacity['unit'];
  return amount > 0 && amount <= 1e6 ? { amount, unit } : null;
}

/** A number of bits in the unit that gives the shortest figure, as bytes or as bits. */
export function capacityOf(bits: number, like: Capacity['unit']): Capacity {
  const bytes = like.endsWith('B');
  const [large, small] = bytes ? (['GB', 'MB'] as const) : (['Gbit', 'Mbit'] as const);
  const unit = bits >= BITS[large] ? large : small;
  return { amount: Number((bits / BITS[unit]).toPrecision(6)), unit };
}

/** What the parts that will be fitted add up to, beside what the wanted setting tells the board. */
export type CapacitySum = {
  groupId: string;
  group: string;
  setting: string;
  told: Capacity;
  /** null: the capacity of a part is not known. */
  sum: Capacity | null;
  agrees: boolean | null;
  /** Parts whose capacity nobody told. */
  unknown: string[];
};

/** Sums of the groups with a wanted setting that states a capacity for parts. */
export function capacitySums(board: Board, plan: Plan): CapacitySum[] {
  return plan.straps.wanted.flatMap(({ groupId, settingId }) => {
    const group = board.straps.find((one) => one.id === groupId);
    const setting = group?.settings.find((one) => one.id === settingId);
    return group && setting?.capacity && group.describes.length > 0
      ? [sumOf(plan, group, setting, setting.capacity)]
      : [];
  });
}

function sumOf(plan: Plan, group: StrapGroup, setting: StrapSetting, told: Capacity): CapacitySum {
  let bits = 0;
  const unknown: string[] = [];
  for (const refdes of group.describes) {
    const site = plan.sites.find((one) => one.target === refdes);
    const on = plan.exchanges.find((one) => one.siteId === site?.id)?.on;
    if (on?.capacity) bits += on.count * bitsOf(on.capacity);
    else unknown.push(refdes);
  }
  const sum = unknown.length === 0 ? capacityOf(bits, told.unit) : null;
  return {
    groupId: group.id,
    group: group.name,
    setting: setting.label,
    told,
    sum,
    agrees: sum && Math.abs(bits - bitsOf(told)) < 1,
    unknown,
  };
}

/** What follows from one exchange; null: a figure is not known. */
export type ExchangeDifference = { heightMm: number | null; powerW: number | null; bits: number | null };
export function differenceOf({ off, on }: SiteExchange): ExchangeDifference {
  const less = (a: number | null, b: number | null) =>
    a === null || b === null ? null : Number((a - b).toPrecision(6));
  const whole = (part: SiteExchange['on']) => part.capacity && part.count * bitsOf(part.capacity);
  return {
    heightMm: less(on.heightMm, off.heightMm),
    powerW: less(on.powerW, off.powerW),
    bits: less(whole(on), whole(off)),
  };
}
