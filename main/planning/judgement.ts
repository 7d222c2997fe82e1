import type { Part } from '../../shared-types/board.ts';
import type { AppliedLimit, JudgedOn, PartExposure } from '../../shared-types/evaluation.ts';
import { alloyById } from '../../shared-types/library/alloys.ts';
import type { PartClass } from '../../shared-types/library/library-types.ts';
import { DEFAULT_SHIELD, shieldById } from '../../shared-types/library/shields.ts';
import type { Figures } from '../../shared-types/words/figures.ts';
import { LARGE_PART_MM } from './published.ts';

/** One of a part's figures against its limit: peak and margin as they are and under the default shield, C and K. */
export type Judgement = {
  judgedOn: JudgedOn;
  peakC: number;
  limit: AppliedLimit;
  marginK: number;
  shieldedC: number;
  shieldedMarginK: number;
  /** Half width of this figure's 90 % band, K; null: not computed. */
  bandK: number | null;
};

function judge(exposure: PartExposure, judgedOn: JudgedOn): Judgement | null {
  const limit = exposure.limits[judgedOn];
  if (!limit) return null;
  const peakC = exposure[judgedOn].maxC;
  const shieldedC = exposure.ifShielded[`${judgedOn}MaxC`];
  return {
    judgedOn,
    peakC,
    limit,
    marginK: limit.celsius - peakC,
    shieldedC,
    shieldedMarginK: limit.celsius - shieldedC,
    bandK: exposure.bands?.[`${judgedOn}K`] ?? exposure.bandK,
  };
}

const tightest = (judgements: (Judgement | null)[]): Judgement | null =>
  judgements.reduce((least, next) => (next && (!least || next.marginK < least.marginK) ? next : least), null);

/** The tighter of body and skin: joints melting is another question than a body that is cooked. Null: no limit known. */
export const bodyJudgement = (exposure: PartExposure): Judgement | null =>
  tightest([judge(exposure, 'body'), judge(exposure, 'skin')]);

export const jointJudgement = (exposure: PartExposure): Judgement | null => judge(exposure, 'joint');

/** The tightest of all three. */
export const tightestJudgement = (exposure: PartExposure): Judgement | null =>
  tightest([bodyJudgement(exposure), jointJudgement(exposure)]);

/** The margin that remains under the default shield, K: the smaller of body and skin; infinite without a limit. */
export function shieldedMargin(exposure: PartExposure): number {
  const both = [judge(exposure, 'body'), judge(exposure, 'skin')];
  return Math.min(...both.map((judgement) => judgement?.shieldedMarginK ?? Infinity));
}

/** Where a limit comes from, in one word for the sentence; `tc`: classification temperature of the package. */
function originOf(judgement: Judgement, partClass: PartClass): string {
  const ofClass = judgement.judgedOn === 'skin' ? partClass.skinLimit : partClass.bodyLimit;
  if (judgement.limit.origin !== 'class') return judgement.limit.origin;
  if (ofClass === 'by-volume') return 'tc';
  return partClass.id === 'unknown' ? 'unknown' : 'class';
}

/** What the sentences about a judged part need. */
export const judgementFigures = (judgement: Judgement, partClass: PartClass): Figures => ({
  judgedOn: judgement.judgedOn,
  peakC: judgement.peakC,
  limitC: judgement.limit.celsius,
  marginK: judgement.marginK,
  limitOrigin: originOf(judgement, partClass),
  limitSource: judgement.limit.source.text,
  className: partClass.name,
});

export const jointFigures = (part: Part, exposure: PartExposure): Figures => ({
  jointMaxC: exposure.joint.maxC,
  jointMinC: exposure.joint.minC,
  solidusC: exposure.solidusC,
  alloyKnown: alloyById(part.alloy) ? 1 : 0,
});

/** A part whose joints must melt together or not at all. */
export const isLarge = (part: Part, partClass: PartClass): boolean =>
  !partClass.smallPart &&
  (partClass.arrayPart || Math.max(part.package.lengthMm, part.package.widthMm) >= LARGE_PART_MM.value);

/** The default shield as suggested, and what it would leave of the judged temperature. */
export const shieldFigures = (shieldedC: number): Figures => ({
  shield: DEFAULT_SHIELD,
  shieldName: shieldById(DEFAULT_SHIELD)?.name ?? DEFAULT_SHIELD,
  shieldedC,
});

/** The way that most of a body's heat comes by until its peak. */
export function mostlyFrom(exposure: PartExposure): 'gas' | 'preheater' | 'joints' {
  const { gas, preheater, joints } = exposure.shares;
  if (joints >= gas && joints >= preheater) return 'joints';
  return gas >= preheater ? 'gas' : 'preheater';
}

/** Classes whose data is read out before their joints melt. */
export const holdsData = (classId: string): boolean => classId === 'flash-memory' || classId === 'serial-memory';
