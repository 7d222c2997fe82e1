import type { HeatState } from './heat-state.ts';
import { ROWS_PER_KELVIN } from './idle-film.ts';
import type { Moment } from './moment.ts';
import type { Footprint } from './nozzle.ts';
import { exchangeUnderCovers, filmsUnderCovers } from './under-covers.ts';

function clamped(value: number, least: number, most: number): number {
  if (value < least) return least;
  return Math.min(value, most);
}

/**
 * Infrared from above on the bare upper faces: a flux added to their idle film, which already radiates to the room. Grey
 * surfaces: eps sigma (F Ts^4 + (1 - F) Troom^4 - T^4) is the idle exchange plus eps F sigma (Ts^4 - Troom^4).
 * Call after `faceRates`.
 */
export function irradiateFaces(state: HeatState, { flux, footprint }: Moment): void {
  if (flux === 0 || !footprint) return;
  const { rate, entries, boardEmissivity } = state;
  const cells = state.grid.cellCount;
  for (let cell = 0; cell < cells; cell++) {
    rate[cell]! += entries.bare[cell]! * boardEmissivity * flux * footprint.shape[cell]!;
  }
}

/** A trace of film that says the heat came from above: how the ways of a body's heat are told apart. */
const TRACE = 1e-12;

/** The same for the entries of the upper side, absorbed by the emissivity of what lies outside. */
function irradiateEntries(state: HeatState, { flux }: Moment, { shape }: Footprint): void {
  const { irradiated, source, gasFilm } = state.body;
  const { upperEnd, cell, emissivity } = state.entries;
  for (let entry = 0; entry < upperEnd; entry++) {
    const absorbed = emissivity[entry]! * flux * shape[cell[entry]!]!;
    irradiated[entry] = absorbed;
    source[entry]! += absorbed;
    gasFilm[entry] = TRACE;
  }
}

/**
 * Films of all entries before any shield, at now x T(n) + earlier x T(n-1): writes film, source (film times
 * equivalent temperature), the nozzle's and radiation's parts of the film; then, shields put in series and side walls
 * taken in, `outer` and `outerSource`.
 */
export function entryFilms(state: HeatState, moment: Moment, now: number, earlier: number): void {
  const { upperEnd, count } = state.entries;
  if (moment.footprint && moment.strength > 0) blownEntryFilms(state, moment, moment.footprint, now, earlier);
  else idleEntryFilms(state, 0, upperEnd, 0, now, earlier);
  if (moment.footprint && moment.flux !== 0) irradiateEntries(state, moment, moment.footprint);
  else state.body.irradiated.fill(0);
  idleEntryFilms(state, upperEnd, count, 1, now, earlier);
  heatedEntryFilms(state, moment);
  filmsUnderCovers(state, now, earlier);
  shieldEntryFilms(state);
  exchangeUnderCovers(state, now, earlier);
}

/** @param side 0 for entries that look upwards, 1 for those that look down */
function idleEntryFilms(state: HeatState, first: number, end: number, side: 0 | 1, now: number, earlier: number): void {
  const { entries, body, idle, roomC } = state;
  const { rows, firstC, lastC } = idle;
  const { emissivity } = entries;
  const { temperature, before, film, source, gasFilm, radiation: radiated } = body;
  for (let entry = first; entry < end; entry++) {
    const seen = clamped(now * temperature[entry]! + earlier * before[entry]!, firstC, lastC);
    const place = (seen - firstC) * ROWS_PER_KELVIN;
    const whole = place | 0;
    const part = place - whole;
    const row = whole * 3;
    const least = rows[row + side]!;
    const leastRadiation = rows[row + 2]!;
    const radiation = emissivity[entry]! * (leastRadiation + part * (rows[row + 5]! - leastRadiation));
    const both = least + part * (rows[row + side + 3]! - least) + radiation;
    radiated[entry] = radiation;
    film[entry] = both;
    source[entry] = both * roomC;
    gasFilm[entry] = 0;
  }
}

