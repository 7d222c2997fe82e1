/**
 * The special functions of the exact plate solutions, straight from their integrals (Abramowitz and Stegun 9.6.16, 9.6.24;
 * Hantush 1956), by the trapezoidal rule, which converges faster than any power for these smooth, fading integrands. They serve
 * curves and recomputed tables; no code of the program is used.
 */
function integral(of: (t: number) => number, from: number, to: number, pieces = 4000): number {
  const step = (to - from) / pieces;
  let sum = (of(from) + of(to)) / 2;
  for (let piece = 1; piece < pieces; piece++) sum += of(from + piece * step);
  return sum * step;
}

export const besselI0 = (x: number): number => integral((t) => Math.exp(x * Math.cos(t)), 0, Math.PI) / Math.PI;
export const besselI1 = (x: number): number =>
  integral((t) => Math.exp(x * Math.cos(t)) * Math.cos(t), 0, Math.PI) / Math.PI;
export const besselK0 = (x: number): number => integral((t) => Math.exp(-x * Math.cosh(t)), 0, 14);
export const besselK1 = (x: number): number => integral((t) => Math.exp(-x * Math.cosh(t)) * Math.cosh(t), 0, 14);

/** Hantush's well function W(u, b): the integral from u of exp(-y - b^2 / 4y) / y; with b = 0 the exponential integral E1. */
export function hantush(u: number, b: number): number {
  // y = e^s: the integrand exp(-y - b^2 / 4y) over s.
  return integral((s) => Math.exp(-Math.exp(s) - (b * b) / (4 * Math.exp(s))), Math.log(u), Math.log(u + 60), 20000);
}
