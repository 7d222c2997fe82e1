import { fahrenheitToCelsius, MM_PER_MIL, type Units } from '../units.ts';
import { type Measures, measuresIn, rounded } from './measures.ts';
import { clock, type Phrase, TIED } from './work-map.ts';

/** Figures of the sheet in the user's units. Temperatures are given in C, differences in K, lengths in mm. */
export type SheetFigures = {
  measures: Measures;
  temperatureUnit: string;
  /** Without a unit; with its 90 % band where there is one. */
  bare(celsius: number, bandK?: number): string;
  degrees(celsius: number): string;
  /** A temperature with its figure set strong, its unit plain and its band. */
  strongDegrees(celsius: number, bandK?: number): Phrase;
  /** ' ±12', or nothing where no band is known. */
  within(bandK: number | undefined | null): string;
  /** A margin with its sign. */
  signed(kelvin: number): string;
  ramp(startC: number, endC: number): string;
  range(fromC: number, toC: number): string;
  ofLimit(celsius: number, limitC: number, bandK?: number): string;
  peakAt(celsius: number, atS: number, bandK?: number): string;
  length(mm: number): string;
  sizes(lengthMm: number, widthMm: number): string;
  /** Distances of the rings round a rework area, and lengths of scale bars: whole figures in the user's unit, mm. */
  ringsMm: readonly number[];
  barsMm: readonly number[];
  /** Levels of the isotherms between two temperatures, whole tens in the user's unit, C; and the step in words. */
  isothermsC(lowC: number, highC: number): number[];
  isothermStep: string;
  /** Ticks of a temperature axis up to a temperature, in the user's unit, with their places in C. */
  axis(topC: number, room: (share: number) => boolean): { celsius: number; text: string }[];
};

const METRIC_RINGS = [5, 10, 20];
const METRIC_BARS = [1, 2, 5, 10, 20, 50, 100, 200];
const inMil = (mil: readonly number[]): number[] => mil.map((one) => one * MM_PER_MIL);

/** Figures of the sheet as the user reads them. */
export function sheetFigures({ temperature, length }: Units): SheetFigures {
  const measures = measuresIn(temperature, length);
  const fahrenheit = temperature === 'F';
  const mil = length === 'mil';
  const temperatureUnit = fahrenheit ? '°F' : '°C';
  const shownToC = (shown: number) => (fahrenheit ? fahrenheitToCelsius(shown) : shown);
  const { degrees } = measures;
  const within = (bandK: number | undefined | null) =>
    bandK === undefined || bandK === null ? '' : ` ±${measures.differenceDegrees(bandK)}`;
  const bare = (celsius: number, bandK?: number) => degrees(celsius) + within(bandK);
  const plain = (mm: number) => (mil ? rounded(mm / MM_PER_MIL) : rounded(mm, 1));
  const isothermStep = fahrenheit ? 40 : 20;
  return {
    ...{ measures, temperatureUnit, bare, within },
    degrees: (celsius) => `${degrees(celsius)}${TIED}${temperatureUnit}`,
    strongDegrees: (celsius, bandK) => [{ strong: degrees(celsius) }, `${TIED}${temperatureUnit}${within(bandK)}`],
    signed: (kelvin) => {
      const step = Math.round(fahrenheit ? kelvin * 1.8 : kelvin);
      return `${step < 0 ? '−' : '+'}${Number.isFinite(step) ? Math.abs(step) : '?'}`;
    },
    ramp: (startC, endC) =>
      degrees(startC) === degrees(endC) ? degrees(startC) : `${degrees(startC)} to ${degrees(endC)}`,
    range: (fromC, toC) => `${degrees(fromC)}–${degrees(toC)}`,
    ofLimit: (celsius, limitC, bandK) =>
      Number.isFinite(limitC) ? `${bare(celsius, bandK)} of ${degrees(limitC)}` : bare(celsius, bandK),
    peakAt: (celsius, atS, bandK) => `${bare(celsius, bandK)}${bandK === undefined ? ' ' : '\n'}at ${clock(atS)}`,
    length: (mm) => `${plain(mm)}${TIED}${mil ? 'mil' : 'mm'}`,
    sizes: (lengthMm, widthMm) => `${plain(lengthMm)} x ${plain(widthMm)}${TIED}${mil ? 'mil' : 'mm'}`,
    ringsMm: mil ? inMil([200, 400, 800]) : METRIC_RINGS,
    barsMm: mil ? inMil([50, 100, 200, 500, 1000, 2000, 5000]) : METRIC_BARS,
    isothermsC: (lowC, highC) => {
      const first = Math.floor(Number(shown(lowC, fahrenheit)) / isothermStep + 1) * isothermStep;
      const levels: number[] = [];
      for (let level = first; shownToC(level) < highC; level += isothermStep) levels.push(shownToC(level));
      return levels;
    },
    isothermStep: `${isothermStep}${TIED}${temperatureUnit}`,
    axis: (topC, room) => {
      const top = shown(topC, fahrenheit);
      const step = [50, 100, 200, 400, 800].find((one) => room(one / top)) ?? 800;
      const ticks: { celsius: number; text: string }[] = [];
      for (let at = 0; at <= top; at += step) ticks.push({ celsius: shownToC(at), text: String(at) });
      return ticks;
    },
  };
}

const shown = (celsius: number, fahrenheit: boolean): number => (fahrenheit ? celsius * 1.8 + 32 : celsius);
