import type { Part } from '../board.ts';
import type { AppliedLimit } from '../evaluation.ts';
import { alloyById, meltingRange } from './alloys.ts';
import { classById } from './classes.ts';
import type { ClassLimit, PartClass } from './library-types.ts';
import { classificationC, type Process } from './package-limits.ts';
import { found, J_STD_020_LEAD_FREE, J_STD_020_TIN_LEAD } from './sources.ts';

/** Body height of a part, mm: its own, or its class's where the board does not say. */
export const heightOf = (part: Part): number => part.package.heightMm ?? classById(part.class).defaultHeightMm;

/** Volume of a part's body, mm3, stand-off and cavities included (J-STD-020 excludes terminals only). */
export function volumeOf(part: Part): number {
  const { lengthMm, widthMm, shape } = part.package;
  const area = shape === 'round' ? (Math.PI / 4) * lengthMm * widthMm : lengthMm * widthMm;
  return area * heightOf(part);
}

/** A part soldered with tin-lead may be classified for tin-lead only; an unknown or low-melting alloy says nothing. */
function processOf(part: Part): Process {
  const alloy = alloyById(part.alloy);
  return alloy && !alloy.leadFree && alloy.liquidusC > 170 ? 'tin-lead' : 'lead-free';
}

function applied(limit: PartClass['bodyLimit'], part: Part): AppliedLimit | null {
  if (limit === null) return null;
  if (limit !== 'by-volume') return { celsius: limit.celsius, origin: 'class', source: limit.source };
  const process = processOf(part);
  const celsius = classificationC(heightOf(part), volumeOf(part), process);
  return { celsius, origin: 'class', source: process === 'tin-lead' ? J_STD_020_TIN_LEAD : J_STD_020_LEAD_FREE };
}

/**
 * Limits of a part, C, before its alloy is looked at. Its own (data sheet) win over the class; `joint` is set only
 * where the data sheet names one. Tc goes by the height above the board, which is never less than the body's
 * thickness: the cautious side.
 */
export function limitsOf(part: Part): Record<'body' | 'skin' | 'joint', AppliedLimit | null> {
  const partClass = classById(part.class);
  const own = (celsius: number | undefined): AppliedLimit | null =>
    celsius === undefined || !part.limits
      ? null
      : { celsius, origin: 'own', source: { text: part.limits.source, how: 'found', confidence: 'H' } };
  return {
    body: own(part.limits?.bodyC) ?? applied(partClass.bodyLimit, part),
    skin: own(part.limits?.skinC) ?? applied(partClass.skinLimit, part),
    joint: own(part.limits?.jointC),
  };
}

/** The solidus of a neighbour's joints as a limit, C; an unknown alloy is judged at the lowest usual candidate. */
export function solidusLimit(part: Part): AppliedLimit {
  const range = meltingRange(part.alloy, 'neighbour');
  const { source } = range.alloy;
  const text = `Solidus of ${range.alloy.name}${range.known ? '' : ', taken because the alloy is not known'}: ${source.text}`;
  return { celsius: range.solidusC, origin: 'alloy', source: { ...source, text } };
}

const COURSE = 'Published course page of a rework service, "Part Removal": neighbours below';

/** Shop presets for the joints of neighbours, C. */
export const SHOP_NEIGHBOUR_JOINT: Record<Process, ClassLimit> = {
  'lead-free': { celsius: 200, source: found(`${COURSE} 200 °C, lead-free`, 'M') },
  'tin-lead': { celsius: 180, source: found(`${COURSE} 180 °C, tin-lead`, 'M') },
};

/** The shop preset for a neighbour's joints by its alloy, C; an unknown alloy counts as tin-lead. */
export function shopJointLimit(part: Part): AppliedLimit {
  const { alloy } = meltingRange(part.alloy, 'neighbour');
  return { ...SHOP_NEIGHBOUR_JOINT[alloy.leadFree ? 'lead-free' : 'tin-lead'], origin: 'shop' };
}

/**
 * Package limit of a target, C: Tc less 5 K, or its own skin limit less 5 K. Null for a class that has none.
 * J-STD-020: the user's peak must not exceed Tc.
 */
export function targetSkinLimit(part: Part): number | null {
  const limits = limitsOf(part);
  const limit = limits.skin ?? limits.body;
  return limit && limit.celsius - 5;
}
