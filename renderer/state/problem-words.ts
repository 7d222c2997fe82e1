import type { Problem } from '../../shared-types/problem.ts';
import { problemWords } from '../../shared-types/words/problems.ts';

/** A problem as title and next step. */
export function wordsOf(problem: Problem): [title: string, text: string] {
  const { what, todo } = problemWords(problem);
  return [`${what}.`, todo];
}
