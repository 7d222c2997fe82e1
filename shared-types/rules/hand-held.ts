import type { Plan } from '../plan.ts';

/** A nozzle kept moving or held at an angle is in a hand; one held still and upright, a hood or an emitter, is in a stand. */
export function isHandHeld({ station: { nozzle } }: Pick<Plan, 'station'>): boolean {
  if (nozzle.kind === 'hood' || nozzle.kind === 'infrared') return false;
  return nozzle.sweepRadiusMm > 0 || nozzle.tiltDeg > 0;
}
