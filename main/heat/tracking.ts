import type { HeatState } from './heat-state.ts';
import type { Moment } from './moment.ts';
import type { HeatScene } from './scene.ts';
import type { Series } from './series.ts';
import type { SubStep } from './stepping.ts';
import { entryFilms } from './surface-films.ts';

/** Ways that energy comes into a body: gas, preheater, joints, losses (J/m2 of cell, times cells). */
const WAYS = 4;

/** Channels of a body's series: hottest body, hottest skin, hottest and coldest face under it. */
export const SERIES_CHANNELS = ['body', 'skin', 'jointMax', 'jointMin'] as const;
export type SeriesChannel = (typeof SERIES_CHANNELS)[number];
const CHANNELS = SERIES_CHANNELS.length;

/** What is folded in for every body while the run goes on; bodies in the order of the entries. */
export type Tracking = {
  /** Time of the end of each sub-step, s; row r of the series belongs to time r. */
  times: Float64Array;
  rows: number;
  /** rows x bodies x 4 channels. */
  series: Float32Array;
  /** Temperature of the preheater's source at the end of each sub-step, °C. */
  sourceC: Float32Array;
  /** Per body: highest share-weighted mean and when. */
  meanPeak: Float64Array;
  meanPeakS: Float64Array;
  /** Per body x way: energy until now, and until the body's peak. */
  energy: Float64Array;
  energyAtPeak: Float64Array;
};

export function createTracking(bodies: number, steps: number, startC: number): Tracking {
  return {
    times: new Float64Array(steps),
    rows: 0,
    series: new Float32Array(steps * bodies * CHANNELS),
    sourceC: new Float32Array(steps),
    meanPeak: new Float64Array(bodies).fill(startC),
    meanPeakS: new Float64Array(bodies),
    energy: new Float64Array(bodies * WAYS),
    energyAtPeak: new Float64Array(bodies * WAYS),
  };
}

/** Default shield of the shadow entries, per entry; resistance -1 where none is asked for. */
type TrialShields = {
  any: boolean;
  resistance: Float64Array;
  heat: Float64Array;
  /** Share of the entry's radiation that the shield's outside takes away. */
  dimmed: Float64Array;
};

function trialShields(scene: HeatScene, state: HeatState): TrialShields {
  const { entries } = state;
  const resistance = new Float64Array(entries.count).fill(-1);
  const heat = new Float64Array(entries.count);
  const dimmed = new Float64Array(entries.count);
  for (let order = 0; order + 1 < entries.bodyStart.length; order++) {
    const body = scene.bodies[entries.bodyOfScene[order]!]!;
    if (!body.trialShield || body.metal) continue;
    for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++) {
      resistance[entry] = body.trialShield.resistance;
      heat[entry] = entries.share[entry]! * body.trialShield.arealHeat;
      dimmed[entry] = body.emissivity > 0 ? 1 - body.trialShield.emissivity / body.emissivity : 0;
    }
  }
  return { any: resistance.some((value) => value >= 0), resistance, heat, dimmed };
}

/** One channel of the series of the body with place `order` in the entries. */
export function bodySeries(tracking: Tracking, order: number, channel: SeriesChannel): Series {
  const bodies = tracking.meanPeak.length;
  return {
    times: tracking.times,
    rows: tracking.rows,
    values: tracking.series,
    offset: order * CHANNELS + SERIES_CHANNELS.indexOf(channel),
    stride: bodies * CHANNELS,
  };
}

/** Energy into a body until its peak, as shares of all that came in; losses: what went out again. */
export function energyShares(tracking: Tracking, order: number) {
  const [gas, preheater, joints, losses] = tracking.energyAtPeak.subarray(order * WAYS, order * WAYS + WAYS);
  const ways = [gas!, preheater!, joints!, losses!];
  const came = ways.reduce((sum, joules) => sum + Math.max(0, joules), 0);
  const went = ways.reduce((sum, joules) => sum + Math.max(0, -joules), 0);
  const share = (joules: number) => (came > 0 ? Math.max(0, joules) / came : 0);
  return { gas: share(gas!), preheater: share(preheater!), joints: share(joints!), losses: came > 0 ? went / came : 0 };
}

/** Moves the shadow entries ('if it carried the default shield') on: same face, no feedback. */
function stepShadows(state: HeatState, sub: SubStep, trial: TrialShields): void {
  const { entries, body, temperature, before, roomC } = state;
  const tau = sub.theta * sub.dt;
  for (let entry = 0; entry < entries.count; entry++) {
    const added = trial.resistance[entry]!;
    if (added < 0) continue;
    const resistance = entries.resistance[entry]! + added;
    const lost = body.radiation[entry]! * trial.dimmed[entry]!;
    const bare = body.film[entry]! - lost;
    const scale = entries.filmArea[entry]! / (1 + bare * resistance);
    const film = bare * scale;
    const source = (body.source[entry]! - lost * roomC) * scale;
    const under = entries.face[entry]!;
    const g = entries.joint[entry]!;
    const here = body.shadow[entry]!;
    const faceBefore = before[under]!;
    const change = temperature[under]! - faceBefore;
    const push = sub.dt * (g * (faceBefore - here) + source - film * here) + tau * g * change;
    const next = here + push / (entries.capacity[entry]! + trial.heat[entry]! + tau * (g + film));
    body.shadow[entry] = next;
    if (next > body.shadowPeak[entry]!) body.shadowPeak[entry] = next;
    const endLost = body.endRadiation[entry]! * trial.dimmed[entry]!;
    const endFilm = body.endFilm[entry]! - endLost;
    const inner = entries.skinConductance[entry]! * (1 + endFilm * resistance);
    const skin = (body.endSource[entry]! - endLost * roomC + inner * next) / (endFilm + inner);
    if (skin > body.shadowPeakSkin[entry]!) body.shadowPeakSkin[entry] = skin;
  }
}

