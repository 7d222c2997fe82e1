import type { BodyEntries } from './body-entries.ts';
import type { HeatGrid } from './grid.ts';
import type { BodyTotals, EntryState, TrialShields } from './heat-state.ts';
import type { IdleTable } from './idle-film.ts';
import * as slots from './kernels/assembly/slots.ts';
import type { ArrayMaker } from './kernels/room.ts';

/** Ways that energy comes into a body: gas, preheater, joints, losses (J/m2 of cell, times cells). */
export const WAYS = 4;

/** Numbers kept for a body at the end of each sub-step: hottest body, hottest skin, hottest and coldest face under it. */
export const CHANNELS = 4;

/** Arrays of the entries that change while the run goes on. */
export function entryState({ floats }: ArrayMaker, count: number): EntryState {
  const one = (slot: number) => floats(slot, count);
  return {
    temperature: one(slots.ENTRY_TEMPERATURE),
    before: one(slots.ENTRY_BEFORE),
    peak: one(slots.ENTRY_PEAK),
    peakSkin: one(slots.PEAK_SKIN),
    film: one(slots.FILM),
    source: one(slots.SOURCE),
    gasFilm: one(slots.GAS_FILM),
    radiation: one(slots.ENTRY_RADIATION),
    irradiated: one(slots.IRRADIATED),
    outer: one(slots.OUTER),
    outerSource: one(slots.OUTER_SOURCE),
    inverse: one(slots.INVERSE),
    rhs: one(slots.ENTRY_RHS),
    skin: one(slots.SKIN),
    shadow: one(slots.SHADOW),
    shadowPeak: one(slots.SHADOW_PEAK),
    shadowPeakSkin: one(slots.SHADOW_PEAK_SKIN),
  };
}

export function trialState({ floats }: ArrayMaker, count: number): TrialShields {
  return {
    resistance: floats(slots.TRIAL_RESISTANCE, count),
    heat: floats(slots.TRIAL_HEAT, count),
    dimmed: floats(slots.TRIAL_DIMMED, count),
  };
}

export function bodyTotals({ floats, singles }: ArrayMaker, bodies: number): BodyTotals {
  return {
    weight: floats(slots.WEIGHTS, bodies),
    mean: floats(slots.MEANS, bodies),
    meanPeak: floats(slots.MEAN_PEAK, bodies),
    meanPeakS: floats(slots.MEAN_PEAK_S, bodies),
    energy: floats(slots.ENERGY, bodies * WAYS),
    energyAtPeak: floats(slots.ENERGY_AT_PEAK, bodies * WAYS),
    seriesRow: singles(slots.SERIES_ROW, bodies * CHANNELS),
    sourceRow: singles(slots.SOURCE_ROW, 1),
  };
}

/** The entries' arrays that the steps read, where the kernels find them. */
export function keepEntries({ keep }: ArrayMaker, entries: BodyEntries): BodyEntries {
  return {
    ...entries,
    face: keep(slots.FACE, entries.face),
    cell: keep(slots.CELL, entries.cell),
    share: keep(slots.SHARE, entries.share),
    capacity: keep(slots.ENTRY_CAPACITY, entries.capacity),
    joint: keep(slots.JOINT, entries.joint),
    filmArea: keep(slots.FILM_AREA, entries.filmArea),
    resistance: keep(slots.RESISTANCE, entries.resistance),
    emissivity: keep(slots.EMISSIVITY, entries.emissivity),
    skinConductance: keep(slots.SKIN_CONDUCTANCE, entries.skinConductance),
    bodyStart: keep(slots.BODY_START, entries.bodyStart),
    bare: keep(slots.BARE, entries.bare),
  };
}

/** The arrays of faces and cells. A line of cells before them may be read: links there are 0. */
export function cellArrays({ floats, bytes }: ArrayMaker, { cellCount, columns }: HeatGrid) {
  const faces = cellCount * 2 + columns + 1;
  const line = columns + 1;
  const layer = (slot: number) => floats(slot, cellCount);
  return {
    linkRight: floats(slots.LINK_RIGHT, cellCount, line),
    linkUp: floats(slots.LINK_UP, cellCount, line),
    alongRows: {
      inverse: layer(slots.ROW_INVERSE),
      back: layer(slots.ROW_BACK),
      ahead: layer(slots.ROW_AHEAD),
    },
    alongColumns: {
      inverse: layer(slots.COLUMN_INVERSE),
      back: layer(slots.COLUMN_BACK),
      ahead: layer(slots.COLUMN_AHEAD),
    },
    zone: bytes(slots.ZONE, cellCount),
    temperature: floats(slots.TEMPERATURE, faces, line),
    before: floats(slots.BEFORE, faces),
    peak: floats(slots.PEAK, faces),
    rate: floats(slots.RATE, faces, line),
    diagonal: floats(slots.DIAGONAL, faces),
  };
}

/** What only the kernels read: the idle table by figure, masks for the zone, the footprint that blows, the script of the run. */
export function kernelTables(
  { floats, keep }: ArrayMaker,
  { cellCount }: HeatGrid,
  { rows }: IdleTable,
  steps: number,
) {
  const all = 0xffffffff;
  const inZone = Uint32Array.of(0, 0, 0, 0, all, all, 0, 0, 0, 0, all, all, all, all, all, all);
  return {
    convectionUp: floats(slots.CONVECTION_UP, rows.length / 3),
    convectionDown: floats(slots.CONVECTION_DOWN, rows.length / 3),
    radiation: floats(slots.RADIATION, rows.length / 3),
    zoneMasks: keep(slots.ZONE_MASKS, Int32Array.from(inZone)),
    shape: floats(slots.SHAPE, cellCount),
    dilution: floats(slots.DILUTION, cellCount),
    script: floats(slots.SCRIPT, steps * slots.SCRIPT_ROW),
  };
}
