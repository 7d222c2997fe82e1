import type { HeatState } from './heat-state.ts';
import { createStencil, fillStencil } from './interpolation.ts';

/** A place, or many, whose lowest and highest temperature is kept for every sub-step. */
export type ProbeWish = {
  /** x and y in metres, one after the other. */
  points: readonly number[];
  /** A face of the board, or the body with this index in the scene. */
  of: { face: 'upper' | 'lower' } | { body: number };
};

/** Probes laid over a state. `valid` is false for a probe that has no cell. */
export type Probes = {
  count: number;
  valid: boolean[];
  /** rows x probes. */
  low: Float32Array;
  high: Float32Array;
  read: (row: number) => void;
  /** Reads one probe from these temperatures, laid out like those that it usually reads. */
  readOne: (probe: number, row: number, values: Float64Array) => void;
};

type Laid = { onBody: boolean; starts: Int32Array; indices: Int32Array; weights: Float64Array };

/** Index that each cell's value has in the face or entry arrays; -1 where it has none. */
function valuesOf(state: HeatState, wish: ProbeWish): Int32Array {
  const { grid, entries } = state;
  const values = new Int32Array(grid.cellCount).fill(-1);
  if ('face' in wish.of) {
    const offset = wish.of.face === 'upper' ? 0 : grid.cellCount;
    for (let cell = 0; cell < grid.cellCount; cell++) if (grid.exists[cell]) values[cell] = cell + offset;
    return values;
  }
  const order = entries.bodyOfScene.indexOf(wish.of.body);
  if (order < 0) return values;
  for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++) {
    values[entries.cell[entry]!] = entry;
  }
  return values;
}

function lay(state: HeatState, wish: ProbeWish): Laid {
  const values = valuesOf(state, wish);
  const stencil = createStencil();
  const starts = [0];
  const indices: number[] = [];
  const weights: number[] = [];
  for (let point = 0; point + 1 < wish.points.length; point += 2) {
    fillStencil(stencil, state.grid, wish.points[point]!, wish.points[point + 1]!);
    // Cells without a value are left out and the rest is scaled up; a point that has none is left out altogether.
    let sum = 0;
    for (let place = 0; place < stencil.count; place++) {
      if (values[stencil.cells[place]!]! >= 0) sum += stencil.weights[place]!;
    }
    if (sum === 0) continue;
    for (let place = 0; place < stencil.count; place++) {
      const index = values[stencil.cells[place]!]!;
      if (index < 0) continue;
      indices.push(index);
      weights.push(stencil.weights[place]! / sum);
    }
    starts.push(indices.length);
  }
  return {
    onBody: 'body' in wish.of,
    starts: Int32Array.from(starts),
    indices: Int32Array.from(indices),
    weights: Float64Array.from(weights),
  };
}

/** Lays probes over a state and reserves their series. */
export function createProbes(state: HeatState, wishes: readonly ProbeWish[], rows: number): Probes {
  const laid = wishes.map((wish) => lay(state, wish));
  const count = laid.length;
  const low = new Float32Array(rows * count);
  const high = new Float32Array(rows * count);
  function readOne(probe: number, row: number, values: Float64Array): void {
    const { starts, indices, weights } = laid[probe]!;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let point = 0; point + 1 < starts.length; point++) {
      let sum = 0;
      for (let place = starts[point]!; place < starts[point + 1]!; place++) {
        sum += weights[place]! * values[indices[place]!]!;
      }
      if (sum < least) least = sum;
      if (sum > most) most = sum;
    }
    low[row * count + probe] = least;
    high[row * count + probe] = most;
  }
  function read(row: number): void {
    for (let probe = 0; probe < count; probe++) {
      readOne(probe, row, laid[probe]!.onBody ? state.body.temperature : state.temperature);
    }
  }
  return { count, valid: laid.map((probe) => probe.starts.length > 1), low, high, read, readOne };
}
