import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createRandom } from '../../../../../sample-boards/make/random.ts';
import { assign, compareCosts, sumOfCosts } from '../../../../../shared-types/rules/straps/assignment.ts';
import {
  leastWork,
  type Need,
  type Resistor,
  suits,
  type WorkPosition,
  type WorkStock,
} from '../../../../../shared-types/rules/straps/least-work.ts';

const VALUES = [10_000, 4700, 0, null];
const SIZES = ['0402', '0603'];
const TOLERANCES = [null, 1, 5];

type Case = { positions: WorkPosition[]; stock: WorkStock[]; stockFirst: boolean };

function randomCase(seed: number): Case {
  const next = createRandom(seed).next;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)];
  const resistor = (values: readonly (number | null)[]): Resistor => ({
    ohms: pick(values),
    size: pick(next() < 0.7 ? SIZES.slice(0, 1) : SIZES),
    tolerancePercent: pick(next() < 0.7 ? TOLERANCES.slice(0, 1) : TOLERANCES),
  });
  const need = (): Need => {
    const dice = next();
    if (dice < 0.45) return { is: 'fitted', part: resistor(VALUES.slice(0, 3)) };
    return { is: dice < 0.8 ? 'empty' : dice < 0.93 ? 'either' : 'leave' };
  };
  const positions = Array.from({ length: 1 + Math.floor(next() * 6) }, (_, index): WorkPosition => {
    // Few places, so that equal ways are common and the later weights decide.
    const [x, y] = [Math.floor(next() * 4), Math.floor(next() * 3)];
    return {
      refdes: `R${index}`,
      x,
      y,
      side: next() < 0.85 ? 'top' : 'bottom',
      now: next() < 0.55 ? resistor(next() < 0.9 ? VALUES.slice(0, 3) : VALUES) : null,
      need: need(),
      fromHeatMm: next() < 0.2 ? Infinity : Math.floor(next() * 30),
    };
  });
  const stock = Array.from({ length: Math.floor(next() * 3) }, () => ({
    ...resistor(VALUES.slice(0, 3)),
    count: pick([null, 0, 1, 2]),
  }));
  return { positions, stock, stockFirst: next() < 0.5 };
}

/** What was moved where, counted by itself: every position to fill tries every source, whatever is left comes off. */
function bruteForce({ positions, stock, stockFirst }: Case): number[] {
  const wanting = positions.flatMap((one, index) => (one.need.is === 'fitted' ? [index] : []));
  const left = stock.map((entry) => entry.count ?? Infinity);
  const source: (number | 'stock' | 'none')[] = positions.map(() => 'none');
  const used = new Set<number>();
  let best: number[] | null = null;
  const heat = (index: number) => Math.round((200 - Math.min(200, positions[index].fromHeatMm)) * 100);
  const tally = () => {
    let [unserved, relocated, added, off, way, warm] = [0, 0, 0, 0, 0, 0];
    for (const to of wanting) {
      const from = source[to];
      if (from === 'none') unserved++;
      else if (from === 'stock') {
        added++;
        warm += heat(to);
      } else if (from !== to) {
        relocated++;
        const [a, b] = [positions[from], positions[to]];
        way += Math.round((Math.hypot(a.x - b.x, a.y - b.y) + (a.side === b.side ? 0 : 5000)) * 100);
        warm += heat(from) + heat(to);
      }
    }
    for (const [index, { now, need }] of positions.entries()) {
      if (now === null || used.has(index) || need.is === 'either' || need.is === 'leave') continue;
      off++;
      warm += heat(index);
    }
    const moves = relocated + added + off;
    const cost = stockFirst ? [unserved, relocated, moves, way, warm] : [unserved, moves, added, way, warm];
    if (best === null || compareCosts(cost, best) < 0) best = cost;
  };
  const fill = (at: number): void => {
    if (at === wanting.length) {
      tally();
      return;
    }
    const to = wanting[at];
    const { need, now } = positions[to];
    if (need.is !== 'fitted') return;
    source[to] = 'none';
    fill(at + 1);
    for (const [index, entry] of stock.entries()) {
      if (left[index] < 1 || !suits(entry, need.part)) continue;
      left[index]--;
      source[to] = 'stock';
      fill(at + 1);
      left[index]++;
    }
    for (const [from, giver] of positions.entries()) {
      if (giver.now === null || used.has(from) || giver.need.is === 'leave') continue;
      const mayStay =
        from === to && now !== null && (now.ohms === null || suits({ ...now, tolerancePercent: null }, need.part));
      if (from === to ? !mayStay : !suits(giver.now, need.part)) continue;
      used.add(from);
      source[to] = from;
      fill(at + 1);
      used.delete(from);
    }
    source[to] = 'none';
  };
  fill(0);
  return best ?? [0, 0, 0, 0, 0];
}

test('costs as much as trying everything, in 10,000 random groups of up to six positions', () => {
  let moved = 0;
  for (let seed = 1; seed <= 10_000; seed++) {
    const one = randomCase(seed);
    const found = leastWork(one.positions, one.stock, one.stockFirst);
    expect([...found.cost], `seed ${seed}`).toEqual(bruteForce(one));
    if (found.cost[1] > 0) moved++;
  }
  expect(moved, 'most groups have something to move').toBeGreaterThan(5000);
}, 60_000);

