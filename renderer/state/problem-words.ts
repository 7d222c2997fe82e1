import type { Problem } from '../../shared-types/problem.ts';
import { problemSentence, problemWords } from '../../shared-types/words/problems.ts';

/** A problem as title and next step. */
export function wordsOf(problem: Problem): [title: string, text: string] {
  const { todo } = problemWords(problem);
  return [problemSentence(problem).slice(0, -todo.length).trim(), todo];
}
