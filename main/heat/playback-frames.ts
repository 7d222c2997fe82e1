import type { HeatGrid } from './grid.ts';
import type { TicketRun } from './heat-run.ts';

/** Grid that the frames lie on: that of the run, or a coarser one over the same corner. */
export type FrameGrid = { columns: number; rows: number; cellMm: number; originX: number; originY: number };

/** Frames of one run in order: time (s) and both faces, upper cells then lower cells, °C; NaN where there is no board. */
export type RunFrames = { times: number[]; faces: Float32Array[] };

/** Seconds between frames while there is room. */
const EVERY_S = 5;

/** The coarsest that frames become before they become fewer: cells of the run along one cell of theirs. */
const COARSEST = 4;

export type FramePlan = {
  grid: FrameGrid;
  everyS: number;
  frames: RunFrames[];
  begin: (index: number, origin: number | null) => void;
  /** When the next frame of a run is due, s. */
  nextS: (index: number) => number;
  keep: (index: number, atS: number) => void;
  /** Bytes of all frames; those that runs share count once. */
  bytes: () => number;
};

/** How coarse and how often, so that the frames of all runs stay within their room: coarser first, then fewer. */
export function frameSize(
  columns: number,
  rows: number,
  seconds: readonly number[],
  mostBytes: number,
): { factor: number; everyS: number } {
  const bytesAt = (factor: number, everyS: number) => {
    const cells = Math.ceil(columns / factor) * Math.ceil(rows / factor);
    return seconds.reduce((sum, one) => sum + Math.ceil(one / everyS) + 1, 0) * cells * 2 * 4;
  };
  let factor = 1;
  while (factor < COARSEST && bytesAt(factor, EVERY_S) > mostBytes) factor++;
  let everyS = EVERY_S;
  const longest = Math.max(1, ...seconds);
  while (everyS < longest && bytesAt(factor, everyS) > mostBytes) everyS += EVERY_S;
  return { factor, everyS };
}

/** Mean of the cells of the board under each cell of the frame, both faces. */
function faceMeans(grid: HeatGrid, temperature: Float64Array, factor: number): Float32Array {
  const columns = Math.ceil(grid.columns / factor);
  const cells = columns * Math.ceil(grid.rows / factor);
  const sums = new Float32Array(cells * 2);
  const counts = new Uint8Array(cells);
  for (let cell = 0; cell < grid.cellCount; cell++) {
    if (!grid.exists[cell]) continue;
    const column = Math.floor((cell % grid.columns) / factor);
    const row = Math.floor(Math.floor(cell / grid.columns) / factor);
    const at = row * columns + column;
    sums[at]! += temperature[cell]!;
    sums[at + cells]! += temperature[cell + grid.cellCount]!;
    counts[at]!++;
  }
  for (let cell = 0; cell < cells; cell++) {
    const count = counts[cell]!;
    sums[cell] = count > 0 ? sums[cell]! / count : Number.NaN;
    sums[cell + cells] = count > 0 ? sums[cell + cells]! / count : Number.NaN;
  }
  return sums;
}

/** Reserves the frames of some runs of one board. */
export function planFrames(runs: readonly TicketRun[], mostBytes: number): FramePlan {
  const { grid } = runs[0]!.simulation.state;
  const seconds = runs.map((run) => run.scene.segments.reduce((sum, segment) => sum + segment.seconds, 0));
  const { factor, everyS } = frameSize(grid.columns, grid.rows, seconds, mostBytes);
  const frames: RunFrames[] = runs.map(() => ({ times: [], faces: [] }));
  const take = (index: number, atS: number) => {
    frames[index]!.times.push(atS);
    frames[index]!.faces.push(faceMeans(grid, runs[index]!.simulation.state.temperature, factor));
  };
  return {
    grid: {
      columns: Math.ceil(grid.columns / factor),
      rows: Math.ceil(grid.rows / factor),
      cellMm: grid.cellM * factor * 1000,
      originX: grid.originXM * 1000,
      originY: grid.originYM * 1000,
    },
    everyS,
    frames,
    begin(index, origin) {
      const { tracking } = runs[index]!.simulation;
      if (origin === null) return take(index, 0);
      const untilS = tracking.times[tracking.rows - 1]! + 1e-9;
      const earlier = frames[origin]!;
      const count = earlier.times.filter((atS) => atS <= untilS).length;
      frames[index] = { times: earlier.times.slice(0, count), faces: earlier.faces.slice(0, count) };
    },
    nextS: (index) => (Math.floor(frames[index]!.times.at(-1)! / everyS + 1e-6) + 1) * everyS,
    keep: take,
    bytes: () => [...new Set(frames.flatMap((one) => one.faces))].reduce((sum, face) => sum + face.byteLength, 0),
  };
}
