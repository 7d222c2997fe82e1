import { type BodyEntries, buildEntries } from './body-entries.ts';
import { buildGrid, cellAt, columnX, type HeatGrid, rowY } from './grid.ts';
import { buildIdleTable, type IdleTable, idleFilmRows } from './idle-film.ts';
import * as slots from './kernels/assembly/slots.ts';
import { layOut, type Room } from './kernels/room.ts';
import type { LineFactors } from './numerics/line-factors.ts';
import { layOverlays, type Overlays } from './overlay.ts';
import type { HeatScene, SceneBody, ScenePreheater } from './scene.ts';
import { bodyTotals, cellArrays, entryState, keepEntries, kernelTables, trialState } from './state-arrays.ts';

/**
 * Everything a run works on, allocated once. Faces are indexed upper cells first, then lower cells;
 * face arrays reach one row beyond their end so that neighbours may be read without asking.
 */
export type HeatState = {
  grid: HeatGrid;
  entries: BodyEntries;
  idle: IdleTable;
  /** Whole idle film of the board's upper and lower side, one number a row of the idle table. */
  idleUp: Float64Array;
  idleDown: Float64Array;
  roomC: number;
  entrainedC: number;
  boardEmissivity: number;
  /** Heat capacity of one face, J/m2K. */
  faceCapacity: number;
  /** Conductance between the two faces of a cell, W/m2K. */
  through: number;
  /** Lateral conductance per area of a cell to its right and upper neighbour, W/m2K. */
  linkRight: Float64Array;
  linkUp: Float64Array;
  alongRows: LineFactors;
  alongColumns: LineFactors;
  /** 1 where the preheater's zone lies under a cell. */
  zone: Uint8Array;
  sensorFace: number;
  temperature: Float64Array;
  before: Float64Array;
  peak: Float64Array;
  rate: Float64Array;
  /** Film of the bare share (W/m2K), then also what eliminated entries hang on a face. */
  diagonal: Float64Array;
  rowFlow: Float64Array;
  body: EntryState;
  trial: TrialShields;
  totals: BodyTotals;
  tables: KernelTables;
  overlays: Overlays;
  /** Where most of these arrays lie, and what may step them there. */
  room: Room;
};

/** What only the kernels read. */
export type KernelTables = ReturnType<typeof kernelTables>;

/** Default shield of the shadow entries, per entry; resistance -1 where none is asked for. */
export type TrialShields = {
  resistance: Float64Array;
  heat: Float64Array;
  /** Share of the entry's radiation that the shield's outside takes away. */
  dimmed: Float64Array;
};

/** Per body, in the order of the entries: what is folded in while the run goes on. */
export type BodyTotals = {
  /** Sum of its shares. */
  weight: Float64Array;
  mean: Float64Array;
  meanPeak: Float64Array;
  meanPeakS: Float64Array;
  /** Body x way: energy until now, and until the body's peak. */
  energy: Float64Array;
  energyAtPeak: Float64Array;
  /** Channel x body, of the last sub-step, and the temperature of the preheater's source at its end. */
  seriesRow: Float32Array;
  sourceRow: Float32Array;
};

/** Per entry: what changes while the run goes on. */
export type EntryState = {
  temperature: Float64Array;
  before: Float64Array;
  peak: Float64Array;
  peakSkin: Float64Array;
  /** Film before any shield (W/m2K), film times equivalent temperature, and the nozzle's part of the film. */
  film: Float64Array;
  source: Float64Array;
  gasFilm: Float64Array;
  /** Radiation's part of the film: a shiny trial shield cuts it. */
  radiation: Float64Array;
  /** What infrared from above puts in, W/m2: a shiny trial shield cuts it too. */
  irradiated: Float64Array;
  /** Film through the shield, times the area it acts on. */
  outer: Float64Array;
  outerSource: Float64Array;
  inverse: Float64Array;
  rhs: Float64Array;
  /** Skin at the end of a sub-step; kept by the kernels only. */
  skin: Float64Array;
  shadow: Float64Array;
  shadowPeak: Float64Array;
  shadowPeakSkin: Float64Array;
};