/** Adds the energy that entered one body during the sub-step, by way. */
function addEnergy(state: HeatState, moment: Moment, sub: SubStep, order: number, energy: Float64Array): void {
  const { entries, body, temperature, before, zone, roomC } = state;
  const { theta, dt } = sub;
  let gas = 0;
  let preheater = 0;
  let joints = 0;
  let losses = 0;
  for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++) {
    const under = entries.face[entry]!;
    const mean = body.before[entry]! + theta * (body.temperature[entry]! - body.before[entry]!);
    const faceMean = before[under]! + theta * (temperature[under]! - before[under]!);
    joints += entries.joint[entry]! * (faceMean - mean);
    const total = body.outerSource[entry]! - body.outer[entry]! * mean;
    if (entry >= entries.upperEnd && zone[entries.cell[entry]!]) {
      preheater += total;
      continue;
    }
    const jet = body.gasFilm[entry]!;
    const idle = ((body.outer[entry]! * (body.film[entry]! - jet)) / body.film[entry]!) * (roomC - mean);
    losses += idle;
    gas += total - idle;
  }
  const at = order * WAYS;
  energy[at]! += dt * gas;
  energy[at + 1]! += moment.preheaterFilm > 0 ? dt * preheater : 0;
  energy[at + 2]! += dt * joints;
  energy[at + 3]! += dt * losses;
}

/** Skin temperature from the film at the end of the step, through the shield, without the side walls' factor. */
function skinOf(state: HeatState, entry: number): number {
  const { entries, body } = state;
  const scale = 1 / (1 + body.endFilm[entry]! * entries.resistance[entry]!);
  const inner = entries.skinConductance[entry]!;
  return (body.endSource[entry]! * scale + inner * body.temperature[entry]!) / (body.endFilm[entry]! * scale + inner);
}

/** Folds one body's peaks and series row in; returns its share-weighted mean. */
function foldBody(state: HeatState, order: number, series: Float32Array, at: number): number {
  const { entries, body, temperature } = state;
  let hottest = -Infinity;
  let skinHottest = -Infinity;
  let jointHottest = -Infinity;
  let jointColdest = Infinity;
  let weighted = 0;
  let weight = 0;
  for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++) {
    const here = body.temperature[entry]!;
    const skin = skinOf(state, entry);
    const joint = temperature[entries.face[entry]!]!;
    if (here > body.peak[entry]!) body.peak[entry] = here;
    if (skin > body.peakSkin[entry]!) body.peakSkin[entry] = skin;
    if (here > hottest) hottest = here;
    if (skin > skinHottest) skinHottest = skin;
    if (joint > jointHottest) jointHottest = joint;
    if (joint < jointColdest) jointColdest = joint;
    weighted += here * entries.share[entry]!;
    weight += entries.share[entry]!;
  }
  series[at] = hottest;
  series[at + 1] = skinHottest;
  series[at + 2] = jointHottest;
  series[at + 3] = jointColdest;
  return weighted / weight;
}

/** Returns the function that folds a finished sub-step into the tracking. */
export function createTracker(scene: HeatScene, state: HeatState, tracking: Tracking) {
  const bodies = state.entries.bodyOfScene.length;
  const trial = trialShields(scene, state);
  const { endFilm, endSource, endRadiation, rhs } = state.body;
  const { energy, energyAtPeak, meanPeak, meanPeakS, series, times } = tracking;
  return function track(moment: Moment, sub: SubStep, endS: number): void {
    // `rhs` is free here: it takes the nozzle's part of the film, which nobody reads at the step's end.
    entryFilms(state, moment, 1, 0, endFilm, endSource, rhs, endRadiation);
    if (trial.any) stepShadows(state, sub, trial);
    const row = tracking.rows++;
    times[row] = endS;
    tracking.sourceC[row] = moment.sourceC;
    for (let order = 0; order < bodies; order++) {
      addEnergy(state, moment, sub, order, energy);
      const mean = foldBody(state, order, series, (row * bodies + order) * CHANNELS);
      if (mean <= meanPeak[order]!) continue;
      meanPeak[order] = mean;
      meanPeakS[order] = endS;
      const at = order * WAYS;
      for (let way = at; way < at + WAYS; way++) energyAtPeak[way] = energy[way]!;
    }
  };
}
