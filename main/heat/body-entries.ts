import { forEachCovered, planMeasures } from './coverage.ts';
import type { HeatGrid } from './grid.ts';
import type { SceneBody } from './scene.ts';
import { findUnderCovers, type UnderCovers } from './under-covers.ts';

/** How much of a side wall's film a body sees on top of its plan area (assumption of the model). */
const SIDE_WALL_SHARE = 0.5;

/**
 * Bodies cut into entries (body, cell, share), as structure of arrays. Entries lie in the order
 * upper plain bodies, upper metal, lower metal, lower plain: each film loop and the metal solve see one range.
 * All conductances and capacities are per area of a cell.
 */
export type BodyEntries = {
  count: number;
  /** Entries of the upper side are [0, upperEnd). */
  upperEnd: number;
  metalStart: number;
  metalEnd: number;
  /** Index of the face under the entry: the cell, plus the number of cells for the lower side. */
  face: Int32Array;
  cell: Int32Array;
  share: Float64Array;
  capacity: Float64Array;
  joint: Float64Array;
  /** Share for the film (scaled where shares of a cell exceed 1) times the side-wall factor. */
  filmArea: Float64Array;
  resistance: Float64Array;
  emissivity: Float64Array;
  /** 3 k / height of the body: the conductance between its mean and its skin. */
  skinConductance: Float64Array;
  /** Per ordered body: first entry; one more at the end. */
  bodyStart: Int32Array;
  /** Per ordered body: index in the scene's list. */
  bodyOfScene: Int32Array;
  /** Scene indices of bodies that cover no cell. */
  offBoard: number[];
  /** Share of each face (upper cells, then lower cells) that no body covers. */
  bare: Float64Array;
  /** Entries that stand under a can. */
  under: UnderCovers;
};

function rank(body: SceneBody, workedSide: string): number {
  const upper = body.side === workedSide;
  if (upper) return body.metal ? 1 : 0;
  return body.metal ? 2 : 3;
}

type Covered = { index: number; cells: number[]; shares: number[]; wallShares: number[] };

function coverBodies(grid: HeatGrid, bodies: readonly SceneBody[], workedSide: string): Covered[] {
  const covered = bodies.map((body, index) => {
    const item: Covered = { index, cells: [], shares: [], wallShares: [] };
    forEachCovered(grid, body, (cell, share, wallShare) => {
      item.cells.push(cell);
      item.shares.push(share);
      item.wallShares.push(wallShare);
    });
    return item;
  });
  const onBoard = covered.filter((item) => item.cells.length > 0);
  return onBoard.sort(
    (left, right) =>
      rank(bodies[left.index]!, workedSide) - rank(bodies[right.index]!, workedSide) || left.index - right.index,
  );
}

const none = { ints: new Int32Array(0), floats: new Float64Array(0) };
const NOTHING_UNDER: UnderCovers = {
  count: 0,
  entry: none.ints,
  cover: none.ints,
  share: none.floats,
  film: none.floats,
};

function allocate(count: number, bodyCount: number, faceCount: number): BodyEntries {
  const floats = () => new Float64Array(count);
  return {
    count,
    upperEnd: 0,
    metalStart: 0,
    metalEnd: 0,
    face: new Int32Array(count),
    cell: new Int32Array(count),
    share: floats(),
    capacity: floats(),
    joint: floats(),
    filmArea: floats(),
    resistance: floats(),
    emissivity: floats(),
    skinConductance: floats(),
    bodyStart: new Int32Array(bodyCount + 1),
    bodyOfScene: new Int32Array(bodyCount),
    offBoard: [],
    bare: new Float64Array(faceCount),
    under: NOTHING_UNDER,
  };
}

/** A can is joined under its wall and sees the board through air elsewhere; all others are joined evenly. */
function jointOf(body: SceneBody, share: number, wallShare: number): number {
  if (body.shape !== 'can') return share * body.jointConductance;
  return wallShare * body.jointConductance + (share - wallShare) * body.gapConductance;
}

/** Writes the entries of one body from index `first` on. */
function writeBody(entries: BodyEntries, first: number, item: Covered, body: SceneBody, faceOffset: number): void {
  const plan = planMeasures(body);
  const sideFactor = 1 + (SIDE_WALL_SHARE * plan.perimeterM * body.heightM) / plan.areaM2;
  item.cells.forEach((cell, position) => {
    const entry = first + position;
    const share = item.shares[position]!;
    entries.cell[entry] = cell;
    entries.face[entry] = cell + faceOffset;
    entries.share[entry] = share;
    entries.capacity[entry] = share * (body.heightM * body.volumetricHeat + body.shieldArealHeat);
    entries.joint[entry] = jointOf(body, share, item.wallShares[position]!);
    entries.filmArea[entry] = share * sideFactor;
    entries.resistance[entry] = body.shieldResistance;
    entries.emissivity[entry] = body.emissivity;
    entries.skinConductance[entry] = (3 * body.conductivity) / body.heightM;
  });
}

/** Bare share of every face; film areas of entries are scaled where bodies overlap. */
function settleShares(entries: BodyEntries, grid: HeatGrid): void {
  const sums = new Float64Array(entries.bare.length);
  for (let entry = 0; entry < entries.count; entry++) sums[entries.face[entry]!]! += entries.share[entry]!;
  for (let face = 0; face < sums.length; face++) {
    entries.bare[face] = grid.exists[face % grid.cellCount] ? Math.max(0, 1 - sums[face]!) : 0;
  }
  // A can and what stands under it do not share the open side: each keeps its own surface.
  const { under } = entries;
  for (let row = 0; row < under.count; row++) {
    const entry = under.entry[row]!;
    sums[entries.face[entry]!]! -= entries.share[entry]! * under.share[row]!;
  }
  for (let entry = 0; entry < entries.count; entry++) {
    const sum = sums[entries.face[entry]!]!;
    if (sum > 1) entries.filmArea[entry]! /= sum;
  }
}

/** Cuts the bodies of a scene into entries over a grid (heat-model.md, section 2). */
export function buildEntries(grid: HeatGrid, bodies: readonly SceneBody[], workedSide: string): BodyEntries {
  const covered = coverBodies(grid, bodies, workedSide);
  const count = covered.reduce((sum, item) => sum + item.cells.length, 0);
  const entries = allocate(count, covered.length, grid.cellCount * 2);
  let next = 0;
  const endOf = [0, 0, 0, 0];
  covered.forEach((item, order) => {
    const body = bodies[item.index]!;
    const place = rank(body, workedSide);
    entries.bodyStart[order] = next;
    entries.bodyOfScene[order] = item.index;
    writeBody(entries, next, item, body, place < 2 ? 0 : grid.cellCount);
    next += item.cells.length;
    for (let later = place; later < 4; later++) endOf[later] = next;
  });
  entries.bodyStart[covered.length] = next;
  entries.metalStart = endOf[0]!;
  entries.upperEnd = endOf[1]!;
  entries.metalEnd = endOf[2]!;
  const placed = new Set(covered.map((item) => item.index));
  entries.offBoard = bodies.map((_, index) => index).filter((index) => !placed.has(index));
  entries.under = findUnderCovers(entries, bodies);
  settleShares(entries, grid);
  return entries;
}