/** Marks the cells whose centre lies in the preheater's zone (a border counts as in). */
function markZone(zone: Uint8Array, grid: HeatGrid, preheater: ScenePreheater | null): void {
  if (!preheater) return;
  const angle = (preheater.turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  for (let cell = 0; cell < grid.cellCount; cell++) {
    const dx = columnX(grid, cell % grid.columns) - preheater.xM;
    const dy = rowY(grid, cell) - preheater.yM;
    const inLength = Math.abs(dx * cos + dy * sin) <= preheater.lengthM / 2 + 1e-9;
    const inWidth = Math.abs(-dx * sin + dy * cos) <= preheater.widthM / 2 + 1e-9;
    if (inLength && inWidth && grid.exists[cell]) zone[cell] = 1;
  }
}

/** Lateral conductances per area; none leads over a border of the board. */
function layLinks({ grid, linkRight, linkUp }: HeatState, sheet: number): void {
  const perArea = sheet / grid.cellM ** 2;
  for (let cell = 0; cell < grid.cellCount; cell++) {
    if (!grid.exists[cell]) continue;
    const column = cell % grid.columns;
    if (column + 1 < grid.columns && grid.exists[cell + 1]) linkRight[cell] = perArea;
    if (cell + grid.columns < grid.cellCount && grid.exists[cell + grid.columns]) linkUp[cell] = perArea;
  }
}

/** The trial shields of the bodies that have one, and the weights of all. */
function layBodies({ entries, trial, totals }: HeatState, bodies: readonly SceneBody[]): void {
  const { bodyStart, share } = entries;
  trial.resistance.fill(-1);
  for (let order = 0; order + 1 < bodyStart.length; order++) {
    const { trialShield, metal, shieldResistance, emissivity } = bodies[entries.bodyOfScene[order]!]!;
    for (let entry = bodyStart[order]!; entry < bodyStart[order + 1]!; entry++) {
      totals.weight[order]! += share[entry]!;
      if (!trialShield || metal) continue;
      trial.resistance[entry] = shieldResistance + trialShield.resistance;
      trial.heat[entry] = share[entry]! * trialShield.arealHeat;
      trial.dimmed[entry] = emissivity > 0 ? 1 - trialShield.emissivity / emissivity : 0;
    }
  }
}

/** Everything at room temperature. */
function startAt({ temperature, before, peak, body, totals }: HeatState, roomC: number): void {
  const { temperature: bodyC, before: bodyBefore, peak: bodyPeak, peakSkin, shadow, shadowPeak, shadowPeakSkin } = body;
  for (const array of [temperature, before, peak, bodyC, bodyBefore, bodyPeak]) array.fill(roomC);
  for (const array of [peakSkin, shadow, shadowPeak, shadowPeakSkin, totals.meanPeak]) array.fill(roomC);
}

/** The kernels solve two cells of a line at a time. */
const LEAST_COLUMNS = 2;

/**
 * Allocates a run's state at room temperature.
 * @param steps sub-steps that a script of the kernels' has room for
 * @param plain true: to be stepped in JavaScript, whatever there is
 */
export function createState(scene: HeatScene, cellM: number, steps = 0, plain = false): HeatState {
  const { board } = scene;
  const grid = buildGrid(board, cellM);
  const cut = buildEntries(grid, scene.bodies, scene.workedSide);
  const sensor = scene.preheater?.sensor;
  const idle = buildIdleTable(scene.roomC, grid.plateLengthM, scene.fumeFilm, scene.idleFactor);
  const [idleUp, idleDown] = [true, false].map((looksUp) => idleFilmRows(idle, board.emissivity, looksUp));
  const { arrays, room } = layOut(
    (maker) => ({
      ...cellArrays(maker, grid),
      entries: keepEntries(maker, cut),
      body: entryState(maker, cut.count),
      trial: trialState(maker, cut.count),
      totals: bodyTotals(maker, cut.bodyOfScene.length),
      idleUp: maker.keep(slots.IDLE_UP, idleUp!),
      idleDown: maker.keep(slots.IDLE_DOWN, idleDown!),
      tables: kernelTables(maker, grid, idle, steps),
    }),
    plain || grid.columns < LEAST_COLUMNS,
  );
  const state: HeatState = {
    ...arrays,
    ...{ grid, idle, room, roomC: scene.roomC, entrainedC: scene.entrainedC },
    boardEmissivity: board.emissivity,
    faceCapacity: (board.volumetricHeat * board.thicknessM) / 2,
    through: board.throughPlane / (board.thicknessM / 2),
    sensorFace: sensor ? cellAt(grid, sensor.xM, sensor.yM) + grid.cellCount : -1,
    rowFlow: new Float64Array(grid.columns * 2),
    overlays: layOverlays(arrays.entries, scene.bodies, scene.roomC),
  };
  markZone(state.zone, grid, scene.preheater);
  layLinks(state, (board.inPlane * board.thicknessM) / 2);
  layBodies(state, scene.bodies);
  startAt(state, scene.roomC);
  return state;
}
