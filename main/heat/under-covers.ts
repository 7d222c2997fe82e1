import type { BodyEntries } from './body-entries.ts';
import type { HeatState } from './heat-state.ts';
import type { Moment } from './moment.ts';
import type { SceneBody } from './scene.ts';

/** Still air at about 150 °C between a part and the can over it, W/mK; radiation between them is little: the sheet is shiny inside. */
const GAP_AIR = 0.035;
/** A part that fills its can touches it here and there at most: no gap is taken as thinner, m (assumption of ours). */
const LEAST_GAP_M = 0.0003;

/**
 * Entries of parts that stand under a can: the can, not the gas, the preheater or the room, is what their upper side sees, through the air
 * between. One row for each such entry.
 */
export type UnderCovers = {
  count: number;
  entry: Int32Array;
  /** The can's entry in the same cell. */
  cover: Int32Array;
  /** Share of the entry that the can covers. */
  share: Float64Array;
  /** Conductance of the air between, W/m2K. */
  film: Float64Array;
};

const heightOf = (entries: BodyEntries, bodies: readonly SceneBody[], order: number): number =>
  bodies[entries.bodyOfScene[order]!]!.heightM;

/**
 * Finds what stands under cans. Where a part stands between, the can sees no board through its air: `entries.joint` of the can is
 * lessened. Only cans cover: a frame is open, a stiffener lies flat.
 */
export function findUnderCovers(entries: BodyEntries, bodies: readonly SceneBody[]): UnderCovers {
  const canAt = new Map<number, { entry: number; order: number }>();
  const rows: { entry: number; cover: number; share: number; film: number }[] = [];
  const each = (visit: (order: number, body: SceneBody, entry: number) => void) => {
    for (let order = 0; order + 1 < entries.bodyStart.length; order++)
      for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++)
        visit(order, bodies[entries.bodyOfScene[order]!]!, entry);
  };
  each((order, body, entry) => {
    if (body.shape === 'can') canAt.set(entries.face[entry]!, { entry, order });
  });
  if (canAt.size > 0)
    each((order, body, entry) => {
      const can = body.metal ? undefined : canAt.get(entries.face[entry]!);
      if (!can) return;
      const gapM = Math.max(LEAST_GAP_M, heightOf(entries, bodies, can.order) - heightOf(entries, bodies, order));
      const share = Math.min(1, entries.share[can.entry]!);
      rows.push({ entry, cover: can.entry, share, film: GAP_AIR / gapM });
      const seen = bodies[entries.bodyOfScene[can.order]!]!.gapConductance * entries.share[entry]! * share;
      entries.joint[can.entry] = Math.max(0, entries.joint[can.entry]! - seen);
    });
  return {
    count: rows.length,
    entry: Int32Array.from(rows, (row) => row.entry),
    cover: Int32Array.from(rows, (row) => row.cover),
    share: Float64Array.from(rows, (row) => row.share),
    film: Float64Array.from(rows, (row) => row.film),
  };
}

/** Puts the air to the can in the place of the films of what stands under it. Call when the films of all entries are written. */
export function filmsUnderCovers(state: HeatState, now: number, earlier: number): void {
  const { count, entry, cover, share, film } = state.entries.under;
  const { temperature, before, film: films, source, gasFilm, radiation, irradiated } = state.body;
  for (let row = 0; row < count; row++) {
    const at = entry[row]!;
    const can = cover[row]!;
    const covered = share[row]!;
    const open = 1 - covered;
    const coverC = now * temperature[can]! + earlier * before[can]!;
    films[at] = open * films[at]! + covered * film[row]!;
    source[at] = open * source[at]! + covered * film[row]! * coverC;
    // Heat from the can over it counts as coming from the gas, which heats the can.
    gasFilm[at] = open === 0 && coverC > temperature[at]! ? films[at]! : open * gasFilm[at]!;
    radiation[at]! *= open;
    irradiated[at]! *= open;
  }
}

/**
 * Lets heat go between cans and what stands under them, both taken ahead to the middle of the sub-step: what one gives the other gets, to
 * rounding. Call when shields are in the films.
 */
export function exchangeUnderCovers(state: HeatState, now: number, earlier: number): void {
  const { count, entry, cover, share, film } = state.entries.under;
  const { temperature, before, film: films, outer, outerSource } = state.body;
  for (let row = 0; row < count; row++) {
    const at = entry[row]!;
    const can = cover[row]!;
    const through = (outer[at]! / films[at]!) * share[row]! * film[row]!;
    const coverC = now * temperature[can]! + earlier * before[can]!;
    const flow = through * (coverC - now * temperature[at]! - earlier * before[at]!);
    outer[at]! -= through;
    outerSource[at]! += flow - through * coverC;
    outerSource[can]! -= flow;
  }
}

/** Films at the end of a sub-step, where `filmsAtEnd` has moved those of the open side: what is covered sees the can still. */
export function filmsUnderCoversAtEnd(state: HeatState, moment: Moment): void {
  const { count, entry, cover, share, film } = state.entries.under;
  const { upperEnd, cell, emissivity } = state.entries;
  const { temperature, source, film: films, irradiated } = state.body;
  const { flux, fluxAtEnd, footprint, preheaterFilm, sourceC } = moment;
  for (let row = 0; row < count; row++) {
    const at = entry[row]!;
    const covered = share[row]!;
    const fromCan = film[row]! * temperature[cover[row]!]!;
    if (covered === 1) {
      films[at] = film[row]!;
      source[at] = fromCan;
    } else if (at >= upperEnd) {
      if (state.zone[cell[at]!]) source[at] = (1 - covered) * preheaterFilm * sourceC + covered * fromCan;
    } else if (footprint && flux > 0 && fluxAtEnd !== flux) {
      const more = covered * emissivity[at]! * (fluxAtEnd - flux) * footprint.shape[cell[at]!]!;
      irradiated[at]! -= more;
      source[at]! -= more;
    }
  }
}
