/** A cost with its parts in the order of their weight: the first part decides, the next only between equals. Whole numbers. */
export type Cost = readonly number[];

const plus = (a: Cost, b: Cost): number[] => a.map((value, index) => value + b[index]);
const minus = (a: Cost, b: Cost): number[] => a.map((value, index) => value - b[index]);

/** Negative when `a` costs less. */
export function compareCosts(a: Cost, b: Cost): number {
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return a[index] - b[index];
  return 0;
}

export const sumOfCosts = (costs: readonly Cost[], parts: number): number[] =>
  costs.reduce<number[]>(plus, new Array<number>(parts).fill(0));

/**
 * Assigns every row a column of its own at the least sum of costs, exactly: the Hungarian method (Kuhn 1955, Munkres
 * 1957) by shortest augmenting paths with potentials (Jonker and Volgenant 1987), O(rows^2 x columns). It only adds,
 * subtracts and compares, so that it holds for costs of several parts in the order of their weight as for plain
 * numbers. `costs[row][column]`, negative ones allowed, at least as many columns as rows. Returns the column of each row.
 */
export function assign(costs: readonly (readonly Cost[])[]): number[] {
  const rows = costs.length;
  if (rows === 0) return [];
  const columns = costs[0].length;
  if (columns < rows) throw new Error('An assignment needs at least as many columns as rows.');
  const zero: Cost = costs[0][0].map(() => 0);
  const rowPotential: Cost[] = new Array(rows + 1).fill(zero);
  const columnPotential: Cost[] = new Array(columns + 1).fill(zero);
  // Row and column 0 are the free end of a path; rows and columns count from 1.
  const rowOf: number[] = new Array(columns + 1).fill(0);
  for (let row = 1; row <= rows; row++) augment(row);
  const found: number[] = new Array(rows).fill(-1);
  for (let column = 1; column <= columns; column++) if (rowOf[column] > 0) found[rowOf[column] - 1] = column - 1;
  return found;

  function augment(row: number): void {
    const least: (Cost | null)[] = new Array(columns + 1).fill(null);
    const before: number[] = new Array(columns + 1).fill(0);
    const used: boolean[] = new Array(columns + 1).fill(false);
    rowOf[0] = row;
    let at = 0;
    do {
      used[at] = true;
      const from = rowOf[at];
      let step: Cost | null = null;
      let next = 0;
      for (let column = 1; column <= columns; column++) {
        if (used[column]) continue;
        const reduced = minus(minus(costs[from - 1][column - 1], rowPotential[from]), columnPotential[column]);
        const known = least[column];
        if (known === null || compareCosts(reduced, known) < 0) {
          least[column] = reduced;
          before[column] = at;
        }
        const now = least[column] as Cost;
        if (step === null || compareCosts(now, step) < 0) {
          step = now;
          next = column;
        }
      }
      shift(step as Cost, used, least);
      at = next;
    } while (rowOf[at] !== 0);
    for (; at !== 0; at = before[at]) rowOf[at] = rowOf[before[at]];
  }

  function shift(step: Cost, used: readonly boolean[], least: (Cost | null)[]): void {
    for (let column = 0; column <= columns; column++) {
      if (used[column]) {
        rowPotential[rowOf[column]] = plus(rowPotential[rowOf[column]], step);
        columnPotential[column] = minus(columnPotential[column], step);
      } else if (least[column] !== null) least[column] = minus(least[column] as Cost, step);
    }
  }
}
