import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { planSteps } from '../../../shared-types/rules/steps/plan-steps.ts';
import type { Step, StepPlan } from '../../../shared-types/rules/steps/types.ts';
import { CAUTIONS } from '../../../shared-types/words/cautions.ts';
import { findingLine } from '../../../shared-types/words/findings.ts';
import { STEP_LINES as words } from '../../../shared-types/words/steps/lines.ts';
import {
  goneWords,
  phaseWords,
  predictedWords,
  readingName,
  readingValue,
  sourceWords,
  stepFaultWords,
  stepWords,
} from '../../../shared-types/words/steps/step-words.ts';
import { WAIT_WORDS } from '../../../shared-types/words/steps/waits.ts';

function readingLines(step: Step): string[] {
  return step.expects.map((expected) => {
    const read = step.mark?.readings.find(({ key }) => key === expected.key)?.value;
    return words.reading(
      readingName(expected),
      predictedWords(expected),
      read === undefined ? '' : readingValue(expected.unit, read),
    );
  });
}

function stepLines(step: Step, place: number): string[] {
  const { act, why } = stepWords(step);
  return [
    words.step(place, step.done, act),
    ...(why ? [words.why(why)] : []),
    ...readingLines(step),
    ...(step.mark?.note ? [words.note(step.mark.note)] : []),
    words.source(sourceWords(step), step.cautions.map((id) => CAUTIONS[id].title).join(', ')),
  ];
}

/** What stops the work first, then what does not agree, then the steps by phase. */
export function stepLinesOf({ board, plan }: TicketDocument, assessment: Assessment): string[] {
  const made = planSteps(board, plan, assessment);
  const stops = assessment.findings.filter(({ weight }) => weight === 'stop');
  const placeOf = new Map(made.steps.map(({ id }, index) => [id, index + 1]));
  const lines = made.phases.flatMap((phase) => [
    words.phase(phaseWords(phase)),
    ...made.steps
      .filter((step) => step.phase === phase.id)
      .flatMap((step) => stepLines(step, placeOf.get(step.id) ?? 0)),
  ]);
  return [
    words.count(made.steps.filter(({ done }) => !done).length, made.steps.length),
    ...stops.map((found) => words.stop(findingLine(found))),
    ...made.faults.map((fault) => words.fault(stepFaultWords(fault, made))),
    ...lines,
    ...(made.gone.length > 0 ? [words.goneTitle, ...made.gone.map((mark) => words.gone(goneWords(mark)))] : []),
  ];
}

const waitsOf = (step: Step, { waits }: StepPlan) =>
  waits
    .filter((wait) => wait.step === step.id)
    .map(({ on, reason }) => ({ step: on, reason, sentence: WAIT_WORDS[reason] }));

/** The same as plain JSON. C, s, ohm, A, h. */
export function stepJson({ board, plan }: TicketDocument, assessment: Assessment): unknown {
  const made = planSteps(board, plan, assessment);
  return {
    phases: made.phases.map((phase) => ({
      id: phase.id,
      name: phaseWords(phase),
      steps: made.steps
        .filter((step) => step.phase === phase.id)
        .map((step) => ({
          id: step.id,
          ...stepWords(step),
          parts: step.parts,
          done: step.done,
          by: step.mark?.by ?? '',
          at: step.mark?.at ?? '',
          note: step.mark?.note ?? '',
          readings: step.expects.map((expected) => ({
            key: expected.key,
            name: readingName(expected),
            unit: expected.unit,
            predicted: expected.predicted,
            band: expected.bandK ?? null,
            actual: step.mark?.readings.find(({ key }) => key === expected.key)?.value ?? null,
          })),
          source: sourceWords(step),
          cautions: step.cautions.map((id) => CAUTIONS[id].sentence),
          alert: step.alert,
          after: waitsOf(step, made),
        })),
    })),
    faults: made.faults.map((fault) => ({ ...fault, sentence: stepFaultWords(fault, made) })),
    noLongerApplies: made.gone.map(goneWords),
  };
}
