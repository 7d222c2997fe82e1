/** Preferred numbers of IEC 60063 for values of resistors. */

export type SeriesName = 'E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192';

/** IEC 60063, E24: eight of its values (27 to 47 and 82) are not what the formula gives, so they are listed. */
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91] as const;

const everyNth = (values: readonly number[], n: number): number[] => values.filter((_, index) => index % n === 0);

/** IEC 60063: the 48-fold series round 100 * 10^(k/n); the one exception is 920 of E192, where rounding gives 919. */
function fineSeries(n: 48 | 96 | 192): number[] {
  return Array.from({ length: n }, (_, k) => {
    const rounded = Math.round(100 * 10 ** (k / n));
    return rounded === 919 ? 920 : rounded;
  });
}

/** Significands of each series: two digits up to E24, three above. */
export const E_SERIES: Record<SeriesName, readonly number[]> = {
  E3: everyNth(E24, 8),
  E6: everyNth(E24, 4),
  E12: everyNth(E24, 2),
  E24,
  E48: fineSeries(48),
  E96: fineSeries(96),
  E192: fineSeries(192),
};

const COARSE_TO_FINE = Object.keys(E_SERIES) as SeriesName[];

/** Three-digit significand of a positive value, or null where it has more digits than that. */
function significand(value: number): number | null {
  const scaled = value / 10 ** (Math.floor(Math.log10(value) + 1e-12) - 2);
  const whole = Math.round(scaled);
  if (Math.abs(scaled - whole) > 1e-6 * whole) return null;
  return whole === 1000 ? 100 : whole;
}

const threeDigits = (name: SeriesName): readonly number[] =>
  E_SERIES[name].map((value) => (value < 100 ? value * 10 : value));

/** The coarsest series that has the value (10k: E3, 4k7: E3, 5k1: E24, 19k1: E96); null: no preferred value. */
export function seriesOf(value: number): SeriesName | null {
  if (!(value > 0) || !Number.isFinite(value)) return null;
  const digits = significand(value);
  if (digits === null) return null;
  return COARSE_TO_FINE.find((name) => threeDigits(name).includes(digits)) ?? null;
}

/** The value of the series that lies nearest by ratio. `value` must be positive. */
export function nearestPreferred(value: number, name: SeriesName): number {
  const decade = Math.floor(Math.log10(value));
  const candidates = [decade - 1, decade, decade + 1].flatMap((power) =>
    threeDigits(name).map((digits) => Number(`${digits}e${power - 2}`)),
  );
  const gap = (candidate: number) => Math.abs(Math.log(candidate / value));
  return candidates.reduce((best, candidate) => (gap(candidate) < gap(best) ? candidate : best));
}
