import type { HeatState } from './heat-state.ts';
import { ROWS_PER_KELVIN } from './idle-film.ts';
import type { Moment } from './moment.ts';
import type { Footprint } from './nozzle.ts';

function clamped(value: number, least: number, most: number): number {
  if (value < least) return least;
  return Math.min(value, most);
}

/**
 * Films of the bare upper faces, at now x T(n) + earlier x T(n-1): writes diagonal and rate.
 * Where the nozzle's film exceeds idle convection it takes the convection's place; radiation stays.
 */
export function upperFaceFilms(state: HeatState, moment: Moment, now: number, earlier: number): void {
  if (moment.strength > 0 && moment.footprint) blownFaceFilms(state, moment, moment.footprint, now, earlier);
  else idleFaceFilms(state, now, earlier);
}

/**
 * Infrared from above on the bare upper faces: a flux added to their idle film, which already radiates to the room. Grey
 * surfaces: eps sigma (F Ts^4 + (1 - F) Troom^4 - T^4) is the idle exchange plus eps F sigma (Ts^4 - Troom^4).
 * Call after `upperFaceFilms`.
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

/** The same for the entries of the upper side, absorbed by the emissivity of what lies outside. Call after `entryFilms`. */
export function irradiateEntries(state: HeatState, { flux, footprint }: Moment): void {
  const { irradiated, source, gasFilm } = state.body;
  const { upperEnd, cell, emissivity } = state.entries;
  if (flux === 0 || !footprint) {
    irradiated.fill(0);
    return;
  }
  for (let entry = 0; entry < upperEnd; entry++) {
    const absorbed = emissivity[entry]! * flux * footprint.shape[cell[entry]!]!;
    irradiated[entry] = absorbed;
    source[entry]! += absorbed;
    gasFilm[entry] = TRACE;
  }
}

function idleFaceFilms(state: HeatState, now: number, earlier: number): void {
  const { temperature, before, diagonal, rate, idleUp, idle, roomC } = state;
  const { firstC, lastC } = idle;
  const bare = state.entries.bare;
  const cells = state.grid.cellCount;
  for (let cell = 0; cell < cells; cell++) {
    const share = bare[cell]!;
    const here = temperature[cell]!;
    let h = 0;
    if (share > 0) {
      const seen = clamped(now * here + earlier * before[cell]!, firstC, lastC);
      const place = (seen - firstC) * ROWS_PER_KELVIN;
      const row = place | 0;
      const least = idleUp[row]!;
      h = share * (least + (place - row) * (idleUp[row + 1]! - least));
    }
    diagonal[cell] = h;
    rate[cell] = h * (roomC - here);
  }
}

function blownFaceFilms(
  state: HeatState,
  moment: Moment,
  { shape, dilution }: Footprint,
  now: number,
  earlier: number,
): void {
  const { temperature, before, diagonal, rate, idle, roomC, entrainedC, boardEmissivity } = state;
  const { rows, firstC, lastC } = idle;
  const bare = state.entries.bare;
  const strength = moment.strength;
  const excess = moment.gasC - entrainedC;
  const cells = state.grid.cellCount;
  for (let cell = 0; cell < cells; cell++) {
    const share = bare[cell]!;
    const here = temperature[cell]!;
    let h = 0;
    let q = 0;
    if (share > 0) {
      const seen = clamped(now * here + earlier * before[cell]!, firstC, lastC);
      const place = (seen - firstC) * ROWS_PER_KELVIN;
      const whole = place | 0;
      const part = place - whole;
      const row = whole * 3;
      const convection = rows[row]! + part * (rows[row + 3]! - rows[row]!);
      const radiation = boardEmissivity * (rows[row + 2]! + part * (rows[row + 5]! - rows[row + 2]!));
      const jet = strength * shape[cell]!;
      if (jet > convection) {
        h = share * (jet + radiation);
        q = share * (jet * (entrainedC + dilution[cell]! * excess) + radiation * roomC);
      } else {
        h = share * (convection + radiation);
        q = h * roomC;
      }
    }
    diagonal[cell] = h;
    rate[cell] = q - h * here;
  }
}

/**
 * Films of the bare lower faces, as above, and the flow between the two faces of each cell
 * (call after `upperFaceFilms`). In the preheater's zone the idle film gives way to the source's.
 */
export function lowerFaceFilms(state: HeatState, moment: Moment, now: number, earlier: number): void {
  const { temperature, before, diagonal, rate, idle, idleDown, roomC, zone, through } = state;
  const { firstC, lastC } = idle;
  const bare = state.entries.bare;
  const { preheaterFilm, preheaterC } = moment;
  const cells = state.grid.cellCount;
  for (let cell = 0; cell < cells; cell++) {
    const face = cell + cells;
    const share = bare[face]!;
    const here = temperature[face]!;
    let h = 0;
    let q = 0;
    if (zone[cell]) {
      h = share * preheaterFilm;
      q = h * preheaterC;
    } else if (share > 0) {
      const seen = clamped(now * here + earlier * before[face]!, firstC, lastC);
      const place = (seen - firstC) * ROWS_PER_KELVIN;
      const row = place | 0;
      const least = idleDown[row]!;
      h = share * (least + (place - row) * (idleDown[row + 1]! - least));
      q = h * roomC;
    }
    diagonal[face] = h;
    const down = through * (temperature[cell]! - here);
    rate[cell]! -= down;
    rate[face] = q - h * here + down;
  }
}

/**
 * Films of all entries before any shield, at now x T(n) + earlier x T(n-1): writes film, source (film times
 * equivalent temperature), the nozzle's and radiation's parts of the film.
 */
export function entryFilms(state: HeatState, moment: Moment, now: number, earlier: number): void {
  const { entries, body, idle, roomC, entrainedC, zone } = state;
  const { rows, firstC, lastC } = idle;
  const { cell, emissivity, upperEnd, count } = entries;
  const { temperature, before, film, source, gasFilm, radiation: radiated } = body;
  const { gasC, footprint, preheaterFilm, preheaterC } = moment;
  const strength = footprint ? moment.strength : 0;
  const preheaterSource = preheaterFilm * preheaterC;
  for (let entry = 0; entry < count; entry++) {
    const upper = entry < upperEnd;
    const under = cell[entry]!;
    gasFilm[entry] = 0;
    if (!upper && zone[under]) {
      film[entry] = preheaterFilm;
      source[entry] = preheaterSource;
      radiated[entry] = 0;
      continue;
    }
    const seen = clamped(now * temperature[entry]! + earlier * before[entry]!, firstC, lastC);
    const place = (seen - firstC) * ROWS_PER_KELVIN;
    const whole = place | 0;
    const part = place - whole;
    const row = whole * 3;
    const side = upper ? row : row + 1;
    const convection = rows[side]! + part * (rows[side + 3]! - rows[side]!);
    const radiation = emissivity[entry]! * (rows[row + 2]! + part * (rows[row + 5]! - rows[row + 2]!));
    radiated[entry] = radiation;
    const jet = upper && strength > 0 ? strength * footprint!.shape[under]! : 0;
    if (jet > convection) {
      const gas = entrainedC + footprint!.dilution[under]! * (gasC - entrainedC);
      film[entry] = jet + radiation;
      source[entry] = jet * gas + radiation * roomC;
      gasFilm[entry] = jet;
    } else {
      film[entry] = convection + radiation;
      source[entry] = (convection + radiation) * roomC;
    }
  }
}

/** Puts the shields in series with the films and takes the side walls in: writes `outer` and `outerSource`. */
export function shieldEntryFilms(state: HeatState): void {
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
