import { at, both, count, keepPeak, num, pair, put } from './access';
import {
  BEFORE,
  BODIES,
  BODY_START,
  CELL,
  COUNT,
  DILUTION,
  DT,
  EMISSIVITY,
  END_S,
  ENERGY,
  ENERGY_AT_PEAK,
  ENTRAINED_C,
  ENTRY_BEFORE,
  ENTRY_CAPACITY,
  ENTRY_PEAK,
  ENTRY_RADIATION,
  ENTRY_TEMPERATURE,
  FACE,
  FILM,
  FILM_AREA,
  FLUX,
  FLUX_AT_END,
  GAS_AT_END_C,
  GAS_C,
  GAS_FILM,
  HAS_FOOTPRINT,
  IRRADIATED,
  JOINT,
  MEAN_PEAK,
  MEAN_PEAK_S,
  OUTER,
  OUTER_SOURCE,
  PEAK_SKIN,
  PREHEATER_FILM,
  RESISTANCE,
  ROOM_C,
  SERIES_ROW,
  SHADOW,
  SHADOW_PEAK,
  SHADOW_PEAK_SKIN,
  SHAPE,
  SHARE,
  SKIN,
  SKIN_CONDUCTANCE,
  SOURCE,
  SOURCE_C,
  SOURCE_ROW,
  STRENGTH,
  STRENGTH_AT_END,
  TAU,
  TEMPERATURE,
  THETA,
  TRIAL_DIMMED,
  TRIAL_HEAT,
  TRIAL_RESISTANCE,
  UPPER_END,
  WEIGHTS,
  ZONE,
} from './slots';

/** Adds the energy that entered each body during the sub-step, by way: gas, preheater, joints, losses. */
export function addEnergy(): void {
  const starts = at(BODY_START);
  const face = at(FACE);
  const cell = at(CELL);
  const zone = at(ZONE);
  const joint = at(JOINT);
  const temperature = at(TEMPERATURE);
  const before = at(BEFORE);
  const now = at(ENTRY_TEMPERATURE);
  const earlier = at(ENTRY_BEFORE);
  const outer = at(OUTER);
  const outerSource = at(OUTER_SOURCE);
  const gasFilm = at(GAS_FILM);
  const film = at(FILM);
  const room = num(ROOM_C);
  const theta = num(THETA);
  const dt = num(DT);
  const upperEnd = count(UPPER_END) << 3;
  const bodies = count(BODIES);
  let energy = at(ENERGY);
  let o: usize = 0;
  for (let body: usize = 0; body < bodies; body++) {
    const end = <usize>load<u32>(starts + (body << 2), 4) << 3;
    let gas: f64 = 0;
    let preheater: f64 = 0;
    let joints: f64 = 0;
    let losses: f64 = 0;
    for (; o < end; o += 8) {
      const under = <usize>load<u32>(face + (o >> 1)) << 3;
      const was = load<f64>(earlier + o);
      const mean = was + theta * (load<f64>(now + o) - was);
      const faceWas = load<f64>(before + under);
      const faceMean = faceWas + theta * (load<f64>(temperature + under) - faceWas);
      joints += load<f64>(joint + o) * (faceMean - mean);
      const through = load<f64>(outer + o);
      const total = load<f64>(outerSource + o) - through * mean;
      const jet = load<f64>(gasFilm + o);
      if (jet > 0) {
        const idle = through * (1 - jet / load<f64>(film + o)) * (room - mean);
        losses += idle;
        gas += total - idle;
      } else if (o >= upperEnd && load<u8>(zone + <usize>load<u32>(cell + (o >> 1))) !== 0) preheater += total;
      else losses += total;
    }
    store<f64>(energy, load<f64>(energy) + dt * gas);
    store<f64>(energy, load<f64>(energy, 8) + dt * preheater, 8);
    store<f64>(energy, load<f64>(energy, 16) + dt * joints, 16);
    store<f64>(energy, load<f64>(energy, 24) + dt * losses, 24);
    energy += 32;
  }
}

/** Film that a trial shield's outside sees: less radiation where it is polished. */
@inline
function filmOnShield(film: v128, radiation: v128, dimmed: v128): v128 {
  return f64x2.sub(film, f64x2.mul(radiation, dimmed));
}

/** That film times its equivalent temperature. */
@inline
function sourceOnShield(source: v128, radiation: v128, irradiated: v128, dimmed: v128): v128 {
  const radiated = f64x2.mul(f64x2.mul(radiation, dimmed), both(ROOM_C));
  return f64x2.sub(f64x2.sub(source, radiated), f64x2.mul(irradiated, dimmed));
}

