import type { HeatState } from './heat-state.ts';
import { ROWS_PER_KELVIN } from './idle-film.ts';
import type { Moment } from './moment.ts';
import type { Footprint } from './nozzle.ts';
import { addLateralRow } from './numerics/lateral-flow.ts';

/**
 * Films of the bare faces at now x T(n) + earlier x T(n-1), the flow between the two faces of each cell and along the
 * board: writes `diagonal` (the bare films) and `rate`. Row by row, so that what one loop writes the next still finds near.
 */
export function faceRates(state: HeatState, moment: Moment, now: number, earlier: number): void {
  const { grid, rowFlow, temperature, rate, linkRight, linkUp } = state;
  const { columns, cellCount } = grid;
  const { footprint, strength } = moment;
  rowFlow.fill(0);
  for (let row = 0; row < grid.rows; row++) {
    const first = row * columns;
    const end = first + columns;
    if (footprint && strength > 0) blownFilms(state, moment, footprint, first, end, now, earlier);
    else idleFilms(state, first, end, now, earlier);
    lowerFilms(state, moment, first, end, now, earlier);
    addLateralRow(rate, temperature, cellCount, columns, first, linkRight, linkUp, rowFlow);
  }
}

function idleFilms(state: HeatState, first: number, end: number, now: number, earlier: number): void {
  const { temperature, before, diagonal, rate, idleUp, idle, roomC } = state;
  const { firstC, lastC } = idle;
  const bare = state.entries.bare;
  for (let cell = first; cell < end; cell++) {
    const here = temperature[cell]!;
    let ahead = now * here + earlier * before[cell]!;
    if (ahead < firstC) ahead = firstC;
    else if (ahead > lastC) ahead = lastC;
    const place = (ahead - firstC) * ROWS_PER_KELVIN;
    const row = place | 0;
    const least = idleUp[row]!;
    const h = bare[cell]! * (least + (place - row) * (idleUp[row + 1]! - least));
    diagonal[cell] = h;
    rate[cell] = h * (roomC - here);
  }
}

/** Where the nozzle's film exceeds idle convection it takes the convection's place; radiation stays. */
function blownFilms(
  state: HeatState,
  moment: Moment,
  { shape, dilution }: Footprint,
  first: number,
  end: number,
  now: number,
  earlier: number,
): void {
  const { temperature, before, diagonal, rate, idle, roomC, entrainedC, boardEmissivity } = state;
  const { rows, firstC, lastC, mostConvection } = idle;
  const bare = state.entries.bare;
  const strength = moment.strength;
  const excess = moment.gasC - entrainedC;
  for (let cell = first; cell < end; cell++) {
    const here = temperature[cell]!;
    let ahead = now * here + earlier * before[cell]!;
    if (ahead < firstC) ahead = firstC;
    else if (ahead > lastC) ahead = lastC;
    const place = (ahead - firstC) * ROWS_PER_KELVIN;
    const whole = place | 0;
    const part = place - whole;
    const row = whole * 3;
    const radiation = boardEmissivity * (rows[row + 2]! + part * (rows[row + 5]! - rows[row + 2]!));
    const share = bare[cell]!;
    let film = strength * shape[cell]!;
    let airC = entrainedC + dilution[cell]! * excess;
    if (film <= mostConvection) {
      const convection = rows[row]! + part * (rows[row + 3]! - rows[row]!);
      if (film <= convection) {
        film = convection;
        airC = roomC;
      }
    }
    const h = share * (film + radiation);
    diagonal[cell] = h;
    rate[cell] = share * (film * (airC - here) + radiation * (roomC - here));
  }
}

/** In the preheater's zone the idle film of the lower side gives way to the source's. */
function lowerFilms(
  state: HeatState,
  { preheaterFilm, preheaterC }: Moment,
  first: number,
  end: number,
  now: number,
  earlier: number,
): void {
  const { temperature, before, diagonal, rate, idle, idleDown, roomC, zone, through, grid } = state;
  const { firstC, lastC } = idle;
  const bare = state.entries.bare;
  const cells = grid.cellCount;
  for (let cell = first; cell < end; cell++) {
    const face = cell + cells;
    const here = temperature[face]!;
    let film = preheaterFilm;
    let airC = preheaterC;
    if (zone[cell] === 0) {
      let ahead = now * here + earlier * before[face]!;
      if (ahead < firstC) ahead = firstC;
      else if (ahead > lastC) ahead = lastC;
      const place = (ahead - firstC) * ROWS_PER_KELVIN;
      const row = place | 0;
      const least = idleDown[row]!;
      film = least + (place - row) * (idleDown[row + 1]! - least);
      airC = roomC;
    }
    const h = bare[face]! * film;
    diagonal[face] = h;
    const down = through * (temperature[cell]! - here);
    rate[cell]! -= down;
    rate[face] = h * (airC - here) + down;
  }
}
