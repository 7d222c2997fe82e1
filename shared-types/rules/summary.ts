import type { Assessment, PartAction } from '../evaluation.ts';
import type { Plan } from '../plan.ts';
import { summaryWords } from '../words/planning.ts';

/** How many parts get which action, for the line at the foot of the table. */
export type Summary = {
  cannot: number;
  remove: number;
  secure: number;
  shield: number;
  willReflow: number;
  leave: number;
  targets: number;
  /** Parts beyond a limit that the plan does nothing about yet. */
  over: number;
  /** Parts whose margin lies within the band. */
  unsure: number;
  /** Actions that the plan does not do yet. */
  open: number;
};

const COUNTED: Record<PartAction['action'], keyof Summary> = {
  'cannot-be-saved': 'cannot',
  'remove-first': 'remove',
  secure: 'secure',
  shield: 'shield',
  'leave-will-reflow': 'willReflow',
  leave: 'leave',
  target: 'targets',
};
const NEEDS_WORK: ReadonlySet<PartAction['action']> = new Set(['cannot-be-saved', 'remove-first', 'secure', 'shield']);

/** The action as the plan at hand has it: tags set since the assessment count already. */
function actionIn(action: PartAction, removed: ReadonlySet<string>, shielded: ReadonlySet<string>): PartAction {
  if (action.action === 'target') return action;
  if (removed.has(action.refdes)) return { ...action, action: 'remove-first', done: true };
  if (action.action === 'leave' && shielded.has(action.refdes)) return { ...action, action: 'shield', done: true };
  return action.action === 'shield' && shielded.has(action.refdes) ? { ...action, done: true } : action;
}

/** Counts an assessment's actions under the plan at hand. */
export function summarise(assessment: Assessment, plan: Plan): Summary {
  const tagged = (kind: 'remove' | 'shield') =>
    new Set(plan.tags.flatMap((tag) => (tag.kind === kind ? [tag.refdes] : [])));
  const removed = tagged('remove');
  const shielded = tagged('shield');
  const summary: Summary = {
    cannot: 0,
    remove: 0,
    secure: 0,
    shield: 0,
    willReflow: 0,
    leave: 0,
    targets: 0,
    over: 0,
    unsure: 0,
    open: 0,
  };
  const beyond = new Set(
    assessment.evaluation.parts.filter((part) => part.state === 'over').map((part) => part.refdes),
  );
  for (const found of assessment.actions) {
    const action = actionIn(found, removed, shielded);
    summary[COUNTED[action.action]]++;
    if (!NEEDS_WORK.has(action.action) || action.done) continue;
    summary.open++;
    if (beyond.has(action.refdes)) summary.over++;
  }
  summary.unsure = assessment.evaluation.parts.filter((part) => part.state === 'unsure').length;
  return summary;
}

/** '3 remove · 4 shield · 14 will reflow · 62 leave'. */
export const summaryLine = (summary: Summary): string => summaryWords(summary);
