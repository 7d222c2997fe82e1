import type { Part } from '../../shared-types/board.ts';
import type { ActionKind, PartAction } from '../../shared-types/evaluation.ts';
import { meltingRange } from '../../shared-types/library/alloys.ts';
import type { Figures } from '../../shared-types/words/figures.ts';
import type { ReasonCode } from '../../shared-types/words/planning.ts';
import { type Exposed, type PlanningContext, tagOn } from './context.ts';
import { dropOffOf } from './drop-off.ts';
import {
  bodyJudgement,
  isLarge,
  type Judgement,
  jointFigures,
  jointJudgement,
  judgementFigures,
  mostlyFrom,
  shieldedMargin,
  shieldFigures,
  tightestJudgement,
} from './judgement.ts';
import { HAND_REPEAT_K, SHADOW_TOLERANCE_K, UNDERFILL_BELOW_SOLIDUS_K } from './published.ts';

/** One neighbour under judgement, with what the plan already does for it. */
type Subject = Exposed & { context: PlanningContext; shielded: boolean; heat: Judgement | null };
type Rule = (subject: Subject) => PartAction | null;

/** Makes a part's action. The reason's code has a sentence, by type. */
export function actionOf(
  refdes: string,
  action: ActionKind,
  reason: ReasonCode,
  figures: Figures,
  done = false,
): PartAction {
  return { refdes, action, reason, figures: { ...figures }, done };
}

/** The figures of its tightest limit, or of its peak alone where no limit is known. */
function ownFigures({ exposure, partClass }: Subject): Figures {
  const judgement = tightestJudgement(exposure);
  return judgement
    ? judgementFigures(judgement, partClass)
    : { judgedOn: 'body', peakC: exposure.body.maxC, className: partClass.name };
}

const wouldStaySolid = (subject: Subject, belowC: number): boolean =>
  !subject.shielded && subject.exposure.ifShielded.jointMaxC <= belowC - SHADOW_TOLERANCE_K.value;

const shieldForJoints = ({ part, exposure }: Subject): PartAction =>
  actionOf(part.refdes, 'shield', 'shield-keeps-joints-solid', {
    ...jointFigures(part, exposure),
    ...shieldFigures(exposure.ifShielded.jointMaxC),
  });

/** Underfill softens before solder melts and squeezes it out: such a neighbour can neither reflow nor come off and back. */
const underfilledNearMelting: Rule = (subject) => {
  const { part, exposure } = subject;
  const softensC = exposure.solidusC - UNDERFILL_BELOW_SOLIDUS_K.value;
  if (!part.underfilled || exposure.joint.maxC < softensC) return null;
  if (wouldStaySolid(subject, softensC)) return shieldForJoints(subject);
  const belowSolidusK = exposure.solidusC - exposure.joint.maxC;
  const figures = { ...jointFigures(part, exposure), belowSolidusK, mostlyFrom: mostlyFrom(exposure) };
  return actionOf(part.refdes, 'cannot-be-saved', 'underfill-softens', figures);
};

/** Body or skin over its limit: shield where that is enough, else off; underfilled parts cannot come off and back. */
const overItsLimit: Rule = (subject) => {
  const { part, partClass, exposure, heat, shielded } = subject;
  if (!heat || heat.marginK >= 0) return null;
  const figures = { ...judgementFigures(heat, partClass), ...jointFigures(part, exposure) };
  const withShield = { ...figures, ...shieldFigures(heat.shieldedC) };
  if (!shielded && shieldedMargin(exposure) >= SHADOW_TOLERANCE_K.value)
    return offForItsJoints(subject) ?? actionOf(part.refdes, 'shield', 'shield-brings-it-under', withShield);
  if (part.underfilled)
    return actionOf(part.refdes, 'cannot-be-saved', 'underfilled-over-limit', {
      ...figures,
      mostlyFrom: mostlyFrom(exposure),
    });
  const off = (reason: ReasonCode) => actionOf(part.refdes, 'remove-first', reason, withShield);
  if (exposure.joint.maxC >= heat.limit.celsius) return off('board-too-hot');
  if (shielded) return off('shield-did-not-hold');
  return off(exposure.shares.joints >= 0.5 ? 'heat-through-joints' : 'shield-not-enough');
};

