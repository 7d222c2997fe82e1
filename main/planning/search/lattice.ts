/** A place of whole numbers, one for each figure that is searched. */
export type Place = readonly number[];
export type Axis = { from: number; to: number };

const half = ({ from, to }: Axis): number => (to - from) / 2;

/** A place in coordinates from -1 to 1; an axis without length counts as 0. */
export const scaled = (place: Place, axes: readonly Axis[]): number[] =>
  place.map((value, axis) => (half(axes[axis]!) > 0 ? (value - axes[axis]!.from) / half(axes[axis]!) - 1 : 0));

/** The whole place at coordinates, held in the axes. */
const placeAt = (at: readonly number[], axes: readonly Axis[]): Place =>
  at.map((one, axis) => {
    const { from, to } = axes[axis]!;
    return Math.min(to, Math.max(from, Math.round(from + (one + 1) * half(axes[axis]!))));
  });

/** Every combination of values along the axes. */
function combinations(values: readonly (readonly number[])[]): number[][] {
  let all: number[][] = [[]];
  for (const own of values) all = all.flatMap((before) => own.map((value) => [...before, value]));
  return all;
}

const unlike = (places: readonly Place[]): Place[] => [
  ...new Map(places.map((place) => [place.join(), place])).values(),
];

/** Where a search begins: the middle of the bounds, the middles of their faces, their corners. */
export function firstPlaces(axes: readonly Axis[]): Place[] {
  const ends = (at: readonly number[]) => at.filter((one) => one !== 0).length;
  const all = combinations(axes.map(() => [0, -1, 1]));
  const kept = all.filter((at) => ends(at) <= 1 || ends(at) === axes.length);
  return unlike(kept.sort((a, b) => ends(a) - ends(b)).map((at) => placeAt(at, axes)));
}

/** The place a little further along one axis, in halves of it. */
export function placeBeside(place: Place, axes: readonly Axis[], { axis, by }: { axis: number; by: number }): Place {
  const at = scaled(place, axes);
  return placeAt(at.with(axis, at[axis]! + by), axes);
}

/** Steps to each side of the middle. */
const SIDE = 5;

/** Places evenly about a middle, up to `reach` away along each axis (1: half of the bounds), the middle first. */
export function placesAbout(middle: Place, axes: readonly Axis[], reach: number): Place[] {
  const centre = scaled(middle, axes);
  const steps = Array.from({ length: 2 * SIDE + 1 }, (_, index) => ((index - SIDE) / SIDE) * reach);
  const all = combinations(centre.map((one) => steps.map((step) => Math.min(1, Math.max(-1, one + step)))));
  return unlike([middle, ...all.map((at) => placeAt(at, axes))]);
}
