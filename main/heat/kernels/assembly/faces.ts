import { at, both, count, num } from './access';
import { blend, placeOf, rowBits, zoneMask } from './films';
import {
  BARE,
  BEFORE,
  BOARD_EMISSIVITY,
  CELLS,
  COLUMNS,
  CONVECTION_UP,
  DIAGONAL,
  DILUTION,
  EARLIER,
  ENTRAINED_C,
  FIRST_C,
  FLUX,
  GAS_C,
  HAS_FOOTPRINT,
  IDLE_DOWN,
  IDLE_UP,
  LAST_C,
  LINK_RIGHT,
  LINK_UP,
  MOST_CONVECTION,
  NOW,
  PREHEATER_C,
  PREHEATER_FILM,
  RADIATION,
  RATE,
  ROOM_C,
  SHAPE,
  STRENGTH,
  TEMPERATURE,
  THROUGH,
  ZONE,
  ZONE_MASKS,
} from './slots';

/**
 * What flows along the board into two neighbouring cells of a layer. Links are 0 at the ends of lines, so cells follow each other
 * without rows; a line of cells before and behind the arrays may be read.
 */
@inline
function flowAlong(temperature: usize, line: usize, here: v128, left: v128, right: v128, below: v128, above: v128): v128 {
  const fromLeft = f64x2.mul(left, f64x2.sub(v128.load(temperature - 8), here));
  const toRight = f64x2.mul(right, f64x2.sub(here, v128.load(temperature, 8)));
  const fromBelow = f64x2.mul(below, f64x2.sub(v128.load(temperature - line), here));
  const toAbove = f64x2.mul(above, f64x2.sub(here, v128.load(temperature + line)));
  return f64x2.sub(f64x2.add(f64x2.sub(fromLeft, toRight), fromBelow), toAbove);
}

/**
 * Films of the bare faces at now x T(n) + earlier x T(n-1), the flow between the two faces of each cell and along the board:
 * writes `diagonal` and `rate`. Two cells at a time; nothing that is written is read again, so that the last two may overlap
 * with those before.
 */
export function faceRates(): void {
  const upper = at(TEMPERATURE);
  const before = at(BEFORE);
  const bare = at(BARE);
  const diagonal = at(DIAGONAL);
  const rate = at(RATE);
  const linkRight = at(LINK_RIGHT);
  const linkUp = at(LINK_UP);
  const shape = at(SHAPE);
  const dilution = at(DILUTION);
  const zone = at(ZONE);
  const idleUp = at(IDLE_UP);
  const idleDown = at(IDLE_DOWN);
  const convections = at(CONVECTION_UP);
  const radiations = at(RADIATION);
  const masks = at(ZONE_MASKS);
  const line = count(COLUMNS) << 3;
  const layer = count(CELLS) << 3;
  const end = layer - 16;
  const blown = num(HAS_FOOTPRINT) !== 0 && num(STRENGTH) > 0;
  const excess = f64x2.splat(num(GAS_C) - num(ENTRAINED_C));
  const now = both(NOW);
  const earlier = both(EARLIER);
  const first = both(FIRST_C);
  const last = both(LAST_C);
  const room = both(ROOM_C);
  let o: usize = 0;
  while (true) {
    const here = v128.load(upper + o);
    const place = placeOf(here, v128.load(before + o), now, earlier, first, last);
    const whole = f64x2.floor(place);
    const part = f64x2.sub(place, whole);
    const bits = rowBits(whole);
    const share = v128.load(bare + o);
    let gain: v128;
    if (blown) {
      // Where the nozzle's film exceeds idle convection it takes the convection's place; radiation stays.
      const radiation = f64x2.mul(both(BOARD_EMISSIVITY), blend(radiations, bits, part));
      let film = f64x2.mul(both(STRENGTH), v128.load(shape + o));
      let air = f64x2.add(both(ENTRAINED_C), f64x2.mul(v128.load(dilution + o), excess));
      const weak = f64x2.le(film, both(MOST_CONVECTION));
      if (v128.any_true(weak)) {
        const convection = blend(convections, bits, part);
        const idle = v128.and(weak, f64x2.le(film, convection));
        film = v128.bitselect(convection, film, idle);
        air = v128.bitselect(room, air, idle);
      }
      v128.store(diagonal + o, f64x2.mul(share, f64x2.add(film, radiation)));
      const fromAir = f64x2.mul(film, f64x2.sub(air, here));
      gain = f64x2.mul(share, f64x2.add(fromAir, f64x2.mul(radiation, f64x2.sub(room, here))));
    } else {
      const h = f64x2.mul(share, blend(idleUp, bits, part));
      v128.store(diagonal + o, h);
      gain = f64x2.mul(h, f64x2.sub(room, here));
    }
    // In the preheater's zone the idle film of the lower side gives way to the source's.
    const under = o + layer;
    const lower = v128.load(upper + under);
    const lowerPlace = placeOf(lower, v128.load(before + under), now, earlier, first, last);
    const lowerWhole = f64x2.floor(lowerPlace);
    const idleFilm = blend(idleDown, rowBits(lowerWhole), f64x2.sub(lowerPlace, lowerWhole));
    const heated = zoneMask(masks, load<u16>(zone + (o >> 3)));
    const lowerFilm = v128.bitselect(both(PREHEATER_FILM), idleFilm, heated);
    const lowerAir = v128.bitselect(both(PREHEATER_C), room, heated);
    const h = f64x2.mul(v128.load(bare + under), lowerFilm);
    v128.store(diagonal + under, h);
    const down = f64x2.mul(both(THROUGH), f64x2.sub(here, lower));
    const lowerGain = f64x2.add(f64x2.mul(h, f64x2.sub(lowerAir, lower)), down);
    const left = v128.load(linkRight + o - 8);
    const right = v128.load(linkRight + o);
    const below = v128.load(linkUp + o - line);
    const above = v128.load(linkUp + o);
    const flow = flowAlong(upper + o, line, here, left, right, below, above);
    v128.store(rate + o, f64x2.add(f64x2.sub(gain, down), flow));
    const lowerFlow = flowAlong(upper + under, line, lower, left, right, below, above);
    v128.store(rate + under, f64x2.add(lowerGain, lowerFlow));
    if (o >= end) break;
    o += 16;
    if (o > end) o = end;
  }
  if (num(HAS_FOOTPRINT) !== 0 && num(FLUX) !== 0) irradiateFaces();
}

/** Infrared from above on the bare upper faces (`surface-films.ts`). */
function irradiateFaces(): void {
  const rate = at(RATE);
  const bare = at(BARE);
  const shape = at(SHAPE);
  const emissivity = num(BOARD_EMISSIVITY);
  const flux = num(FLUX);
  const end = count(CELLS) << 3;
  for (let o: usize = 0; o < end; o += 8) {
    const absorbed = load<f64>(bare + o) * emissivity * flux * load<f64>(shape + o);
    store<f64>(rate + o, load<f64>(rate + o) + absorbed);
  }
}
