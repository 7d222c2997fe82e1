import { planSteps } from '../../../shared-types/rules/steps/plan-steps.ts';
import type { Expected, Phase, Step, StepPlan } from '../../../shared-types/rules/steps/types.ts';
import { CAUTIONS } from '../../../shared-types/words/cautions.ts';
import type { Measures } from '../../../shared-types/words/measures.ts';
import { STEP_SHEET as words } from '../../../shared-types/words/steps/sheet.ts';
import {
  goneWords,
  phaseWords,
  predictedWords,
  readingName,
  readingValue,
  stepFaultWords,
  stepWords,
  tickedWords,
} from '../../../shared-types/words/steps/step-words.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import type { Phrase } from '../../../shared-types/words/work-map.ts';
import { BODY, FIGURES, SOFT, STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, type Column, drawTable } from '../layout/table.ts';

const columnsOf = (titled: boolean): Column[] => {
  const title = (text: string) => (titled ? text : '');
  return [
    { title: title(words.place), width: 28, align: 'right', style: FIGURES },
    { title: title(words.step), share: 1, style: { ...BODY, strong: 'sansStrong' } },
    { title: title(words.actual), width: 84, style: FIGURES },
    { title: title(words.done), width: 38 },
  ];
};

/** The phases that the last page holds: what is checked before power and after it. */
const ON_RECORD: ReadonlySet<string> = new Set(['before-power', 'power-on', 'hand-back']);

const stepsOf = ({ facts }: Sheet): StepPlan => planSteps(facts.board, facts.plan, facts.assessment);

/** Every step up to the last heat run and the cold board, by phase, with what is ticked already. */
export function drawSteps(sheet: Sheet): void {
  const made = stepsOf(sheet);
  if (made.steps.length === 0) return;
  sheet.flow.section(words.section, 220);
  for (const fault of made.faults)
    sheet.flow.paragraph(stepFaultWords(fault, made, sheet.facts.words.figures.measures), STRONG);
  for (const phase of made.phases) if (!ON_RECORD.has(phase.id)) drawPhase(sheet, made, phase);
  if (made.gone.length === 0) return;
  sheet.flow.heading(words.gone);
  for (const mark of made.gone) sheet.flow.paragraph(goneWords(mark));
}

/** The checks before power, at power-on and the end of the work: they stand on the last page. */
export function drawPowerSteps(sheet: Sheet): void {
  const made = stepsOf(sheet);
  for (const phase of made.phases) if (ON_RECORD.has(phase.id)) drawPhase(sheet, made, phase);
  const sources = [...new Set(made.steps.flatMap(({ source }) => (source ? [source.text] : [])))];
  if (sources.length > 0) sheet.flow.paragraph(words.sources(`${sources.join('; ')}.`), SOFT);
}

function drawPhase(sheet: Sheet, made: StepPlan, phase: Phase): void {
  const rows = made.steps.flatMap((step, index) => (step.phase === phase.id ? stepRows(sheet, step, index + 1) : []));
  // One head for the whole list: the first phase's, and that of the last page.
  const first = made.phases[0] === phase || phase.id === 'before-power';
  drawTable(sheet.flow, columnsOf(first), rows, phaseWords(phase));
}

/** A step, and below it a row for each of its readings; those of a heat run have their fields on the run's own sheet. */
function stepRows({ facts }: Sheet, step: Step, place: number): Cell[][] {
  const { measures } = facts.words.figures;
  const listed = step.kind === 'heat' ? [] : step.expects;
  return [
    [String(place), phraseOf(step, measures), '', doneCell(step)],
    ...listed.map((expected): Cell[] => ['', readingPhrase(expected, measures), actual(step, expected, measures), '']),
  ];
}

const doneCell = (step: Step): Cell => (step.done ? words.ticked('') : { tick: true });

function phraseOf(step: Step, measures: Measures): Phrase {
  const { act, why } = stepWords(step, measures);
  const ticked = step.done && step.mark ? tickedWords(step.mark) : '';
  const cautions = step.cautions.map((id) => CAUTIONS[id].title);
  const soft = [
    why,
    ticked && words.ticked(asSentence(ticked)),
    step.mark?.note && asSentence(step.mark.note),
    cautions.length > 0 && step.alert !== null && words.cautions(cautions.join(', ').toLowerCase()),
  ].filter(Boolean);
  const sentence = (step.alert ? words.alert[step.alert] : '') + asSentence(act);
  return [{ strong: sentence }, soft.length > 0 ? ` ${soft.join(' ')}` : ''];
}

function readingPhrase(expected: Expected, measures: Measures): Phrase {
  const predicted = predictedWords(expected, measures);
  return [`${readingName(expected)}${predicted ? `, ${words.predicted} ` : ''}`, { strong: predicted }];
}

function actual(step: Step, { key, unit }: Expected, measures: Measures): Cell {
  const read = step.mark?.readings.find((reading) => reading.key === key)?.value;
  return read === undefined ? { blank: true } : readingValue(unit, read, measures);
}
