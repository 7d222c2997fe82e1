import type { Finding } from '../evaluation.ts';
import { textOf } from './figures.ts';
import { wordsForEmitter } from './finding-sentences/emitter.ts';
import { HANDLING_SENTENCES, VERDICT_SENTENCES } from './finding-sentences/handling.ts';
import { NEIGHBOUR_SENTENCES } from './finding-sentences/neighbours.ts';
import { INPUT_SENTENCES, PLAN_SENTENCES } from './finding-sentences/plan.ts';
import type { FindingSentence, FindingWords } from './finding-sentences/sentence.ts';
import { STEP_SENTENCES } from './finding-sentences/steps.ts';
import { STRAP_SENTENCES } from './finding-sentences/straps.ts';
import { SITE_SENTENCES, TARGET_SENTENCES } from './finding-sentences/targets.ts';
import { heatNoticeSentence } from './heat.ts';
import { METRIC, type Measures } from './measures.ts';

/** In the order in which findings of one weight are listed. */
const SENTENCES = {
  ...VERDICT_SENTENCES,
  ...TARGET_SENTENCES,
  ...SITE_SENTENCES,
  ...HANDLING_SENTENCES,
  ...NEIGHBOUR_SENTENCES,
  ...STRAP_SENTENCES,
  ...STEP_SENTENCES,
  ...PLAN_SENTENCES,
  ...INPUT_SENTENCES,
} satisfies Record<string, FindingSentence>;

export type FindingCode = keyof typeof SENTENCES;
export const FINDING_CODES = Object.keys(SENTENCES) as FindingCode[];

/** A notice of the evaluation, as it says it itself: what and what to do in one. */
function noticeWords({ code, figures }: Finding): FindingWords {
  const place = textOf(figures, 'place');
  return { what: heatNoticeSentence({ code, place, figures }).replace(/\.$/, ''), todo: '' };
}

/** What is found, without a full stop at its end, and what to do about it. */
export function findingWords(finding: Finding, measures: Measures = METRIC): FindingWords {
  const sentence: FindingSentence | undefined = (SENTENCES as Record<string, FindingSentence>)[finding.code];
  const words = sentence ? sentence(finding.figures, measures) : noticeWords(finding);
  return finding.figures.emitter === 1 ? wordsForEmitter(words) : words;
}

/** One line: what, what to do, source. */
export function findingLine(finding: Finding, measures: Measures = METRIC): string {
  const { what, todo } = findingWords(finding, measures);
  const source = finding.source ? `(${finding.source.text}.)` : '';
  return [`${what}.`, todo, source].filter(Boolean).join(' ');
}

const WEIGHT_WORDS: Record<Finding['weight'], string> = { stop: 'Stop', warn: 'Warning', note: 'Note' };
export const weightWord = (weight: Finding['weight']): string => WEIGHT_WORDS[weight];
