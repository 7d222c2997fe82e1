import { type BodyEntries, buildEntries } from './body-entries.ts';
import { buildGrid, cellAt, columnX, type HeatGrid, rowY } from './grid.ts';
import { buildIdleTable, type IdleTable, idleFilmRows } from './idle-film.ts';
import { allocateFactors, type LineFactors } from './numerics/line-factors.ts';
import { layOverlays, type Overlays } from './overlay.ts';
import type { HeatScene, ScenePreheater } from './scene.ts';

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
  overlays: Overlays;
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
  shadow: Float64Array;
  shadowPeak: Float64Array;
  shadowPeakSkin: Float64Array;
};

function entryState(count: number, startC: number): EntryState {
  const zeros = () => new Float64Array(count);
  const start = () => new Float64Array(count).fill(startC);
  return {
    temperature: start(),
    before: start(),
    peak: start(),
    peakSkin: start(),
    film: zeros(),
    source: zeros(),
    gasFilm: zeros(),
    radiation: zeros(),
    irradiated: zeros(),
    outer: zeros(),
    outerSource: zeros(),
    inverse: zeros(),
    rhs: zeros(),
    shadow: start(),
    shadowPeak: start(),
    shadowPeakSkin: start(),
  };
}

/** Marks the cells whose centre lies in the preheater's zone (a border counts as in). */
export function zoneOf(grid: HeatGrid, preheater: ScenePreheater | null): Uint8Array {
  const zone = new Uint8Array(grid.cellCount);
  if (!preheater) return zone;
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
  return zone;
}

/** Lateral conductances per area; none leads over a border of the board. */
function links(grid: HeatGrid, sheet: number): { linkRight: Float64Array; linkUp: Float64Array } {
  const linkRight = new Float64Array(grid.cellCount);
  const linkUp = new Float64Array(grid.cellCount);
  const perArea = sheet / grid.cellM ** 2;
  for (let cell = 0; cell < grid.cellCount; cell++) {
    if (!grid.exists[cell]) continue;
    const column = cell % grid.columns;
    if (column + 1 < grid.columns && grid.exists[cell + 1]) linkRight[cell] = perArea;
    if (cell + grid.columns < grid.cellCount && grid.exists[cell + grid.columns]) linkUp[cell] = perArea;
  }
  return { linkRight, linkUp };
}

/** Allocates a run's state at room temperature. */
export function createState(scene: HeatScene, cellM: number): HeatState {
  const { board } = scene;
  const grid = buildGrid(board, cellM);
  const entries = buildEntries(grid, scene.bodies, scene.workedSide);
  const faces = grid.cellCount * 2 + grid.columns + 1;
  const start = () => new Float64Array(faces).fill(scene.roomC);
  const zeros = () => new Float64Array(faces);
  const sensor = scene.preheater?.sensor;
  const idle = buildIdleTable(scene.roomC, grid.plateLengthM, scene.fumeFilm, scene.idleFactor);
  return {
    grid,
    entries,
    idle,
    idleUp: idleFilmRows(idle, board.emissivity, true),
    idleDown: idleFilmRows(idle, board.emissivity, false),
    roomC: scene.roomC,
    entrainedC: scene.entrainedC,
    boardEmissivity: board.emissivity,
    faceCapacity: (board.volumetricHeat * board.thicknessM) / 2,
    through: board.throughPlane / (board.thicknessM / 2),
    ...links(grid, (board.inPlane * board.thicknessM) / 2),
    alongRows: allocateFactors(grid.cellCount),
    alongColumns: allocateFactors(grid.cellCount),
    zone: zoneOf(grid, scene.preheater),
    sensorFace: sensor ? cellAt(grid, sensor.xM, sensor.yM) + grid.cellCount : -1,
    temperature: start(),
    before: start(),
    peak: start(),
    rate: zeros(),
    diagonal: zeros(),
    rowFlow: new Float64Array(grid.columns * 2),
    body: entryState(entries.count, scene.roomC),
    overlays: layOverlays(entries, scene.bodies, scene.roomC),
  };
}