/** Entries of the upper side under the nozzle: where its film exceeds idle convection it takes the convection's place. */
function blownEntryFilms(state: HeatState, moment: Moment, footprint: Footprint, now: number, earlier: number): void {
  const { entries, body, idle, roomC, entrainedC } = state;
  const { rows, firstC, lastC } = idle;
  const { cell, emissivity, upperEnd } = entries;
  const { temperature, before, film, source, gasFilm, radiation: radiated } = body;
  const { shape, dilution } = footprint;
  const { strength } = moment;
  const excess = moment.gasC - entrainedC;
  for (let entry = 0; entry < upperEnd; entry++) {
    const seen = clamped(now * temperature[entry]! + earlier * before[entry]!, firstC, lastC);
    const place = (seen - firstC) * ROWS_PER_KELVIN;
    const whole = place | 0;
    const part = place - whole;
    const row = whole * 3;
    const leastRadiation = rows[row + 2]!;
    const radiation = emissivity[entry]! * (leastRadiation + part * (rows[row + 5]! - leastRadiation));
    const convection = rows[row]! + part * (rows[row + 3]! - rows[row]!);
    radiated[entry] = radiation;
    const under = cell[entry]!;
    const jet = strength * shape[under]!;
    if (jet > convection) {
      film[entry] = jet + radiation;
      source[entry] = jet * (entrainedC + dilution[under]! * excess) + radiation * roomC;
      gasFilm[entry] = jet;
    } else {
      film[entry] = convection + radiation;
      source[entry] = (convection + radiation) * roomC;
      gasFilm[entry] = 0;
    }
  }
}

/** Entries of the lower side in the preheater's zone: the source's film takes the whole idle film's place. */
function heatedEntryFilms({ entries, zone, body }: HeatState, { preheaterFilm, preheaterC }: Moment): void {
  const { film, source, radiation } = body;
  const { cell, upperEnd, count } = entries;
  const preheaterSource = preheaterFilm * preheaterC;
  for (let entry = upperEnd; entry < count; entry++) {
    if (zone[cell[entry]!] === 0) continue;
    film[entry] = preheaterFilm;
    source[entry] = preheaterSource;
    radiation[entry] = 0;
  }
}

/** Puts the shields in series with the films and takes the side walls in: writes `outer` and `outerSource`. */
function shieldEntryFilms(state: HeatState): void {
  const { entries, body } = state;
  const { resistance, filmArea, count } = entries;
  const { film, source, outer, outerSource } = body;
  for (let entry = 0; entry < count; entry++) {
    const r = resistance[entry]!;
    const scale = r > 0 ? filmArea[entry]! / (1 + film[entry]! * r) : filmArea[entry]!;
    outer[entry] = film[entry]! * scale;
    outerSource[entry] = source[entry]! * scale;
  }
}

/**
 * Takes the entries' films from the middle of the sub-step to its end, where skins are judged: gas, emitter and preheater
 * have gone on along their ramps. Convection and radiation stay as taken ahead to the middle (looked up again they move
 * no skin of the worked cases by more than 0.01 K). For those who look at a finished sub-step only.
 */
export function filmsAtEnd(state: HeatState, moment: Moment): void {
  const { entries, body, entrainedC, zone } = state;
  const { cell, emissivity, upperEnd, count } = entries;
  const { film, source, gasFilm, irradiated } = body;
  const { strength, strengthAtEnd, gasC, gasAtEndC, flux, fluxAtEnd, footprint, preheaterFilm, sourceC } = moment;
  if (footprint && strength > 0 && (strengthAtEnd !== strength || gasAtEndC !== gasC)) {
    const rise = strengthAtEnd / strength;
    for (let entry = 0; entry < upperEnd; entry++) {
      const jet = gasFilm[entry]!;
      if (jet === 0) continue;
      const dilution = footprint.dilution[cell[entry]!]!;
      const after = jet * rise;
      film[entry]! += after - jet;
      source[entry]! += after * (entrainedC + dilution * (gasAtEndC - entrainedC));
      source[entry]! -= jet * (entrainedC + dilution * (gasC - entrainedC));
    }
  }
  if (footprint && fluxAtEnd !== flux && flux > 0) {
    for (let entry = 0; entry < upperEnd; entry++) {
      const more = emissivity[entry]! * (fluxAtEnd - flux) * footprint.shape[cell[entry]!]!;
      irradiated[entry]! += more;
      source[entry]! += more;
    }
  }
  const preheaterSource = preheaterFilm * sourceC;
  for (let entry = upperEnd; entry < count; entry++) if (zone[cell[entry]!]) source[entry] = preheaterSource;
}
