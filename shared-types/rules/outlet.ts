import type { Station } from '../plan.ts';

/** A dial setting and what a bare thermocouple read at the outlet, C. */
export type OutletReading = { settingC: number; outletC: number };

/**
 * Outlet temperature at a setting from measured ones: straight lines between them, and from the room to the first;
 * beyond the last the rise over the room keeps its share. Settings in any order.
 */
export function measuredOutletC(readings: readonly OutletReading[], roomC: number, settingC: number): number {
  const sorted = [{ settingC: roomC, outletC: roomC }, ...readings].sort((a, b) => a.settingC - b.settingC);
  const after = sorted.findIndex((one) => one.settingC >= settingC);
  if (after === 0) return settingC;
  if (after < 0) {
    const { settingC: lastC, outletC } = sorted[sorted.length - 1];
    return lastC > roomC ? roomC + ((outletC - roomC) / (lastC - roomC)) * (settingC - roomC) : settingC;
  }
  const [a, b] = [sorted[after - 1], sorted[after]];
  const span = b.settingC - a.settingC;
  return span > 0 ? a.outletC + ((settingC - a.settingC) / span) * (b.outletC - a.outletC) : b.outletC;
}

/** True when what comes out is known and not guessed from the dial. An emitter's dial says its own temperature. */
export const outletIsKnown = ({ gasReads, nozzle, outletReadings }: Station): boolean =>
  gasReads === 'outlet' || nozzle.kind === 'infrared' || outletReadings.length > 0;
