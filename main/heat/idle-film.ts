import {
  AIR_HEAT,
  airConductivity,
  airDensity,
  airViscosity,
  GRAVITY,
  STEFAN_BOLTZMANN,
  ZERO_CELSIUS_K,
} from './air.ts';

/** Natural convection never falls below this, W/m2K: no room is perfectly still. */
const LEAST_CONVECTION = 2;

/** Above this Rayleigh number the layer over a hot face looking up is turbulent (McAdams). */
const TURBULENT_RAYLEIGH = 1e7;

/**
 * Natural convection of a horizontal plate, W/m2K (McAdams' correlations, heat-model.md section 3).
 * @param surfaceC surface temperature
 * @param roomC room temperature
 * @param lengthM area / perimeter of the plate
 * @param looksUp whether the surface looks upwards; a surface colder than the room swaps the two laws
 */
export function naturalConvection(surfaceC: number, roomC: number, lengthM: number, looksUp: boolean): number {
  const film = (surfaceC + roomC) / 2 + ZERO_CELSIUS_K;
  const conductivity = airConductivity(film);
  const density = airDensity(film);
  const rayleigh =
    ((GRAVITY / film) * Math.abs(surfaceC - roomC) * lengthM ** 3 * density ** 2 * AIR_HEAT) /
    (airViscosity(film) * conductivity);
  const rises = surfaceC >= roomC === looksUp;
  let nusselt = 0.27 * rayleigh ** 0.25;
  if (rises) nusselt = rayleigh < TURBULENT_RAYLEIGH ? 0.54 * rayleigh ** 0.25 : 0.15 * Math.cbrt(rayleigh);
  return Math.max(LEAST_CONVECTION, (nusselt * conductivity) / lengthM);
}

/** Radiation film of a black surface to the room, W/m2K; times the emissivity for a grey one. */
export function blackRadiation(surfaceC: number, roomC: number): number {
  const surface = surfaceC + ZERO_CELSIUS_K;
  const room = roomC + ZERO_CELSIUS_K;
  return STEFAN_BOLTZMANN * (surface * surface + room * room) * (surface + room);
}

/** Tables of the idle film over temperature, 2 K apart: three numbers a row (convection up, down, black radiation). */
export type IdleTable = {
  firstC: number;
  lastC: number;
  rows: Float64Array;
  /** Largest convection of a surface that looks up: a stronger jet needs no look at the table. */
  mostConvection: number;
};

const TABLE_STEP_K = 2;

/** Rows of the idle table per kelvin. */
export const ROWS_PER_KELVIN = 1 / TABLE_STEP_K;
const TABLE_FIRST_C = -100;
const TABLE_LAST_C = 1300;

/**
 * Tabulates the idle film; `fumeFilm` (W/m2K) is what fume extraction adds to the convection, `factor` multiplies the
 * whole. The table is read by linear interpolation and clamped at its ends.
 */
export function buildIdleTable(roomC: number, lengthM: number, fumeFilm: number, factor = 1): IdleTable {
  const count = (TABLE_LAST_C - TABLE_FIRST_C) / TABLE_STEP_K + 2;
  const rows = new Float64Array(count * 3);
  // Rows are aligned with the room's temperature, where convection has its kink.
  const firstC = roomC + TABLE_STEP_K * Math.floor((TABLE_FIRST_C - roomC) / TABLE_STEP_K);
  for (let row = 0; row < count; row++) {
    const surfaceC = firstC + row * TABLE_STEP_K;
    rows[row * 3] = factor * (naturalConvection(surfaceC, roomC, lengthM, true) + fumeFilm);
    rows[row * 3 + 1] = factor * (naturalConvection(surfaceC, roomC, lengthM, false) + fumeFilm);
    rows[row * 3 + 2] = factor * blackRadiation(surfaceC, roomC);
  }
  const mostConvection = rows.reduce((most, film, place) => (place % 3 === 0 ? Math.max(most, film) : most), 0);
  return { firstC, lastC: firstC + (count - 2) * TABLE_STEP_K, rows, mostConvection };
}

/**
 * Whole idle film (convection and radiation) of a surface of one emissivity, one number a row of the table.
 * @param looksUp whether the surface looks upwards
 */
export function idleFilmRows(table: IdleTable, emissivity: number, looksUp: boolean): Float64Array {
  const whole = new Float64Array(table.rows.length / 3);
  for (let row = 0; row < whole.length; row++) {
    whole[row] = table.rows[row * 3 + (looksUp ? 0 : 1)]! + emissivity * table.rows[row * 3 + 2]!;
  }
  return whole;
}
