import { MIN_OUTLINE_AREA_MM2 } from '../outline/choose.ts';
import { type Pad, padsBox, pinCentres } from '../pads/collect.ts';
import { turnByPins } from '../pads/pin-turn.ts';
import { boxCentre } from '../plane.ts';
import type { PlacedMm, Registration } from '../register/register.ts';
import { isShieldName } from './covers.ts';
import type { Layers } from './layers.ts';

/** Fewer pins are test points, marks and holes as a rule. */
const MIN_PINS = 2;

/**
 * Placements out of pads that carry references, for Gerber layers that come without a placement table: every reference of
 * two pins or more, in the middle of its pads, not turned. Layers have one origin, so there is no offset.
 */
export function registerPads(pads: ReadonlyMap<string, readonly Pad[]>, file: string): Registration | null {
  const placements = [...pads].flatMap(([refdes, own]) =>
    refdes !== '' && isPart(refdes, own) ? [placementOf(refdes, own, file)] : [],
  );
  if (placements.length === 0) return null;
  const offset = { x: 0, y: 0, votes: 0, of: 0, by: 'own' as const };
  return { placements, assumedUnit: null, unitBy: 'said', bottomNegated: false, bottomBy: 'pads', offset };
}

/** A board of an outline alone, to be filled by hand; null where nothing shows one. */
export function registerNone({ outlines }: Layers): Registration | null {
  const shown = outlines.some(({ loops }) => loops.some(({ areaMm2 }) => areaMm2 >= MIN_OUTLINE_AREA_MM2));
  if (!shown) return null;
  return { placements: [], assumedUnit: null, unitBy: 'said', bottomNegated: false, bottomBy: 'usual', offset: null };
}

/** References with pads that `registerPads` leaves out. */
export function padsLeftOut(pads: ReadonlyMap<string, readonly Pad[]>): string[] {
  return [...pads].flatMap(([refdes, own]) => (isPart(refdes, own) ? [] : [refdes]));
}

/** A shield's ring of pads has one pin as a rule. */
const isPart = (refdes: string, pads: readonly Pad[]): boolean =>
  pinsOf(pads) >= MIN_PINS || (isShieldName(refdes) && pads.length >= MIN_RING);

const MIN_RING = 4;

function pinsOf(pads: readonly Pad[]): number {
  return new Set(pads.map(({ pin }) => pin)).size;
}

/** Surface pads tell the side; pins that go through stand on both, and the top is taken. */
function placementOf(refdes: string, pads: readonly Pad[], file: string): PlacedMm {
  const surface = pads.filter(({ through }) => !through);
  const bottom = surface.filter((pad) => pad.side === 'bottom').length;
  const side = bottom * 2 > surface.length ? 'bottom' : 'top';
  return {
    refdes,
    ...boxCentre(padsBox(pads)),
    rotation: turnByPins(pinCentres(pads), side) ?? 0,
    side,
    packageName: '',
    value: '',
    heightMm: null,
    pad1: null,
    fitted: true,
    file,
    line: 0,
  };
}
