import { at, both, count, num, pair } from './access';
import { blend, placeOf, rowBits, zoneMask } from './films';
import {
  CELL,
  CONVECTION_DOWN,
  CONVECTION_UP,
  COUNT,
  DILUTION,
  EARLIER,
  EMISSIVITY,
  ENTRAINED_C,
  ENTRY_BEFORE,
  ENTRY_RADIATION,
  ENTRY_TEMPERATURE,
  FILM,
  FILM_AREA,
  FIRST_C,
  FLUX,
  GAS_C,
  GAS_FILM,
  HAS_COVERS,
  HAS_FOOTPRINT,
  IRRADIATED,
  LAST_C,
  NOW,
  OUTER,
  OUTER_SOURCE,
  PREHEATER_C,
  PREHEATER_FILM,
  RADIATION,
  RESISTANCE,
  ROOM_C,
  SHAPE,
  SHIELDS_AT_ONCE,
  SOURCE,
  STRENGTH,
  UPPER_END,
  ZONE,
  ZONE_MASKS,
} from './slots';

/** A trace of film that says the heat came from above (`surface-films.ts`). */
const TRACE: f64 = 1e-12;

/** Puts the shields of two entries in series with their films and takes the side walls in. */
@inline
function shield(resistance: v128, area: v128, film: v128, source: v128, outer: usize, outerSource: usize): void {
  let scale = area;
  // Without a shield the division would be by 1.
  if (v128.any_true(f64x2.gt(resistance, f64x2.splat(0)))) {
    scale = f64x2.div(area, f64x2.add(f64x2.splat(1), f64x2.mul(film, resistance)));
  }
  v128.store(outer, f64x2.mul(film, scale));
  v128.store(outerSource, f64x2.mul(source, scale));
}

/**
 * Films of the entries from `from` to `to` on one side of the board, two at a time. Nothing that is written is read again: the last two
 * may overlap with those before, and an entry that is alone writes its neighbour's, which comes later or is room to spare.
 */
@inline
function films(from: usize, to: usize, isUpper: bool): void {
  if (from >= to) return;
  const temperature = at(ENTRY_TEMPERATURE);
  const before = at(ENTRY_BEFORE);
  const emissivity = at(EMISSIVITY);
  const cell = at(CELL);
  const films = at(FILM);
  const sources = at(SOURCE);
  const gasFilm = at(GAS_FILM);
  const radiated = at(ENTRY_RADIATION);
  const resistance = at(RESISTANCE);
  const filmArea = at(FILM_AREA);
  const outer = at(OUTER);
  const outerSource = at(OUTER_SOURCE);
  const shape = at(SHAPE);
  const dilution = at(DILUTION);
  const zone = at(ZONE);
  const masks = at(ZONE_MASKS);
  const convections = at(isUpper ? CONVECTION_UP : CONVECTION_DOWN);
  const radiations = at(RADIATION);
  const now = both(NOW);
  const earlier = both(EARLIER);
  const first = both(FIRST_C);
  const last = both(LAST_C);
  const room = both(ROOM_C);
  const blown = isUpper && num(HAS_FOOTPRINT) !== 0 && num(STRENGTH) > 0;
  const atOnce = num(SHIELDS_AT_ONCE) !== 0;
  const excess = f64x2.splat(num(GAS_C) - num(ENTRAINED_C));
  const heated = f64x2.splat(num(PREHEATER_FILM));
  const heatedSource = f64x2.splat(num(PREHEATER_FILM) * num(PREHEATER_C));
  const zero = f64x2.splat(0);
  const end = to - from > 1 ? (to << 3) - 16 : from << 3;
  let o = from << 3;
  while (true) {
    const place = placeOf(v128.load(temperature + o), v128.load(before + o), now, earlier, first, last);
    const whole = f64x2.floor(place);
    const part = f64x2.sub(place, whole);
    const bits = rowBits(whole);
    let radiation = f64x2.mul(v128.load(emissivity + o), blend(radiations, bits, part));
    const convection = blend(convections, bits, part);
    let film = f64x2.add(convection, radiation);
    let source = f64x2.mul(film, room);
    let jetFilm = zero;
    const a = <usize>load<u32>(cell + (o >> 1));
    const b = <usize>load<u32>(cell + (o >> 1), 4);
    if (blown) {
      const jet = f64x2.mul(both(STRENGTH), pair(shape + (a << 3), shape + (b << 3)));
      const over = f64x2.gt(jet, convection);
      if (v128.any_true(over)) {
        const diluted = f64x2.mul(pair(dilution + (a << 3), dilution + (b << 3)), excess);
        const fromJet = f64x2.mul(jet, f64x2.add(both(ENTRAINED_C), diluted));
        film = v128.bitselect(f64x2.add(jet, radiation), film, over);
        source = v128.bitselect(f64x2.add(fromJet, f64x2.mul(radiation, room)), source, over);
        jetFilm = v128.bitselect(jet, zero, over);
      }
    }
    if (!isUpper) {
      // In the preheater's zone the source's film takes the whole idle film's place.
      const inZone = zoneMask(masks, (<u32>load<u8>(zone + a)) | ((<u32>load<u8>(zone + b)) << 8));
      film = v128.bitselect(heated, film, inZone);
      source = v128.bitselect(heatedSource, source, inZone);
      radiation = v128.bitselect(zero, radiation, inZone);
    }
    v128.store(films + o, film);
    v128.store(sources + o, source);
    v128.store(gasFilm + o, jetFilm);
    v128.store(radiated + o, radiation);
    if (atOnce) shield(v128.load(resistance + o), v128.load(filmArea + o), film, source, outer + o, outerSource + o);
    if (o >= end) break;
    o += 16;
    if (o > end) o = end;
  }
}