/** Joints that must not melt: parts rated for one reflow (used up at assembly), or for none. */
const mayNotReflow: Rule = (subject) => {
  const { part, partClass, exposure } = subject;
  if (exposure.reflow === 'none') return null;
  const figures = { ...jointFigures(part, exposure), className: partClass.name };
  if (partClass.oneReflow)
    return actionOf(part.refdes, 'remove-first', 'rated-for-one-reflow', { ...figures, newPart: 1 });
  if (partClass.reflowRated) return null;
  if (wouldStaySolid(subject, exposure.solidusC)) return shieldForJoints(subject);
  const reason = partClass.id === 'unknown' ? 'class-not-known-would-reflow' : 'not-reflow-rated';
  return actionOf(part.refdes, 'remove-first', reason, figures);
};

/** True for a part that hangs below the board in some heat run. */
const isUnderneath = (context: PlanningContext, part: Part): boolean =>
  context.plan.heatRuns.some((run) => run.side !== part.side);

/** An underside part too heavy for its molten solder. Held where a watch point with a note stands on it. */
const mayDrop: Rule = ({ context, part, exposure }) => {
  if (!isUnderneath(context, part) || exposure.reflow === 'none') return null;
  const { mayDrop: tooHeavy, ...weights } = dropOffOf(part);
  if (!tooHeavy) return null;
  const place = { side: part.side, x: part.x, y: part.y };
  const held = context.tagsOf.get(part.refdes)?.some((tag) => tag.kind === 'watchPoint' && tag.note.trim() !== '');
  return actionOf(
    part.refdes,
    'secure',
    'heavy-when-molten',
    { ...jointFigures(part, exposure), ...weights, ...place },
    held === true,
  );
};

/** A large part whose joints do not all melt tilts or tears. */
const partlyMolten: Rule = (subject) => {
  const { part, partClass, exposure } = subject;
  if (exposure.reflow === 'none' || !isLarge(part, partClass)) return null;
  const { liquidusC } = meltingRange(part.alloy, 'neighbour');
  if (exposure.reflow === 'whole' && exposure.joint.minC >= liquidusC) return null;
  if (wouldStaySolid(subject, exposure.solidusC)) return shieldForJoints(subject);
  return actionOf(part.refdes, 'remove-first', 'large-part-partly-molten', jointFigures(part, exposure));
};

/** A shield for a body is no use to a part that must come off for its joints. */
function offForItsJoints(subject: Subject): PartAction | null {
  const tilting = mayDrop(subject) ? null : partlyMolten(subject);
  return tilting?.action === 'remove-first' ? tilting : null;
}

const willReflow: Rule = ({ context, part, partClass, exposure, shielded }) => {
  if (exposure.reflow === 'none') return null;
  const figures = jointFigures(part, exposure);
  if (shielded) return actionOf(part.refdes, 'shield', 'shielded-will-reflow', figures, true);
  if (isLarge(part, partClass)) return actionOf(part.refdes, 'leave-will-reflow', 'large-part-reflows', figures);
  if (exposure.reflow === 'partly')
    return actionOf(part.refdes, 'leave-will-reflow', 'small-part-melts-at-one-end', figures);
  if (!isUnderneath(context, part)) return actionOf(part.refdes, 'leave-will-reflow', 'small-part-reflows', figures);
  const { gramsPerSquareInch } = dropOffOf(part);
  return actionOf(part.refdes, 'leave-will-reflow', 'underside-part-reflows', { ...figures, gramsPerSquareInch });
};

