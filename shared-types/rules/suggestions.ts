import type { Assessment, PartAction } from '../evaluation.ts';
import { DEFAULT_SHIELD } from '../library/shields.ts';
import type { Plan } from '../plan.ts';
import type { Tag } from '../tags.ts';
import { type Figures, numberOf, textOf } from '../words/figures.ts';
import { NEW_PART_NOTE, SECURE_NOTE, secureNote } from '../words/planning.ts';

/** An action that the plan does not do yet and that tags can do. */
export type Suggestion = {
  refdes: string;
  kind: 'remove' | 'shield' | 'secure';
  /** Code of the reason and its figures, as in the action; `actionReason` says it. */
  action: PartAction;
};

const KINDS: Partial<Record<PartAction['action'], Suggestion['kind']>> = {
  'remove-first': 'remove',
  shield: 'shield',
  secure: 'secure',
};
const ORDER: Record<Suggestion['kind'], number> = { remove: 0, shield: 1, secure: 2 };

const tagsOn = (plan: Plan, refdes: string): Tag[] => plan.tags.filter((tag) => tag.refdes === refdes);

/** True when the plan at hand already carries the tag, though the assessment may be of an earlier revision. */
function alreadyTaken(plan: Plan, refdes: string, kind: Suggestion['kind']): boolean {
  const tags = tagsOn(plan, refdes);
  if (tags.some((tag) => tag.kind === 'remove')) return true;
  if (kind === 'shield') return tags.some((tag) => tag.kind === 'shield');
  return kind === 'secure' && tags.some((tag) => tag.kind === 'watchPoint' && tag.note.trim() !== '');
}

/**
 * What planning advises and the plan does not do yet: removals first (parts that always come off before all others),
 * then shields, then parts to secure. Parts that cannot be saved suggest nothing: no tag helps them.
 */
export function suggestionsOf(assessment: Assessment, plan: Plan): Suggestion[] {
  const targets = new Set(plan.sites.map((site) => site.target));
  const open = assessment.actions.flatMap((action): Suggestion[] => {
    const kind = KINDS[action.action];
    if (!kind || action.done || targets.has(action.refdes) || alreadyTaken(plan, action.refdes, kind)) return [];
    return [{ refdes: action.refdes, kind, action }];
  });
  const rank = (suggestion: Suggestion) => ORDER[suggestion.kind] - (suggestion.action.reason === 'always-off' ? 1 : 0);
  return open
    .map((suggestion, index) => ({ suggestion, index }))
    .sort((a, b) => rank(a.suggestion) - rank(b.suggestion) || a.index - b.index)
    .map(({ suggestion }) => suggestion);
}

function freeName(used: ReadonlySet<string>, prefix: string): string {
  let number = 1;
  while (used.has(`${prefix}${number}`)) number++;
  return `${prefix}${number}`;
}

const nextTagId = (plan: Plan): string => freeName(new Set(plan.tags.map((tag) => tag.id)), 'tag-');

/** The next number in the order of work. */
export const nextOrder = (plan: Plan): number => Math.max(0, ...plan.tags.map((tag) => tag.order ?? 0)) + 1;

/** The first free slot of the parts tray: A1, A2, ... */
export function nextTraySlot(plan: Plan): string {
  return freeName(new Set(plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag.traySlot] : []))), 'A');
}

/** The first free name for a watch point: W1, W2, ... */
export function nextWatchName(plan: Plan): string {
  return freeName(new Set(plan.tags.flatMap((tag) => (tag.kind === 'watchPoint' ? [tag.name] : []))), 'W');
}

function tagFor(plan: Plan, { refdes, kind, action }: Suggestion): Tag {
  const common = { id: nextTagId(plan), order: nextOrder(plan), refdes, note: '' };
  const figures: Figures = action.figures;
  if (kind === 'remove') {
    const note = figures.newPart === 1 ? NEW_PART_NOTE : '';
    return { ...common, kind: 'remove', note, goesBack: true, traySlot: nextTraySlot(plan) };
  }
  if (kind === 'shield') return { ...common, kind: 'shield', shield: String(figures.shield ?? DEFAULT_SHIELD) };
  return {
    ...common,
    order: null,
    kind: 'watchPoint',
    note: secureNote(action),
    name: nextWatchName(plan),
    side: textOf(figures, 'side') === 'bottom' ? 'bottom' : 'top',
    x: numberOf(figures, 'x'),
    y: numberOf(figures, 'y'),
  };
}

/** Tags that make no sense once the part is off: its shield, and the watch point that stood for holding it. */
const contradicts = (tag: Tag, refdes: string): boolean =>
  tag.refdes === refdes && (tag.kind === 'shield' || (tag.kind === 'watchPoint' && tag.note.startsWith(SECURE_NOTE)));

/** A thermocouple on a part that comes off stays as a point of the board. */
const detached = (tag: Tag, refdes: string): Tag =>
  tag.kind === 'watchPoint' && tag.refdes === refdes ? { ...tag, refdes: null } : tag;

/** The plan with the tag that does what is suggested; contradicting tags go. One already taken changes nothing. */
export function takeSuggestion(plan: Plan, suggestion: Suggestion): Plan {
  const { refdes, kind } = suggestion;
  if (alreadyTaken(plan, refdes, kind)) return plan;
  const tag = tagFor(plan, suggestion);
  if (kind !== 'remove') return { ...plan, tags: [...plan.tags, tag] };
  const kept = plan.tags.filter((old) => !contradicts(old, refdes)).map((old) => detached(old, refdes));
  return { ...plan, tags: [...kept, tag] };
}

/** All of them, in the given order. */
export const takeAllSuggestions = (plan: Plan, suggestions: readonly Suggestion[]): Plan =>
  suggestions.reduce(takeSuggestion, plan);