/** Moves all shadow entries on ('if it carried the default shield'): same face, no feedback. */
export function stepShadows(): void {
  const faces = at(FACE);
  const joint = at(JOINT);
  const filmArea = at(FILM_AREA);
  const capacity = at(ENTRY_CAPACITY);
  const temperature = at(TEMPERATURE);
  const before = at(BEFORE);
  const shadow = at(SHADOW);
  const shadowPeak = at(SHADOW_PEAK);
  const films = at(FILM);
  const sources = at(SOURCE);
  const radiated = at(ENTRY_RADIATION);
  const irradiated = at(IRRADIATED);
  const resistance = at(TRIAL_RESISTANCE);
  const heat = at(TRIAL_HEAT);
  const dimmings = at(TRIAL_DIMMED);
  const dt = both(DT);
  const tau = both(TAU);
  const end = count(COUNT) << 3;
  for (let o: usize = 0; o < end; o += 16) {
    const alone = end - o < 16;
    const shield = v128.load(resistance + o);
    const shielded = f64x2.ge(shield, f64x2.splat(0));
    if (!v128.any_true(shielded)) continue;
    const dimmed = v128.load(dimmings + o);
    const radiation = v128.load(radiated + o);
    const film = filmOnShield(v128.load(films + o), radiation, dimmed);
    const source = sourceOnShield(v128.load(sources + o), radiation, v128.load(irradiated + o), dimmed);
    const series = f64x2.add(f64x2.splat(1), f64x2.mul(film, shield));
    const g = f64x2.mul(v128.load(joint + o), series);
    const area = v128.load(filmArea + o);
    const here = v128.load(shadow + o);
    const a = <usize>load<u32>(faces + (o >> 1)) << 3;
    const b = <usize>load<u32>(faces + (o >> 1), 4) << 3;
    const faceBefore = pair(before + a, before + b);
    const change = f64x2.sub(pair(temperature + a, temperature + b), faceBefore);
    const outside = f64x2.mul(f64x2.sub(source, f64x2.mul(film, here)), area);
    const flow = f64x2.add(f64x2.mul(g, f64x2.sub(faceBefore, here)), outside);
    const push = f64x2.add(f64x2.mul(dt, flow), f64x2.mul(f64x2.mul(tau, g), change));
    const heavy = f64x2.mul(f64x2.add(v128.load(capacity + o), v128.load(heat + o)), series);
    const divisor = f64x2.add(heavy, f64x2.mul(tau, f64x2.add(g, f64x2.mul(film, area))));
    const next = v128.bitselect(f64x2.add(here, f64x2.div(push, divisor)), here, shielded);
    put(shadow + o, next, alone);
    keepPeak(shadowPeak + o, next, alone);
  }
}

/** Takes the entries' films from the middle of the sub-step to its end (`surface-films.ts`). */
export function filmsAtEnd(): void {
  const cell = at(CELL);
  const film = at(FILM);
  const source = at(SOURCE);
  const gasFilm = at(GAS_FILM);
  const upperEnd = count(UPPER_END) << 3;
  const strength = num(STRENGTH);
  const gas = num(GAS_C);
  const gasAtEnd = num(GAS_AT_END_C);
  const blown = num(HAS_FOOTPRINT) !== 0;
  if (blown && strength > 0 && (num(STRENGTH_AT_END) !== strength || gasAtEnd !== gas)) {
    const dilutions = at(DILUTION);
    const entrained = num(ENTRAINED_C);
    const rise = num(STRENGTH_AT_END) / strength;
    for (let o: usize = 0; o < upperEnd; o += 8) {
      const jet = load<f64>(gasFilm + o);
      if (jet === 0) continue;
      const dilution = load<f64>(dilutions + (<usize>load<u32>(cell + (o >> 1)) << 3));
      const after = jet * rise;
      store<f64>(film + o, load<f64>(film + o) + (after - jet));
      const more = load<f64>(source + o) + after * (entrained + dilution * (gasAtEnd - entrained));
      store<f64>(source + o, more - jet * (entrained + dilution * (gas - entrained)));
    }
  }
  const flux = num(FLUX);
  if (blown && num(FLUX_AT_END) !== flux && flux > 0) {
    const emissivity = at(EMISSIVITY);
    const irradiated = at(IRRADIATED);
    const shape = at(SHAPE);
    const rise = num(FLUX_AT_END) - flux;
    for (let o: usize = 0; o < upperEnd; o += 8) {
      const under = <usize>load<u32>(cell + (o >> 1)) << 3;
      const more = load<f64>(emissivity + o) * rise * load<f64>(shape + under);
      store<f64>(irradiated + o, load<f64>(irradiated + o) + more);
      store<f64>(source + o, load<f64>(source + o) + more);
    }
  }
  const zone = at(ZONE);
  const preheaterSource = num(PREHEATER_FILM) * num(SOURCE_C);
  const end = count(COUNT) << 3;
  for (let o = upperEnd; o < end; o += 8) {
    if (load<u8>(zone + <usize>load<u32>(cell + (o >> 1))) !== 0) store<f64>(source + o, preheaterSource);
  }
}

