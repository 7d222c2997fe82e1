/**
 * Dry air at 101325 Pa. Viscosity: Sutherland's law; conductivity: the U.S. Standard Atmosphere form
 * (constants of heat-model.md, section 3). Temperatures in kelvin.
 */

export const ZERO_CELSIUS_K = 273.15;
export const STEFAN_BOLTZMANN = 5.6704e-8;
export const GRAVITY = 9.80665;

/** Specific heat, J/kgK. */
export const AIR_HEAT = 1006;

/** Dynamic viscosity, Pa s. */
export function airViscosity(kelvin: number): number {
  return (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
}

/** Conductivity, W/mK. */
export function airConductivity(kelvin: number): number {
  return (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
}

/** Density, kg/m3. */
export function airDensity(kelvin: number): number {
  return 101325 / (287.05 * kelvin);
}
