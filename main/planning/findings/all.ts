import type { Finding, PartAction } from '../../../shared-types/evaluation.ts';
import { FINDING_CODES } from '../../../shared-types/words/findings.ts';
import { compareDesignators, type PlanningContext } from '../context.ts';
import { bakeFindings } from './bake.ts';
import { coverFindings } from './covers.ts';
import { handlingFindings, verdictFindings } from './handling.ts';
import { inputFindings } from './inputs.ts';
import { liftingFindings } from './lifting.ts';
import { neighbourFindings } from './neighbours.ts';
import { planFindings } from './plan.ts';
import { rateFindings } from './rates.ts';
import { siteFindings } from './sites.ts';
import { stepFindings } from './steps.ts';
import { strapFindings } from './straps.ts';
import { targetFindings } from './targets.ts';

const WEIGHTS: Record<Finding['weight'], number> = { stop: 0, warn: 1, note: 2 };
const CODE_ORDER = new Map<string, number>(FINDING_CODES.map((code, index) => [code, index]));

/** What stops the work first, then warnings, then notes; inside a weight in the order of the table of sentences. */
function compareFindings(a: Finding, b: Finding): number {
  const code = (found: Finding): number => CODE_ORDER.get(found.code) ?? FINDING_CODES.length;
  return WEIGHTS[a.weight] - WEIGHTS[b.weight] || code(a) - code(b) || compareDesignators(a.place.id, b.place.id);
}

/** Everything worth saying about a plan, exceptions first. */
export function findingsFor(context: PlanningContext, actions: readonly PartAction[]): Finding[] {
  const all = [
    ...targetFindings(context),
    ...siteFindings(context),
    ...coverFindings(context, actions),
    ...handlingFindings(context),
    ...neighbourFindings(context, actions),
    ...rateFindings(context),
    ...liftingFindings(context, actions),
    ...bakeFindings(context),
    ...strapFindings(context),
    ...stepFindings(context),
    ...planFindings(context),
    ...inputFindings(context),
  ];
  return [...verdictFindings(all), ...all].sort(compareFindings);
}