/** Folds the peaks of entries and shadows and of their skins in, with the films of the end of the sub-step; leaves the skins. */
export function foldSkins(): void {
  const films = at(FILM);
  const sources = at(SOURCE);
  const radiated = at(ENTRY_RADIATION);
  const irradiated = at(IRRADIATED);
  const dimmings = at(TRIAL_DIMMED);
  const trial = at(TRIAL_RESISTANCE);
  const resistance = at(RESISTANCE);
  const conductance = at(SKIN_CONDUCTANCE);
  const temperature = at(ENTRY_TEMPERATURE);
  const shadow = at(SHADOW);
  const skins = at(SKIN);
  const peak = at(ENTRY_PEAK);
  const peakSkin = at(PEAK_SKIN);
  const shadowPeakSkin = at(SHADOW_PEAK_SKIN);
  const one = f64x2.splat(1);
  const end = count(COUNT) << 3;
  for (let o: usize = 0; o < end; o += 16) {
    const alone = end - o < 16;
    const film = v128.load(films + o);
    const source = v128.load(sources + o);
    const body = v128.load(conductance + o);
    const shield = v128.load(trial + o);
    const shielded = f64x2.ge(shield, f64x2.splat(0));
    if (v128.any_true(shielded)) {
      const dimmed = v128.load(dimmings + o);
      const radiation = v128.load(radiated + o);
      const outside = filmOnShield(film, radiation, dimmed);
      const outsideSource = sourceOnShield(source, radiation, v128.load(irradiated + o), dimmed);
      const inner = f64x2.mul(body, f64x2.add(one, f64x2.mul(outside, shield)));
      const push = f64x2.add(outsideSource, f64x2.mul(inner, v128.load(shadow + o)));
      const skin = f64x2.div(push, f64x2.add(outside, inner));
      const known = v128.load(shadowPeakSkin + o);
      put(shadowPeakSkin + o, v128.bitselect(f64x2.pmax(known, skin), known, shielded), alone);
    }
    const here = v128.load(temperature + o);
    const inner = f64x2.mul(body, f64x2.add(one, f64x2.mul(film, v128.load(resistance + o))));
    const skin = f64x2.div(f64x2.add(source, f64x2.mul(inner, here)), f64x2.add(film, inner));
    put(skins + o, skin, alone);
    keepPeak(peak + o, here, alone);
    keepPeak(peakSkin + o, skin, alone);
  }
}

/** Writes each body's row of the series and folds the peak of its mean in. */
export function foldBodies(): void {
  const starts = at(BODY_START);
  const face = at(FACE);
  const share = at(SHARE);
  const skins = at(SKIN);
  const now = at(ENTRY_TEMPERATURE);
  const temperature = at(TEMPERATURE);
  const weights = at(WEIGHTS);
  const meanPeak = at(MEAN_PEAK);
  const meanPeakS = at(MEAN_PEAK_S);
  const energy = at(ENERGY);
  const energyAtPeak = at(ENERGY_AT_PEAK);
  const endS = num(END_S);
  const bodies = count(BODIES);
  const channel = bodies << 2;
  let row = at(SERIES_ROW);
  store<f32>(at(SOURCE_ROW), <f32>num(SOURCE_C));
  let o: usize = 0;
  for (let body: usize = 0; body < bodies; body++) {
    const end = <usize>load<u32>(starts + (body << 2), 4) << 3;
    let hottest = f64x2.splat(-Infinity);
    let jointHottest = hottest;
    let jointColdest = f64x2.splat(Infinity);
    let weighted: f64 = 0;
    for (; o < end; o += 8) {
      const here = load<f64>(now + o);
      const joint = v128.load64_splat(temperature + (<usize>load<u32>(face + (o >> 1)) << 3));
      hottest = f64x2.pmax(hottest, f64x2.replace_lane(v128.load64_splat(skins + o), 0, here));
      jointHottest = f64x2.pmax(jointHottest, joint);
      jointColdest = f64x2.pmin(jointColdest, joint);
      weighted += here * load<f64>(share + o);
    }
    store<f32>(row, <f32>f64x2.extract_lane(hottest, 0));
    store<f32>(row + channel, <f32>f64x2.extract_lane(hottest, 1));
    store<f32>(row + 2 * channel, <f32>f64x2.extract_lane(jointHottest, 0));
    store<f32>(row + 3 * channel, <f32>f64x2.extract_lane(jointColdest, 0));
    row += 4;
    const place = body << 3;
    const mean = weighted / load<f64>(weights + place);
    if (mean <= load<f64>(meanPeak + place)) continue;
    store<f64>(meanPeak + place, mean);
    store<f64>(meanPeakS + place, endS);
    const ways = body << 5;
    v128.store(energyAtPeak + ways, v128.load(energy + ways));
    v128.store(energyAtPeak + ways, v128.load(energy + ways, 16), 16);
  }
}
