import { type BodySeries, createBodySeries, largestRises, numberAt, writeRow } from './body-series.ts';
import type { HeatState, TrialShields } from './heat-state.ts';
import { kernelFold } from './kernels/kernel-steps.ts';
import type { Moment } from './moment.ts';
import type { Series } from './series.ts';
import { CHANNELS, WAYS } from './state-arrays.ts';
import type { PlannedStep } from './step-plan.ts';
import type { SubStep } from './stepping.ts';
import { filmsAtEnd } from './surface-films.ts';
import { filmsUnderCoversAtEnd } from './under-covers.ts';

/** Channels of a body's series: hottest body, hottest skin, hottest and coldest face under it. */
export const SERIES_CHANNELS = ['body', 'skin', 'jointMax', 'jointMin'] as const;
export type SeriesChannel = (typeof SERIES_CHANNELS)[number];

/** What is folded in for every body while the run goes on; bodies in the order of the entries. */
export type Tracking = {
  /** Time of the end of each sub-step, s; row r of the series belongs to time r. */
  times: Float64Array;
  rows: number;
  /** A row has four channels, each of all bodies. */
  series: BodySeries;
  /** Temperature of the preheater's source at the end of each sub-step, °C. */
  sourceC: Float32Array;
  /** Per body: highest share-weighted mean and when. */
  meanPeak: Float64Array;
  meanPeakS: Float64Array;
  /** Per body x way: energy until now, and until the body's peak. */
  energy: Float64Array;
  energyAtPeak: Float64Array;
};

export function createTracking({ totals }: HeatState, steps: readonly PlannedStep[]): Tracking {
  const { meanPeak, meanPeakS, energy, energyAtPeak } = totals;
  return {
    times: Float64Array.from(steps, ({ endS }) => endS),
    rows: 0,
    series: createBodySeries(steps, totals.seriesRow.length),
    sourceC: new Float32Array(steps.length),
    ...{ meanPeak, meanPeakS, energy, energyAtPeak },
  };
}

/** One channel of the series of the body with place `order` in the entries. */
export function bodySeries(
  { times, rows, series }: Pick<Tracking, 'times' | 'rows' | 'series'>,
  order: number,
  channel: SeriesChannel,
): Series {
  const place = order + SERIES_CHANNELS.indexOf(channel) * (series.width / CHANNELS);
  return { times, rows, at: (row) => numberAt(series, row, place) };
}

/** Largest rise of each body over any `windowS` seconds, K/s; bodies in the order of the entries. */
export const riseRates = ({ series, times, rows }: Tracking, windowS: number, startC: number): Float64Array =>
  largestRises(series, times, rows, series.width / CHANNELS, windowS, startC);

/** Energy into a body until its peak, as shares of all that came in; losses: what went out again. */
export function energyShares(tracking: Tracking, order: number) {
  const [gas, preheater, joints, losses] = tracking.energyAtPeak.subarray(order * WAYS, order * WAYS + WAYS);
  const ways = [gas!, preheater!, joints!, losses!];
  const came = ways.reduce((sum, joules) => sum + Math.max(0, joules), 0);
  const went = ways.reduce((sum, joules) => sum + Math.max(0, -joules), 0);
  const share = (joules: number) => (came > 0 ? Math.max(0, joules) / came : 0);
  return { gas: share(gas!), preheater: share(preheater!), joints: share(joints!), losses: came > 0 ? went / came : 0 };
}

/** Film that a trial shield's outside sees in the place of the entry's own: less radiation where it is polished. */
const filmOnShield = ({ film, radiation }: HeatState['body'], dimmed: Float64Array, entry: number): number =>
  film[entry]! - radiation[entry]! * dimmed[entry]!;

/** That film times its equivalent temperature. */
const sourceOnShield = (
  { source, radiation, irradiated }: HeatState['body'],
  dimmed: Float64Array,
  roomC: number,
  entry: number,
): number => source[entry]! - radiation[entry]! * dimmed[entry]! * roomC - irradiated[entry]! * dimmed[entry]!;

/**
 * Moves all shadow entries on ('if it carried the default shield'): same face, no feedback.
 * Everything is multiplied through by the shield's series factor, so that one division does.
 */
function stepShadows(state: HeatState, sub: SubStep, trial: TrialShields): void {
  const { entries, body, temperature, before, roomC } = state;
  const { joint, filmArea, capacity, face, count } = entries;
  const { shadow, shadowPeak } = body;
  const { resistance, heat, dimmed } = trial;
  const dt = sub.dt;
  const tau = sub.theta * dt;
  for (let entry = 0; entry < count; entry++) {
    const shield = resistance[entry]!;
    if (shield < 0) continue;
    const film = filmOnShield(body, dimmed, entry);
    const source = sourceOnShield(body, dimmed, roomC, entry);
    const series = 1 + film * shield;
    const g = joint[entry]! * series;
    const area = filmArea[entry]!;
    const here = shadow[entry]!;
    const under = face[entry]!;
    const faceBefore = before[under]!;
    const change = temperature[under]! - faceBefore;
    const push = dt * (g * (faceBefore - here) + (source - film * here) * area) + tau * g * change;
    const next = here + push / ((capacity[entry]! + heat[entry]!) * series + tau * (g + film * area));
    shadow[entry] = next;
    if (next > shadowPeak[entry]!) shadowPeak[entry] = next;
  }
}

