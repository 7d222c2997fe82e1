import type { DocumentPatch, MainEvent } from '../../shared-types/contract.ts';
import type { EvaluationState } from './app-state.ts';

const rank = { coarse: 0, fine: 1 } as const;

/** True when the figures of an evaluation may depend on the change; notes, names and ticket data do not touch them. */
export function matters(patch: DocumentPatch): boolean {
  const [root, list] = patch.path;
  const last = patch.path.at(-1);
  if (root === 'plan' && list === 'ticket') return false;
  if (root === 'plan' && (list === 'clampedTurnDeg' || list === 'steps')) return false;
  if (root === 'board' && list === 'photos') return false;
  if (root === 'plan' && (last === 'note' || last === 'order' || last === 'traySlot')) return false;
  if (root === 'board' && (list === 'name' || list === 'revision' || list === 'source' || list === 'fiducials'))
    return false;
  return last !== 'name' && last !== 'value';
}

/** The state after an event of main; events about another ticket are for the caller to drop. */
export function receive(state: EvaluationState, event: MainEvent): EvaluationState {
  if (event.name === 'evaluation.progress') {
    if (state.cancelled) return state;
    return { ...state, running: { phase: event.phase, share: event.share } };
  }
  if (event.name === 'evaluation.result') return takeResult(state, event);
  if (event.name === 'evaluation.failed') {
    if (event.revision < state.wantedRevision) return state;
    const cancelled = event.problem.code === 'cancelled';
    return { ...state, running: null, problem: cancelled ? null : event.problem };
  }
  return state;
}

/** Results of older revisions than the shown one, and of a lower phase at the same revision, are dropped. */
function takeResult(state: EvaluationState, event: Extract<MainEvent, { name: 'evaluation.result' }>): EvaluationState {
  const shown = state.assessment?.evaluation;
  if (shown && event.revision < shown.revision) return state;
  if (shown && event.revision === shown.revision && rank[event.phase] < rank[shown.phase]) return state;
  const newest = event.revision >= state.wantedRevision;
  return {
    ...state,
    assessment: event.assessment,
    running: newest && event.phase === 'fine' ? null : state.running,
    problem: null,
  };
}

/** True while the shown figures may be those of an older document. */
export function isStale(state: EvaluationState): boolean {
  const shown = state.assessment?.evaluation;
  return shown !== undefined && shown.revision < state.wantedRevision;
}
