import type { Board, Part } from '../../shared-types/board.ts';
import type { Evaluation, PartExposure } from '../../shared-types/evaluation.ts';
import { classById } from '../../shared-types/library/classes.ts';
import type { PartClass } from '../../shared-types/library/library-types.ts';
import type { HeatRun, Plan, Site } from '../../shared-types/plan.ts';
import type { Tag, TagKind, TagOf } from '../../shared-types/tags.ts';

/** Board, plan and evaluation with the look-ups that every rule needs. */
export type PlanningContext = {
  board: Board;
  plan: Plan;
  evaluation: Evaluation;
  parts: ReadonlyMap<string, Part>;
  exposures: ReadonlyMap<string, PartExposure>;
  /** Parts that the evaluation left off because the plan takes them off before heat. */
  takenOff: ReadonlySet<string>;
  /** Site of each target; the first one where several name the same part. */
  siteOfTarget: ReadonlyMap<string, Site>;
  runs: ReadonlyMap<string, HeatRun>;
  tagsOf: ReadonlyMap<string, readonly Tag[]>;
};

export function planningContext(board: Board, plan: Plan, evaluation: Evaluation): PlanningContext {
  const siteOfTarget = new Map<string, Site>();
  for (const site of plan.sites) if (!siteOfTarget.has(site.target)) siteOfTarget.set(site.target, site);
  const tagsOf = new Map<string, Tag[]>();
  for (const tag of plan.tags) {
    if (tag.refdes === null) continue;
    tagsOf.set(tag.refdes, [...(tagsOf.get(tag.refdes) ?? []), tag]);
  }
  const removed = evaluation.notEvaluated.filter((entry) => entry.reason === 'removed');
  return {
    board,
    plan,
    evaluation,
    parts: new Map(board.parts.map((part) => [part.refdes, part])),
    exposures: new Map(evaluation.parts.map((exposure) => [exposure.refdes, exposure])),
    takenOff: new Set(removed.map((entry) => entry.refdes)),
    siteOfTarget,
    runs: new Map(plan.heatRuns.map((run) => [run.id, run])),
    tagsOf,
  };
}

/** The first tag of this kind on the part. */
export function tagOn<K extends TagKind>(context: PlanningContext, refdes: string, kind: K): TagOf<K> | undefined {
  return context.tagsOf.get(refdes)?.find((tag): tag is TagOf<K> => tag.kind === kind);
}

/** True when the plan takes the part off before heat, by its tag or in the evaluation's eyes. */
export const comesOff = (context: PlanningContext, refdes: string): boolean =>
  context.takenOff.has(refdes) || tagOn(context, refdes, 'remove') !== undefined;

/** A part that stays on the board while it is heated, with what happens to it. */
export type Exposed = { part: Part; exposure: PartExposure; partClass: PartClass };

/** Neighbours that stay on: every evaluated part but targets and parts that come off. */
export function exposedNeighbours(context: PlanningContext): Exposed[] {
  return context.evaluation.parts.flatMap((exposure) => {
    const part = context.parts.get(exposure.refdes);
    if (!part || context.siteOfTarget.has(part.refdes) || comesOff(context, part.refdes)) return [];
    return [{ part, exposure, partClass: classById(part.class) }];
  });
}

const byDesignator = new Intl.Collator('en', { numeric: true });
/** Designators in the order a technician reads them: C2 before C10. */
export const compareDesignators = (a: string, b: string): number => byDesignator.compare(a, b) || (a < b ? -1 : 1);
