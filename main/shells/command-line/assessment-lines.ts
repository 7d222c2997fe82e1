import type { Assessment, PartExposure, TargetResult } from '../../../shared-types/evaluation.ts';
import type { Plan, TicketDocument } from '../../../shared-types/plan.ts';
import { summarise, summaryLine } from '../../../shared-types/rules/summary.ts';
import { exposureHead, exposureRow, targetLine } from '../../../shared-types/words/exposure-table.ts';
import { findingLine } from '../../../shared-types/words/findings.ts';
import { METRIC } from '../../../shared-types/words/measures.ts';
import { ACTION_NAMES, actionReason } from '../../../shared-types/words/planning.ts';
import { thermocoupleSentence, thermocoupleWords } from '../../../shared-types/words/uncertainty.ts';

/** How many places are told: as many as a usual bench reads. */
const PLACES = 3;

function thermocoupleLines({ sites }: Plan, { thermocouples = [] }: Assessment): string[] {
  if (thermocouples.length === 0) return [];
  const targets = new Map(sites.map((site) => [site.id, site.target]));
  const told = thermocouples
    .slice(0, PLACES)
    .map((place) => `  ${thermocoupleSentence(place, targets.get(place.siteId ?? '') ?? '', METRIC)}`);
  return ['', thermocoupleWords.title, ...told];
}

/** An assessment as lines to read: targets, the summary, exceptions with their reasons, findings, where thermocouples tell most, then every part. */
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
    ...thermocoupleLines(plan, assessment),
    '',
    exposureHead(),
    ...rows,
  ];
}
