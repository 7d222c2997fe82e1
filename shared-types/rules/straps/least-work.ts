import type { Side } from '../../geometry.ts';
import { sameOhms } from '../resistance.ts';
import { assign, type Cost, sumOfCosts } from './assignment.ts';

/** A resistor by what makes it fit. `ohms` null: value not known, so that it fits nowhere but where it stands. */
export type Resistor = { ohms: number | null; size: string; tolerancePercent: number | null };

/** What a position must be afterwards. `either`: fitted or empty; `leave`: not touched. */
export type Need = { is: 'fitted'; part: Resistor } | { is: 'empty' } | { is: 'either' } | { is: 'leave' };

export type WorkPosition = {
  refdes: string;
  x: number;
  y: number;
  side: Side;
  /** What stands there now; null: empty. */
  now: Resistor | null;
  need: Need;
  /** Distance to the nearest rework area, mm; Infinity: no site. */
  fromHeatMm: number;
};
export type WorkStock = Resistor & { count: number | null };

/** What fills a position that has to be fitted. */
export type Source = { from: 'position'; index: number } | { from: 'stock'; index: number } | { from: 'nothing' };

/** `fillOf[p]`: what fills position p; null where none is needed. `off`: positions whose part comes off for good. */
export type LeastWork = { fillOf: (Source | null)[]; off: number[]; cost: Cost };

/** True when a resistor may stand where `wanted` belongs: same value, same size, no coarser than asked. */
export function suits(part: Resistor, wanted: Resistor): boolean {
  if (part.ohms === null || wanted.ohms === null || part.size !== wanted.size) return false;
  if (!sameOhms(part.ohms, wanted.ohms)) return false;
  return wanted.tolerancePercent === null || part.tolerancePercent === null
    ? true
    : part.tolerancePercent <= wanted.tolerancePercent;
}

const PARTS = 5;
const HOT_MM = 200;
const hundredths = (mm: number): number => Math.round(mm * 100);
/** Between the two sides a part is carried round the edge: farther than any way on one side. */
const OTHER_SIDE_MM = 5000;

const closeness = ({ fromHeatMm }: WorkPosition): number =>
  hundredths(HOT_MM - Math.min(HOT_MM, Math.max(0, fromHeatMm)));
const wayOf = (a: WorkPosition, b: WorkPosition): number =>
  hundredths(Math.hypot(a.x - b.x, a.y - b.y) + (a.side === b.side ? 0 : OTHER_SIDE_MM));

/** Weights of one move, most important first: what cannot be served, work, parts used, way, nearness to the heat. */
export function costOf(
  stockFirst: boolean,
  move: { unserved?: number; relocated?: number; added?: number; off?: number; way?: number; heat?: number },
): Cost {
  const { unserved = 0, relocated = 0, added = 0, off = 0, way = 0, heat = 0 } = move;
  const moves = relocated + added + off;
  return stockFirst ? [unserved, relocated, moves, way, heat] : [unserved, moves, added, way, heat];
}

export const offCost = (stockFirst: boolean, position: WorkPosition): Cost =>
  costOf(stockFirst, { off: 1, heat: closeness(position) });
export const relocateCost = (stockFirst: boolean, from: WorkPosition, to: WorkPosition): Cost =>
  costOf(stockFirst, { relocated: 1, way: wayOf(from, to), heat: closeness(from) + closeness(to) });
export const addCost = (stockFirst: boolean, to: WorkPosition): Cost =>
  costOf(stockFirst, { added: 1, heat: closeness(to) });

/** True when the part that stands there has to leave unless it is taken for a place: it may not stay where it is. */
export const mustLeave = ({ need, now }: WorkPosition): boolean =>
  now !== null && (need.is === 'empty' || need.is === 'fitted');

/** Stays where it is: the right part, or one whose value nobody can read and that is told to belong there. */
const stays = (position: WorkPosition): boolean =>
  position.now !== null &&
  position.need.is === 'fitted' &&
  (position.now.ohms === null || suits({ ...position.now, tolerancePercent: null }, position.need.part));

/** One entry for each part of the stock that could be used: no more of a kind than there are places for it. */
function stockUnits(
  positions: readonly WorkPosition[],
  wanting: readonly number[],
  stock: readonly WorkStock[],
): number[] {
  const open = new Map<string, number>();
  return stock.flatMap((entry, index) => {
    const kind = JSON.stringify([entry.ohms, entry.size, entry.tolerancePercent]);
    const uses = wanting.filter((at) => {
      const { need } = positions[at];
      return need.is === 'fitted' && suits(entry, need.part);
    }).length;
    const left = open.get(kind) ?? uses;
    const taken = Math.min(entry.count ?? left, left);
    open.set(kind, left - taken);
    return new Array<number>(taken).fill(index);
  });
}

/**
 * The least work that brings every position to what it must be. Each position to fill takes its part from a position,
 * from stock or from nowhere; a part that nobody takes and that may not stay comes off. That is an assignment of
 * positions to sources, solved exactly.
 */
export function leastWork(
  positions: readonly WorkPosition[],
  stock: readonly WorkStock[],
  stockFirst: boolean,
): LeastWork {
  const wanting = positions.flatMap(({ need }, index) => (need.is === 'fitted' ? [index] : []));
  const givers = positions.flatMap(({ now, need }, index) => (now !== null && need.is !== 'leave' ? [index] : []));
  const units = stockUnits(positions, wanting, stock);
  const sources: Source[] = [
    ...givers.map((index): Source => ({ from: 'position', index })),
    ...units.map((index): Source => ({ from: 'stock', index })),
    ...wanting.map((): Source => ({ from: 'nothing' })),
  ];
  const impossible = costOf(stockFirst, { unserved: 1000 });
  const price = (wantingIndex: number, source: Source): Cost => {
    const to = positions[wantingIndex];
    const wanted = to.need.is === 'fitted' ? to.need.part : null;
    if (source.from === 'nothing' || !wanted) return costOf(stockFirst, { unserved: 1 });
    if (source.from === 'stock') return suits(stock[source.index], wanted) ? addCost(stockFirst, to) : impossible;
    const from = positions[source.index];
    const spared = mustLeave(from) ? offCost(stockFirst, from).map((value) => -value) : costOf(stockFirst, {});
    if (source.index === wantingIndex) return stays(to) ? spared : impossible;
    if (!from.now || !suits(from.now, wanted)) return impossible;
    return sumOfCosts([relocateCost(stockFirst, from, to), spared], PARTS);
  };
  const columns = assign(wanting.map((index) => sources.map((source) => price(index, source))));
  const fillOf: (Source | null)[] = positions.map(() => null);
  for (const [row, index] of wanting.entries()) fillOf[index] = sources[columns[row]];
  const taken = new Set(fillOf.flatMap((fill) => (fill?.from === 'position' ? [fill.index] : [])));
  const off = positions.flatMap((position, index) => (mustLeave(position) && !taken.has(index) ? [index] : []));
  const chosen = wanting.map((index, row) => price(index, sources[columns[row]]));
  const base = positions.filter(mustLeave).map((position) => offCost(stockFirst, position));
  return { fillOf, off, cost: sumOfCosts([...chosen, ...base], PARTS) };
}
