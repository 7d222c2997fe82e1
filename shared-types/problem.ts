import { z } from 'zod';

/** What can go wrong with input. `words/problems.ts` has one sentence for each code. */
export const PROBLEM_CODES = [
  'not-readable',
  'not-text',
  'too-large',
  'not-json',
  'wrong-format',
  'newer-version',
  'invalid-field',
  'migration-failed',
  'damaged-ticket',
  'missing-entry',
  'no-plan',
  'no-site',
  'no-heat-run',
  'unknown-file-kind',
  'no-placements',
  'no-outline',
  'unclear-units',
  'invalid-gerber',
  'not-a-picture',
  'damaged-picture',
  'part-unknown',
  'evaluation-failed',
  'stale-evaluation',
  'cancelled',
  'file-exists',
  'disk-full',
  'not-allowed',
  'not-found',
  'changed-elsewhere',
  'refused',
  'internal',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/**
 * One thing that is wrong: a value, never an exception's message.
 * `file`: name of the file; `where`: line, JSON path, or part; `detail`: figures and names the sentence needs.
 */
export const problemSchema = z.strictObject({
  code: z.enum(PROBLEM_CODES),
  file: z.string().optional(),
  where: z.string().optional(),
  detail: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
});
export type Problem = z.infer<typeof problemSchema>;

/** A value, or the problem that stood in its way. */
export type Result<T> = { ok: true; value: T } | { ok: false; problem: Problem };
export const succeed = <T>(value: T): Result<T> => ({ ok: true, value });
export const fail = (code: ProblemCode, rest: Omit<Problem, 'code'> = {}): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, ...rest },
});
