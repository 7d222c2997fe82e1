import type { Finding } from '../evaluation.ts';
import { NEIGHBOUR_SENTENCES } from './finding-sentences/neighbours.ts';
import { INPUT_SENTENCES, PLAN_SENTENCES } from './finding-sentences/plan.ts';
import type { FindingSentence, FindingWords } from './finding-sentences/sentence.ts';
import { SITE_SENTENCES, TARGET_SENTENCES } from './finding-sentences/targets.ts';
import { METRIC, type Measures } from './measures.ts';

/** In the order in which findings of one weight are listed. */
const SENTENCES = {
  ...TARGET_SENTENCES,
  ...SITE_SENTENCES,
  ...NEIGHBOUR_SENTENCES,
  ...PLAN_SENTENCES,
  ...INPUT_SENTENCES,
} satisfies Record<string, FindingSentence>;

export type FindingCode = keyof typeof SENTENCES;
export const FINDING_CODES = Object.keys(SENTENCES) as FindingCode[];

/** What is found and what to do, without full stops at the end of the first. */
export function findingWords(finding: Finding, measures: Measures = METRIC): FindingWords {
  const sentence: FindingSentence | undefined = (SENTENCES as Record<string, FindingSentence>)[finding.code];
  if (!sentence) throw new Error(`No words for the finding ${finding.code}.`);
  return sentence(finding.figures, measures);
}

/** One line: what, what to do, source. */
export function findingLine(finding: Finding, measures: Measures = METRIC): string {
  const { what, todo } = findingWords(finding, measures);
  return finding.source ? `${what}. ${todo} (${finding.source.text}.)` : `${what}. ${todo}`;
}

const WEIGHT_WORDS: Record<Finding['weight'], string> = { stop: 'Stop', warn: 'Warning', note: 'Note' };
export const weightWord = (weight: Finding['weight']): string => WEIGHT_WORDS[weight];
