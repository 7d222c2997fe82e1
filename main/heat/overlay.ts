import type { BodyEntries } from './body-entries.ts';
import type { SceneBody } from './scene.ts';
import type { SubStep } from './stepping.ts';

/** A wet gel holds its surface at or below this while it has water, °C. */
const BOILING_C = 100;
/** Heat that takes water away at 100 °C, J/kg, and of liquid water, J/kgK (steam tables; heat-model.md, section 5). */
export const LATENT_HEAT = 2257e3;
const WATER_HEAT = 4186;

/**
 * Blocks and gels that lie on bodies: one mass more an entry, between the body and its film. They are eliminated into
 * what the entry sees as its film, exactly as the splitting treats the entry itself; so the solvers know nothing of them.
 * All figures are per area of a cell.
 */
export type Overlays = {
  count: number;
  entry: Int32Array;
  /** Heat of the mass without its water, J/m2K; conductance to the body, wet and dry, W/m2K. */
  dryHeat: Float64Array;
  wetConductance: Float64Array;
  dryConductance: Float64Array;
  temperature: Float64Array;
  /** Water left, kg/m2. */
  water: Float64Array;
  /** Time at which the water was gone, s; NaN: not yet, or it never had any. */
  driedAtS: Float64Array;
  /** Heat that went into steam, J/m2. */
  boiled: Float64Array;
  /** Seconds since the run's start. */
  clock: Float64Array;
  rhs: Float64Array;
  inverse: Float64Array;
  conductance: Float64Array;
};

/** Lays the overlays of a scene over its entries. */
export function layOverlays(entries: BodyEntries, bodies: readonly SceneBody[], startC: number): Overlays {
  const laid: { entry: number; body: SceneBody }[] = [];
  entries.bodyOfScene.forEach((index, order) => {
    const body = bodies[index]!;
    if (!body.overlay || body.metal) return;
    for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++)
      laid.push({ entry, body });
  });
  const each = (figure: (body: SceneBody) => number) =>
    Float64Array.from(laid, ({ entry, body }) => entries.share[entry]! * figure(body));
  const zeros = () => new Float64Array(laid.length);
  return {
    count: laid.length,
    entry: Int32Array.from(laid, (one) => one.entry),
    dryHeat: each((body) => body.overlay!.arealHeat),
    wetConductance: each((body) => body.overlay!.wetConductance),
    dryConductance: each((body) => body.overlay!.dryConductance),
    temperature: zeros().fill(startC),
    water: each((body) => body.overlay!.waterKgM2),
    driedAtS: zeros().fill(Number.NaN),
    boiled: zeros(),
    clock: new Float64Array(1),
    rhs: zeros(),
    inverse: zeros(),
    conductance: zeros(),
  };
}

/** What of the entries an overlay reads and rewrites. */
export type OverlaidEntries = {
  share: Float64Array;
  temperature: Float64Array;
  before: Float64Array;
  /** Film through shields times its area, and that times the equivalent temperature. */
  outer: Float64Array;
  outerSource: Float64Array;
  /** Film per area of surface, as the skin sees it, and the nozzle's part of it. */
  film: Float64Array;
  source: Float64Array;
  gasFilm: Float64Array;
};

const heatOf = (overlays: Overlays, index: number): number =>
  overlays.dryHeat[index]! + overlays.water[index]! * WATER_HEAT;

/** Before the solve: puts each overlay in the place of its entry's film. Water that boils stays at 100 °C in this step. */
export function coverEntries(overlays: Overlays, entries: OverlaidEntries, { dt, theta }: SubStep): void {
  const tau = theta * dt;
  const { outer, outerSource, film, source, gasFilm, temperature, share } = entries;
  for (let index = 0; index < overlays.count; index++) {
    const entry = overlays.entry[index]!;
    const wet = overlays.water[index]! > 0;
    const g = wet ? overlays.wetConductance[index]! : overlays.dryConductance[index]!;
    const here = overlays.temperature[index]!;
    const under = temperature[entry]!;
    const h = outer[entry]!;
    const rate = outerSource[entry]! - h * here + g * (under - here);
    const boils = wet && here >= BOILING_C && rate > 0;
    const inverse = boils ? 0 : 1 / (heatOf(overlays, index) + tau * (h + g));
    overlays.conductance[index] = g;
    overlays.rhs[index] = dt * rate;
    overlays.inverse[index] = inverse;
    const seen = g * (1 - tau * g * inverse);
    outer[entry] = seen;
    outerSource[entry] = seen * under + g * (here - under) + theta * g * dt * rate * inverse;
    const perArea = g / share[entry]!;
    film[entry] = perArea;
    source[entry] = perArea * here;
    gasFilm[entry] = gasFilm[entry]! > 0 ? perArea : 0;
  }
}

/** After the solve: moves the overlays on; what boils takes its heat out of the water. Energy is kept to rounding. */
export function moveOverlays(overlays: Overlays, entries: OverlaidEntries, { dt, theta }: SubStep): void {
  const { temperature, water, boiled, driedAtS, clock } = overlays;
  clock[0]! += dt;
  for (let index = 0; index < overlays.count; index++) {
    const entry = overlays.entry[index]!;
    const change = entries.temperature[entry]! - entries.before[entry]!;
    const push = overlays.rhs[index]! + theta * dt * overlays.conductance[index]! * change;
    const heat = heatOf(overlays, index);
    // A step that boils puts all it gets above 100 °C; any other warms the mass and then looks.
    const boils = overlays.inverse[index] === 0;
    const next = boils ? BOILING_C + push / heat : temperature[index]! + push * overlays.inverse[index]!;
    temperature[index] = next;
    const left = water[index]!;
    if (left <= 0 || next <= BOILING_C) continue;
    const excess = (next - BOILING_C) * heat;
    const spent = Math.min(excess, left * LATENT_HEAT);
    boiled[index]! += spent;
    water[index] = Math.max(0, left - spent / LATENT_HEAT);
    if (spent < excess) {
      water[index] = 0;
      driedAtS[index] = clock[0]!;
    }
    temperature[index] = BOILING_C + (excess - spent) / heatOf(overlays, index);
  }
}