describe('whatever the group', () => {
  const cases = fc.integer({ min: 1, max: 1e9 }).map(randomCase);

  test('no part is used twice, no stock beyond its count, nothing fits by force', () => {
    fc.assert(
      fc.property(cases, ({ positions, stock, stockFirst }) => {
        const { fillOf, off } = leastWork(positions, stock, stockFirst);
        const from = fillOf.flatMap((fill) => (fill?.from === 'position' ? [fill.index] : []));
        expect(new Set([...from, ...off]).size).toBe(from.length + off.length);
        for (const [index, entry] of stock.entries()) {
          const taken = fillOf.filter((fill) => fill?.from === 'stock' && fill.index === index).length;
          expect(taken).toBeLessThanOrEqual(entry.count ?? Infinity);
        }
        for (const [to, fill] of fillOf.entries()) {
          const { need } = positions[to];
          expect(fill !== null).toBe(need.is === 'fitted');
          if (!fill || fill.from === 'nothing' || need.is !== 'fitted') continue;
          const part = fill.from === 'stock' ? stock[fill.index] : positions[fill.index].now;
          if (fill.from !== 'position' || fill.index !== to) expect(part && suits(part, need.part)).toBe(true);
        }
        for (const [index, { need }] of positions.entries())
          if (need.is === 'leave') expect([...from, ...off]).not.toContain(index);
      }),
      { numRuns: 2000 },
    );
  });

  test('positions that are right already cost nothing; more stock never costs more work', () => {
    fc.assert(
      fc.property(cases, ({ positions, stock }) => {
        const settled = positions.map(
          (one): WorkPosition => ({ ...one, need: one.now ? { is: 'fitted', part: one.now } : { is: 'empty' } }),
        );
        expect(leastWork(settled, stock, false).cost).toEqual([0, 0, 0, 0, 0]);
        const plenty = VALUES.slice(0, 3).flatMap((ohms) =>
          SIZES.map((size) => ({ ohms, size, tolerancePercent: 1, count: null })),
        );
        const more = leastWork(positions, [...stock, ...plenty], false).cost;
        const less = leastWork(positions, stock, false).cost;
        expect(compareCosts(more, less)).toBeLessThanOrEqual(0);
        expect(more[0]).toBe(0);
      }),
      { numRuns: 1000 },
    );
  });

  test('a board turned over and mirrored as a whole costs the same', () => {
    fc.assert(
      fc.property(cases, ({ positions, stock, stockFirst }) => {
        const turned = positions.map(
          (one): WorkPosition => ({ ...one, x: -one.y, y: one.x, side: one.side === 'top' ? 'bottom' : 'top' }),
        );
        expect(leastWork(turned, stock, stockFirst).cost).toEqual(leastWork(positions, stock, stockFirst).cost);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('ties', () => {
  const at = (refdes: string, x: number, now: boolean, need: Need['is'], fromHeatMm = 50): WorkPosition => {
    const part = { ohms: 10_000, size: '0402', tolerancePercent: null };
    return {
      refdes,
      x,
      y: 0,
      side: 'top',
      now: now ? part : null,
      need: need === 'fitted' ? { is: 'fitted', part } : { is: need },
      fromHeatMm,
    };
  };
  const takenFrom = (positions: WorkPosition[], stock: WorkStock[] = [], stockFirst = false) => {
    const fill = leastWork(positions, stock, stockFirst).fillOf.find((one) => one);
    return fill?.from === 'position' ? positions[fill.index].refdes : fill?.from;
  };
  const reel: WorkStock[] = [{ ohms: 10_000, size: '0402', tolerancePercent: 1, count: null }];

  test('the nearer part goes, then the one farther from the heat', () => {
    expect(takenFrom([at('R1', 0, false, 'fitted'), at('R2', 3, true, 'either'), at('R3', 2, true, 'either')])).toBe(
      'R3',
    );
    expect(
      takenFrom([at('R1', 0, false, 'fitted'), at('R2', -2, true, 'either', 5), at('R3', 2, true, 'either', 20)]),
    ).toBe('R3');
  });

  test('a part on the board before a new one; with stock first the new one, though the old one then comes off', () => {
    const positions = [at('R1', 0, false, 'fitted'), at('R2', 3, true, 'empty')];
    expect(takenFrom(positions, reel)).toBe('R2');
    expect(takenFrom(positions, reel, true)).toBe('stock');
    expect(takenFrom(positions, [], true)).toBe('R2');
  });
});

test('assignments match the best of all orders, also with negative costs and more columns than rows', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }), fc.integer(), (rows, more, seed) => {
      const next = createRandom(seed).next;
      const columns = rows + more;
      const costs = Array.from({ length: rows }, () =>
        Array.from({ length: columns }, () => [Math.floor(next() * 5) - 2, Math.floor(next() * 9) - 4]),
      );
      const orders = (left: number[], depth: number): number[][] =>
        depth === 0
          ? [[]]
          : left.flatMap((one) =>
              orders(
                left.filter((o) => o !== one),
                depth - 1,
              ).map((o) => [one, ...o]),
            );
      const sums = orders(
        Array.from({ length: columns }, (_, i) => i),
        rows,
      ).map((order) =>
        sumOfCosts(
          order.map((column, row) => costs[row][column]),
          2,
        ),
      );
      const least = sums.reduce((best, sum) => (compareCosts(sum, best) < 0 ? sum : best));
      const found = assign(costs);
      expect(new Set(found).size).toBe(rows);
      expect(
        sumOfCosts(
          found.map((column, row) => costs[row][column]),
          2,
        ),
      ).toEqual(least);
    }),
    { numRuns: 1500 },
  );
});
