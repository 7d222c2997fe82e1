import type { Assessment, PartExposure, TargetResult } from '../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { summarise, summaryLine } from '../../../shared-types/rules/summary.ts';
import { exposureHead, exposureRow, targetLine } from '../../../shared-types/words/exposure-table.ts';
import { findingLine } from '../../../shared-types/words/findings.ts';
import { ACTION_NAMES, actionReason } from '../../../shared-types/words/planning.ts';

/** An assessment as lines to read: targets, the summary, exceptions with their reasons, findings, then every part. */
export function assessmentLines({ plan }: TicketDocument, assessment: Assessment): string[] {
  const { evaluation } = assessment;
  const names = new Map(plan.heatRuns.map((run) => [run.id, run.name]));
  const targets = evaluation.runs.flatMap((run) =>
    run.targets.map((target: TargetResult) => targetLine(target, names.get(run.runId) ?? run.runId)),
  );
  const exceptions = assessment.actions
    .filter(({ action }) => action !== 'leave' && action !== 'leave-will-reflow' && action !== 'target')
    .map(
      (action) =>
        `  ${action.refdes.padEnd(8)} ${ACTION_NAMES[action.action]}${action.done ? ' (planned)' : ''}: ${actionReason(action)}`,
    );
  const rows = [...evaluation.parts].sort((a: PartExposure, b: PartExposure) => a.marginK - b.marginK).map(exposureRow);
  return [
    ...targets,
    '',
    summaryLine(summarise(assessment, plan)),
    ...exceptions,
    '',
    ...assessment.findings.map((finding) => `  ${findingLine(finding)}`),
    '',
    exposureHead(),
    ...rows,
  ];
}
