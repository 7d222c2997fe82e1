import type { Board, Part } from '../../../shared-types/board.ts';
import type { Assessment, PartAction, PartExposure } from '../../../shared-types/evaluation.ts';
import { flattenContour, type Point } from '../../../shared-types/geometry.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { Tag, TagOf } from '../../../shared-types/tags.ts';
import type { Units } from '../../../shared-types/units.ts';
import { METRIC } from '../../../shared-types/words/measures.ts';
import { type SheetWords, sheetWordsFor } from '../../../shared-types/words/sheet-run.ts';
import type { OutlineKind } from '../drawing/part-outline.ts';
import type { SheetPhoto } from '../drawing/photo-images.ts';

export type PartTag = Exclude<Tag, TagOf<'watchPoint'>>;

/** What every page looks up: made once, derived from the ticket and its assessment alone. */
export type SheetFacts = {
  board: Board;
  plan: Plan;
  assessment: Assessment;
  partOf: ReadonlyMap<string, Part>;
  exposureOf: ReadonlyMap<string, PartExposure>;
  actionOf: ReadonlyMap<string, PartAction>;
  tagsOf: ReadonlyMap<string, readonly PartTag[]>;
  watchTags: readonly TagOf<'watchPoint'>[];
  targets: ReadonlySet<string>;
  outline: readonly Point[];
  cutouts: readonly (readonly Point[])[];
  /** Photos that are printed under the drawing, the undermost first. */
  photos: readonly SheetPhoto[];
  /** Words that hold figures, in the user's units. */
  words: SheetWords;
};

/** Tags in the order of work; those without an order come last, as they stand in the plan. */
export const inOrder = <T extends Tag>(tags: readonly T[]): T[] =>
  tags
    .map((tag, index) => ({ tag, index }))
    .sort((a, b) => (a.tag.order ?? 1e9) - (b.tag.order ?? 1e9) || a.index - b.index)
    .map(({ tag }) => tag);

export const tagsOfKind = <K extends Tag['kind']>(plan: Plan, kind: K): TagOf<K>[] =>
  inOrder(plan.tags.filter((tag): tag is TagOf<K> => tag.kind === kind));

/** Gathers the facts of a ticket. */
export function gatherFacts(
  board: Board,
  plan: Plan,
  assessment: Assessment,
  photos: readonly SheetPhoto[] = [],
  units: Units = METRIC.units,
): SheetFacts {
  const tagsOf = new Map<string, PartTag[]>();
  for (const tag of inOrder(plan.tags)) {
    if (tag.kind === 'watchPoint') continue;
    tagsOf.set(tag.refdes, [...(tagsOf.get(tag.refdes) ?? []), tag]);
  }
  return {
    board,
    plan,
    assessment,
    actionOf: new Map(assessment.actions.map((action) => [action.refdes, action])),
    partOf: new Map(board.parts.map((part) => [part.refdes, part])),
    exposureOf: new Map(assessment.evaluation.parts.map((exposure) => [exposure.refdes, exposure])),
    tagsOf,
    watchTags: tagsOfKind(plan, 'watchPoint'),
    targets: new Set(plan.sites.map((site) => site.target)),
    outline: flattenContour(board.outline, 0.05),
    cutouts: board.cutouts.map((cutout) => flattenContour(cutout, 0.05)),
    photos,
    words: sheetWordsFor(units, plan),
  };
}

/**
 * How a part is outlined. Beyond the limit outranks within the band, and that outranks molten joints; but an ordinary
 * small part that is left to reflow is past its joints' limit by intent: that is no warning. What cannot be saved is beyond
 * its limit even where the band leaves a doubt.
 */
export function outlineOf(facts: SheetFacts, part: Part): OutlineKind {
  if (!part.fitted) return 'empty';
  const exposure = facts.exposureOf.get(part.refdes);
  if (!exposure) return 'clear';
  if (facts.targets.has(part.refdes)) return 'clear';
  const action = facts.actionOf.get(part.refdes)?.action;
  if (action === 'cannot-be-saved') return 'over';
  if (action === 'leave-will-reflow' && exposure.state === 'over') return 'reflow';
  if (exposure.state !== 'clear') return exposure.state;
  return exposure.reflow === 'none' ? 'clear' : 'reflow';
}

/** The mark that goes with an outline in print: '!' beyond the limit, '?' within the band. */
export const stateMark = (kind: OutlineKind): string => (kind === 'over' ? '!' : kind === 'unsure' ? '?' : '');

/** Solidus temperatures that the joints of the neighbours were judged with, C, lowest first, at most three. */
export function neighbourSolidus(facts: SheetFacts): number[] {
  const found = new Set<number>();
  for (const exposure of facts.assessment.evaluation.parts)
    if (!facts.targets.has(exposure.refdes)) found.add(Math.round(exposure.solidusC));
  return [...found].sort((a, b) => a - b).slice(0, 3);
}
