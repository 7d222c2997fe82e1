import type { Part } from '../../shared-types/board.ts';
import type { JudgedOn, PartExposure } from '../../shared-types/evaluation.ts';
import { solidusFor } from '../../shared-types/library/alloys.ts';
import { limitsOf, solidusLimit } from '../../shared-types/library/limits.ts';
import type { BodyPeaks } from './part-peaks.ts';

export type Limits = PartExposure['limits'];

/** How a part is judged in one run: the target's joints must melt, so they have no limit. */
export type Role = 'target' | 'neighbour';

/** Solidus of a part's joints in its role, °C; `alloy` is the site's for a target. */
export function judgedSolidus(part: Part, role: Role, alloy: string): number {
  return solidusFor(role === 'target' ? alloy : part.alloy, role);
}

/**
 * The limits that apply: own, else class; a neighbour's joints: their solidus. What a shop usually keeps below is a
 * finding of planning.
 */
export function appliedLimits(part: Part, role: Role): Limits {
  const limits = limitsOf(part);
  if (role === 'target') return { ...limits, joint: null };
  return { ...limits, joint: limits.joint ?? solidusLimit(part) };
}

export type Judgement = {
  margins: PartExposure['margins'];
  /** The smallest margin, K; infinite where no limit is known. */
  marginK: number;
  governedBy: JudgedOn;
};

/** Margins of peaks against limits; the smallest governs. */
export function judge(peaks: Pick<BodyPeaks, 'body' | 'skin' | 'joint'>, limits: Limits): Judgement {
  const judged: JudgedOn[] = ['body', 'skin', 'joint'];
  const margins: Judgement['margins'] = { body: null, skin: null, joint: null };
  const judgement: Judgement = { margins, marginK: Number.POSITIVE_INFINITY, governedBy: 'body' };
  for (const on of judged) {
    const limit = limits[on];
    if (!limit) continue;
    const margin = limit.celsius - peaks[on].maxC;
    margins[on] = margin;
    if (margin >= judgement.marginK) continue;
    judgement.marginK = margin;
    judgement.governedBy = on;
  }
  return judgement;
}
