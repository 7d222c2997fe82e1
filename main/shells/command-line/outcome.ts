import type { Problem } from '../../../shared-types/problem.ts';
import type { ShareRuns } from '../../heat/share-runs.ts';

/** How a command ended. `lines` go to standard output; a problem or wrong use to standard error. */
export type Outcome =
  | { kind: 'done'; lines: string[] }
  | { kind: 'problem'; problem: Problem; lines?: string[] }
  | { kind: 'wrong-use'; sentence: string };

export const done = (...lines: string[]): Outcome => ({ kind: 'done', lines });
export const problem = (found: Problem): Outcome => ({ kind: 'problem', problem: found });
export const wrong = (sentence: string): Outcome => ({ kind: 'wrong-use', sentence });

/** What the door gives its commands: another thread for heat runs, and a way to say how long work goes, where there are such. */
export type Tools = { share?: ShareRuns; tell?: (line: string) => void };

/** One command: its words after the name, to its outcome. */
export type Command = (words: string[], tools: Tools) => Promise<Outcome>;
