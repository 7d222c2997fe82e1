import {
  type Expected,
  FIXED_PHASES,
  type Phase,
  type ReadingName,
  type Step,
  type StepDraft,
  type StepFault,
  type StepKind,
  type StepPlan,
} from '../../rules/steps/types.ts';
import type { StepMark } from '../../steps.ts';
import { METRIC, type Measures, rounded } from '../measures.ts';
import { bandWords } from '../uncertainty.ts';
import { clock } from '../work-map.ts';
import { AFTER_SENTENCES } from './after.ts';
import { BEFORE_SENTENCES } from './before.ts';
import { HEAT_SENTENCES } from './heat.ts';
import type { StepSentence } from './sentence.ts';
import { WAIT_WORDS } from './waits.ts';

const SENTENCES: Record<StepKind, StepSentence> = { ...BEFORE_SENTENCES, ...HEAT_SENTENCES, ...AFTER_SENTENCES };

/** What a step asks for, without a full stop, and why or how. */
export const stepWords = (
  step: Pick<StepDraft, 'kind' | 'figures'>,
  measures: Measures = METRIC,
): { act: string; why: string } => SENTENCES[step.kind](step.figures, measures);

/** 'common practice, no source', or the source. */
export const sourceWords = ({ source, kind }: Pick<StepDraft, 'source' | 'kind'>): string =>
  source ? source.text : kind === 'own' ? 'your own' : 'common practice, no source';

const PHASES: Record<(typeof FIXED_PHASES)[number], string> = {
  received: 'As received',
  'before-heat': 'Before heat',
  covers: 'Cans off, in a heat run of their own',
  afterwards: 'Afterwards, the board cold',
  'before-power': 'Before power',
  'power-on': 'Power-on',
  'hand-back': 'Hand back',
};
const isFixed = (id: string): id is (typeof FIXED_PHASES)[number] => (FIXED_PHASES as readonly string[]).includes(id);

export function phaseWords({ id, run }: Phase): string {
  if (isFixed(id)) return PHASES[id];
  if (!run) return id;
  return id.startsWith('after:')
    ? `After ${run.name}, the site cold`
    : `Heat run ${run.place} of ${run.of}: ${run.name}`;
}

const READINGS: Record<ReadingName, (of: string) => string> = {
  resistance: () => 'Lowest rail to ground',
  current: () => 'Supply current',
  'check-sum-1': () => 'Check sum, first read-out',
  'check-sum-2': () => 'Check sum, second read-out',
  'check-sum': () => 'Check sum',
  off: () => 'Counted off',
  back: () => 'Counted back',
  'bake-c': () => 'Baked at',
  'bake-h': () => 'Baked for',
  'at-gas-on': (of) => `${of} at gas on`,
  'at-gas-off': (of) => `${of} at gas off`,
  'site-at-gas-on': () => 'Board at the site at gas on',
  'molten-at': (of) => `${of} molten at`,
  'gas-off-at': (of) => `${of} gas off at`,
  'open-h': () => 'Out of its bag for',
  code: (of) => `Code of ${of}`,
  reported: (of) => `Reported for ${of}`,
};
export const readingName = ({ name, of }: Pick<Expected, 'name' | 'of'>): string => READINGS[name](of);

const UNITS: Record<Expected['unit'], string> = { C: '', s: '', ohm: 'Ω', A: 'A', count: '', h: 'h', text: '' };

export const readingUnit = (unit: Expected['unit']): string => UNITS[unit];

/** A reading's figure with its unit. */
export function readingValue(unit: Expected['unit'], value: number | string, measures: Measures = METRIC): string {
  if (typeof value === 'string') return value;
  if (unit === 'C') return measures.temperature(value);
  if (unit === 's') return clock(value);
  return `${rounded(value, unit === 'count' ? 0 : 3)}${UNITS[unit] ? ` ${UNITS[unit]}` : ''}`;
}

/** The predicted figure with its band; empty: nothing foretells it. */
export function predictedWords({ unit, predicted, bandK }: Expected, measures: Measures = METRIC): string {
  if (predicted === null) return '';
  const band =
    bandK === undefined
      ? ''
      : ` ${bandWords.plusMinus(unit === 's' ? measures.seconds(bandK) : measures.difference(bandK))}`;
  return readingValue(unit, predicted, measures) + band;
}

const short = (steps: readonly Step[], id: string, measures: Measures): string => {
  const step = steps.find((one) => one.id === id);
  return step ? stepWords(step, measures).act : id;
};
const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** Why a step may not go there. */
export const refusedWords = (
  steps: readonly Step[],
  wait: { step: string; on: string; reason: keyof typeof WAIT_WORDS },
  measures: Measures = METRIC,
): string =>
  `'${short(steps, wait.step, measures)}' comes after '${short(steps, wait.on, measures)}': ${WAIT_WORDS[wait.reason]}.`;

/** What does not agree, as a sentence. */
export function stepFaultWords(
  fault: StepFault,
  { steps }: Pick<StepPlan, 'steps'>,
  measures: Measures = METRIC,
): string {
  const named = (id: string) => short(steps, id, measures);
  if (fault.code === 'count-differs')
    return `Counted ${fault.which}: ${fault.counted}, but the plan has ${fault.planned}. Find the part before you go on.`;
  if (fault.code === 'read-outs-differ')
    return `The two read-outs of ${fault.refdes} differ: clean the contacts and read again before it is lifted or heated.`;
  if (fault.code === 'code-differs')
    return `${fault.of} reads ${fault.read}, wanted is ${fault.wanted}: look at the straps again.`;
  if (fault.code === 'done-before')
    return `'${named(fault.stepId)}' is ticked, but '${lower(named(fault.on))}' is open: ${WAIT_WORDS[fault.reason]}.`;
  if (fault.code === 'cannot-order')
    return `'${named(fault.stepId)}' and '${lower(named(fault.on))}' wait for each other: ${WAIT_WORDS[fault.reason]}. Change the plan.`;
  return `Against the planned order, ${refusedWords(steps, { step: fault.stepId, on: fault.on, reason: fault.reason }, measures)}`;
}

/** Who ticked it and when, as far as that was entered. */
export const tickedWords = ({ by, at }: Pick<StepMark, 'by' | 'at'>): string =>
  [by, at.replace('T', ' ')].filter(Boolean).join(', ');
export const goneWords = (mark: StepMark): string =>
  `${mark.words || mark.stepId}${tickedWords(mark) ? ` (${tickedWords(mark)})` : ''}`;
