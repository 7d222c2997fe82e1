import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { CAUTIONS, type CautionId } from '../../../shared-types/words/cautions.ts';
import { findingLine } from '../../../shared-types/words/findings.ts';
import { BANDS_NOT_COMPUTED, heatNoticeSentence } from '../../../shared-types/words/heat.ts';
import { actionReason } from '../../../shared-types/words/planning.ts';

/** An assessment as plain JSON: exposures of every part, advice, findings; without the temperature fields. C, mm, s. */
export function assessmentJson({ board, plan }: TicketDocument, assessment: Assessment): unknown {
  const { evaluation } = assessment;
  return {
    ticket: plan.ticket.number,
    board: { name: board.name, revision: board.revision, invented: board.source.invented },
    phase: evaluation.phase,
    grid: evaluation.grid,
    bands: evaluation.bands === 'not-computed' ? BANDS_NOT_COMPUTED : 'computed',
    uncertainty: evaluation.uncertainty ?? null,
    parts: evaluation.parts,
    notEvaluated: evaluation.notEvaluated,
    runs: evaluation.runs.map(({ runId, seconds, targets, watch, segments }) => ({
      runId,
      seconds,
      targets,
      watch,
      segments,
    })),
    runNumbers: assessment.runNumbers,
    actions: assessment.actions.map((action) => ({ ...action, sentence: actionReason(action) })),
    findings: assessment.findings.map((finding) => ({ ...finding, sentence: findingLine(finding) })),
    notices: evaluation.notices.map((notice) => ({ ...notice, sentence: heatNoticeSentence(notice) })),
    cautions: assessment.cautions.map((id) => ({ id, sentence: CAUTIONS[id as CautionId].sentence })),
  };
}