const shieldedAlready: Rule = (subject) => {
  if (!subject.shielded) return null;
  const reason = subject.heat ? 'shielded-as-planned' : 'shielded-no-limit-known';
  const figures = subject.heat ? judgementFigures(subject.heat, subject.partClass) : ownFigures(subject);
  return actionOf(subject.part.refdes, 'shield', reason, figures, true);
};

/** Within the band: shield it where that clears the band; else measure the outlet where that does; else a thermocouple. */
const unsure: Rule = ({ part, partClass, exposure, heat }) => {
  const bandK = heat?.bandK ?? null;
  if (!heat || bandK === null || heat.marginK > bandK) return null;
  const figures = { ...judgementFigures(heat, partClass), bandK };
  if (shieldedMargin(exposure) > bandK)
    return actionOf(part.refdes, 'shield', 'shield-for-certainty', { ...figures, ...shieldFigures(heat.shieldedC) });
  const measuredK = exposure.bands?.outletMeasuredK ?? null;
  if (measuredK !== null && heat.marginK > measuredK)
    return actionOf(part.refdes, 'leave', 'measure-the-outlet', { ...figures, measuredK });
  return actionOf(part.refdes, 'leave', 'margin-within-band', figures);
};

/** A large part that comes so near to melting that a run may go either way. */
const nearMelting: Rule = ({ part, partClass, exposure }) => {
  const belowSolidusK = exposure.solidusC - exposure.joint.maxC;
  if (!isLarge(part, partClass) || belowSolidusK > (exposure.bands?.jointK ?? exposure.bandK ?? HAND_REPEAT_K.value))
    return null;
  const figures = { ...jointFigures(part, exposure), belowSolidusK, mostlyFrom: mostlyFrom(exposure) };
  return actionOf(part.refdes, 'leave', 'large-part-near-melting', figures);
};

/**
 * Joints of a part that is neither small nor large, within their band: of melting, and then it is left alone as if they did; or of
 * the figure that shops keep neighbours under.
 */
const jointsWithinBand: Rule = ({ part, partClass, exposure }) => {
  const joint = jointJudgement(exposure);
  if (exposure.state !== 'unsure' || exposure.governedBy !== 'joint' || !joint || joint.bandK === null) return null;
  const belowSolidusK = exposure.solidusC - exposure.joint.maxC;
  const figures = { ...jointFigures(part, exposure), belowSolidusK, bandK: joint.bandK };
  if (belowSolidusK <= joint.bandK) return actionOf(part.refdes, 'leave', 'joints-may-melt', figures);
  if (joint.marginK < 0) return null;
  return actionOf(part.refdes, 'leave', 'margin-within-band', { ...judgementFigures(joint, partClass), ...figures });
};

const leave: Rule = (subject) => {
  const { part, partClass, exposure, heat } = subject;
  const joint = jointJudgement(exposure);
  if (joint && joint.marginK < 0)
    return actionOf(part.refdes, 'leave', 'warm-joints-stay-solid', {
      ...judgementFigures(joint, partClass),
      ...jointFigures(part, exposure),
    });
  return actionOf(part.refdes, 'leave', heat ? 'within-limits' : 'no-limit-known', ownFigures(subject));
};

/** In this order; the first that has something to say decides. */
const RULES: readonly Rule[] = [
  underfilledNearMelting,
  mayNotReflow,
  overItsLimit,
  mayDrop,
  partlyMolten,
  willReflow,
  shieldedAlready,
  unsure,
  nearMelting,
  jointsWithinBand,
];

/**
 * What to do with a part that stays on the board, from what the heat does to it (heat model page, section 7).
 * A part that carries a shield is never advised a shield again: what a shield does not hold comes off.
 */
export function decide(context: PlanningContext, exposed: Exposed): PartAction {
  const shielded = tagOn(context, exposed.part.refdes, 'shield') !== undefined;
  const subject: Subject = { ...exposed, context, shielded, heat: bodyJudgement(exposed.exposure) };
  for (const rule of RULES) {
    const action = rule(subject);
    if (action) return action;
  }
  return leave(subject) as PartAction;
}
