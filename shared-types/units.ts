/** Conversions used at the borders of the program. Files keep mm, degrees and degrees Celsius; the heat code keeps SI. */
export const MM_PER_INCH = 25.4;
export const MM_PER_MIL = 0.0254;
export const KELVIN_AT_ZERO_CELSIUS = 273.15;

export const mmToM = (mm: number): number => mm / 1000;
export const mToMm = (m: number): number => m * 1000;
export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const radiansToDegrees = (radians: number): number => (radians * 180) / Math.PI;
export const celsiusToFahrenheit = (celsius: number): number => celsius * 1.8 + 32;

export type LengthUnit = 'mm' | 'mil';
export type TemperatureUnit = 'C' | 'F';
