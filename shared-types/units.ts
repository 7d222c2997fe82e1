/** Conversions used at the borders of the program. Files keep mm, degrees and degrees Celsius; the heat code keeps SI. */
export const MM_PER_MIL = 0.0254;

export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const celsiusToFahrenheit = (celsius: number): number => celsius * 1.8 + 32;
export const fahrenheitToCelsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

export type LengthUnit = 'mm' | 'mil';
export type TemperatureUnit = 'C' | 'F';
/** What a user reads temperatures and lengths in. */
export type Units = { temperature: TemperatureUnit; length: LengthUnit };
