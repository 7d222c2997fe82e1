import { suggestionsOf } from '../../../shared-types/rules/suggestions.ts';
import { workMapWords } from '../../../shared-types/words/window/work-map.ts';
import type { AppState } from '../../state/app-state.ts';
import { isStale } from '../../state/evaluation-inbox.ts';

const words = workMapWords.opens;

/** What a technician should settle before the sheet is printed, as sentences; the sheet prints all the same. */
export function openOfWorkMap(state: AppState): string[] {
  const { ticket, evaluation } = state;
  if (!ticket) return [];
  const { plan } = ticket.document;
  if (plan.sites.length === 0) return [words['no-site']];
  const { assessment } = evaluation;
  const open: string[] = [];
  if (!plan.ticket.technician) open.push(words['no-technician']);
  if (!assessment || isStale(evaluation)) return [...open, words['no-figures']];
  const stops = assessment.findings.filter((finding) => finding.weight === 'stop').length;
  if (stops > 0) open.push(words.stop(stops));
  const cannot = assessment.actions.filter((action) => action.action === 'cannot-be-saved').length;
  if (cannot > 0) open.push(words.cannot(cannot));
  const solid = assessment.evaluation.runs.flatMap((run) => run.targets.filter((target) => target.verdict !== 'melts'));
  for (const refdes of new Set(solid.map((target) => target.refdes))) open.push(words.solid(refdes));
  const suggestions = suggestionsOf(assessment, plan).length;
  if (suggestions > 0) open.push(words.suggestions(suggestions));
  return open;
}
