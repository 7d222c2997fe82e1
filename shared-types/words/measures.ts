import { celsiusToFahrenheit, type LengthUnit, MM_PER_MIL, type TemperatureUnit, type Units } from '../units.ts';

/** How figures are written in sentences: whole degrees, in the user's units. */
export type Measures = {
  units: Units;
  /** A temperature given in C. */
  temperature(celsius: number): string;
  /** A temperature without its unit, given in C. */
  degrees(celsius: number): string;
  /** A difference given in K; never '0': a difference that rounds to nothing reads 'less than 1'. */
  difference(kelvin: number): string;
  /** A difference given in K, without its unit; never '0'. */
  differenceDegrees(kelvin: number): string;
  /** A length given in mm. */
  length(mm: number): string;
  /** A duration given in s. */
  seconds(seconds: number): string;
  /** A rise given in K/s. */
  rate(kelvinPerSecond: number): string;
};

/** A figure rounded to so many decimals; '?' when there is none. */
export function rounded(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return '?';
  const scale = 10 ** decimals;
  return String(Math.round(value * scale) / scale || 0);
}

/** Sentences' figures in the given units. */
export function measuresIn(temperatureUnit: TemperatureUnit, lengthUnit: LengthUnit): Measures {
  const fahrenheit = temperatureUnit === 'F';
  const unit = fahrenheit ? '°F' : '°C';
  const degrees = (celsius: number) => rounded(fahrenheit ? celsiusToFahrenheit(celsius) : celsius);
  const step = (kelvin: number) => (fahrenheit ? kelvin * 1.8 : kelvin);
  return {
    units: { temperature: temperatureUnit, length: lengthUnit },
    degrees,
    differenceDegrees: (kelvin) =>
      Number.isFinite(kelvin) ? String(Math.max(1, Math.round(Math.abs(step(kelvin))))) : '?',
    temperature: (celsius) => `${degrees(celsius)} ${unit}`,
    difference: (kelvin) =>
      Math.abs(step(kelvin)) < 0.5 ? `less than 1 ${unit}` : `${rounded(Math.abs(step(kelvin)))} ${unit}`,
    length: (mm) => (lengthUnit === 'mil' ? `${rounded(mm / MM_PER_MIL)} mil` : `${rounded(mm, 1)} mm`),
    seconds: (seconds) => `${rounded(seconds)} s`,
    rate: (kelvinPerSecond) => `${rounded(step(kelvinPerSecond), 1)} ${unit}/s`,
  };
}

/** What the command line uses, and the sheet where nothing else is asked for: °C and mm. */
export const METRIC: Measures = measuresIn('C', 'mm');