/** Folds the skins of the shadow entries in, with the films of the end of the sub-step. */
function foldShadowSkins(state: HeatState, { resistance, dimmed }: TrialShields): void {
  const { entries, body, roomC } = state;
  const { skinConductance, count } = entries;
  const { shadow, shadowPeakSkin } = body;
  for (let entry = 0; entry < count; entry++) {
    const shield = resistance[entry]!;
    if (shield < 0) continue;
    const film = filmOnShield(body, dimmed, entry);
    const source = sourceOnShield(body, dimmed, roomC, entry);
    const inner = skinConductance[entry]! * (1 + film * shield);
    const skin = (source + inner * shadow[entry]!) / (film + inner);
    if (skin > shadowPeakSkin[entry]!) shadowPeakSkin[entry] = skin;
  }
}

/** Adds the energy that entered each body during the sub-step, by way. */
function addEnergy(state: HeatState, sub: SubStep, energy: Float64Array): void {
  const { entries, body, temperature, before, zone, roomC } = state;
  const { bodyStart, upperEnd, face, cell, joint } = entries;
  const { outer, outerSource, gasFilm, film, temperature: now, before: earlier } = body;
  const { theta, dt } = sub;
  let entry = 0;
  for (let at = 0; at < energy.length; at += WAYS) {
    const end = bodyStart[at / WAYS + 1]!;
    let gas = 0;
    let preheater = 0;
    let joints = 0;
    let losses = 0;
    for (; entry < end; entry++) {
      const under = face[entry]!;
      const mean = earlier[entry]! + theta * (now[entry]! - earlier[entry]!);
      const faceMean = before[under]! + theta * (temperature[under]! - before[under]!);
      joints += joint[entry]! * (faceMean - mean);
      const total = outerSource[entry]! - outer[entry]! * mean;
      const jet = gasFilm[entry]!;
      if (jet > 0) {
        const idle = outer[entry]! * (1 - jet / film[entry]!) * (roomC - mean);
        losses += idle;
        gas += total - idle;
      } else if (entry >= upperEnd && zone[cell[entry]!]) preheater += total;
      else losses += total;
    }
    energy[at]! += dt * gas;
    energy[at + 1]! += dt * preheater;
    energy[at + 2]! += dt * joints;
    energy[at + 3]! += dt * losses;
  }
}

/**
 * Folds each body's peaks and series row in; writes their share-weighted means. The skin is seen through the shield,
 * without the side walls' factor, with the films of the end of the sub-step (`filmsAtEnd`).
 */
function foldBodies(state: HeatState): void {
  const { entries, body, temperature, totals } = state;
  const { bodyStart, skinConductance, resistance, face, share } = entries;
  const { film, source, peak, peakSkin, temperature: now } = body;
  const { mean, weight, seriesRow } = totals;
  const bodies = mean.length;
  let entry = 0;
  for (let order = 0; order < bodies; order++) {
    const end = bodyStart[order + 1]!;
    let hottest = -Infinity;
    let skinHottest = -Infinity;
    let jointHottest = -Infinity;
    let jointColdest = Infinity;
    let weighted = 0;
    for (; entry < end; entry++) {
      const here = now[entry]!;
      const inner = skinConductance[entry]! * (1 + film[entry]! * resistance[entry]!);
      const skin = (source[entry]! + inner * here) / (film[entry]! + inner);
      const joint = temperature[face[entry]!]!;
      if (here > peak[entry]!) peak[entry] = here;
      if (skin > peakSkin[entry]!) peakSkin[entry] = skin;
      if (here > hottest) hottest = here;
      if (skin > skinHottest) skinHottest = skin;
      if (joint > jointHottest) jointHottest = joint;
      if (joint < jointColdest) jointColdest = joint;
      weighted += here * share[entry]!;
    }
    seriesRow[order] = hottest;
    seriesRow[order + bodies] = skinHottest;
    seriesRow[order + 2 * bodies] = jointHottest;
    seriesRow[order + 3 * bodies] = jointColdest;
    mean[order] = weighted / weight[order]!;
  }
}

/** Keeps the highest mean of each body, when it was, and the energy until then. */
function foldMeans({ totals }: HeatState, endS: number): void {
  const { mean, meanPeak, meanPeakS, energy, energyAtPeak } = totals;
  for (let order = 0; order < mean.length; order++) {
    if (mean[order]! <= meanPeak[order]!) continue;
    meanPeak[order] = mean[order]!;
    meanPeakS[order] = endS;
    const at = order * WAYS;
    for (let way = at; way < at + WAYS; way++) energyAtPeak[way] = energy[way]!;
  }
}

/** Folds a finished sub-step into the state's peaks and totals. */
function foldStep(state: HeatState, moment: Moment, sub: PlannedStep): void {
  addEnergy(state, sub, state.totals.energy);
  stepShadows(state, sub, state.trial);
  filmsAtEnd(state, moment);
  filmsUnderCoversAtEnd(state, moment);
  foldShadowSkins(state, state.trial);
  foldBodies(state);
  foldMeans(state, sub.endS);
  state.totals.sourceRow[0] = moment.sourceC;
}

/** Returns the function that folds a finished sub-step into the tracking. */
export function createTracker(state: HeatState, tracking: Tracking) {
  const { series, sourceC } = tracking;
  const { seriesRow, sourceRow } = state.totals;
  const foldFast = kernelFold(state);
  return function track(moment: Moment, sub: PlannedStep): void {
    const row = tracking.rows++;
    if (foldFast) foldFast(moment);
    else foldStep(state, moment, sub);
    writeRow(series, row, seriesRow);
    sourceC.set(sourceRow, row);
  };
}