/** Infrared from above on the entries of the upper side, absorbed by the emissivity of what lies outside. */
function irradiateEntries(): void {
  const irradiated = at(IRRADIATED);
  const source = at(SOURCE);
  const gasFilm = at(GAS_FILM);
  const emissivity = at(EMISSIVITY);
  const cell = at(CELL);
  const shape = at(SHAPE);
  const flux = num(FLUX);
  const end = count(UPPER_END) << 3;
  for (let o: usize = 0; o < end; o += 8) {
    const under = <usize>load<u32>(cell + (o >> 1)) << 3;
    const absorbed = load<f64>(emissivity + o) * flux * load<f64>(shape + under);
    store<f64>(irradiated + o, absorbed);
    store<f64>(source + o, load<f64>(source + o) + absorbed);
    store<f64>(gasFilm + o, TRACE);
  }
}

/** Films of all entries; with shields too unless what stands under cans comes between: then `shieldEntries` follows. */
export function entryFilms(): void {
  const upperEnd = count(UPPER_END);
  const irradiated = num(HAS_FOOTPRINT) !== 0 && num(FLUX) !== 0;
  films(0, upperEnd, true);
  if (irradiated) irradiateEntries();
  else memory.fill(at(IRRADIATED), 0, count(COUNT) << 3);
  films(upperEnd, count(COUNT), false);
  if (irradiated && num(HAS_COVERS) === 0) shieldEntries();
}

/** Shields of all entries, where something came between their films and them. */
export function shieldEntries(): void {
  const film = at(FILM);
  const source = at(SOURCE);
  const resistance = at(RESISTANCE);
  const filmArea = at(FILM_AREA);
  const outer = at(OUTER);
  const outerSource = at(OUTER_SOURCE);
  const end = count(COUNT) << 3;
  for (let o: usize = 0; o < end; o += 16) {
    const through = v128.load(film + o);
    shield(v128.load(resistance + o), v128.load(filmArea + o), through, v128.load(source + o), outer + o, outerSource + o);
  }
}
