import { fail, type Problem, type ProblemCode, type Result, succeed } from '../../shared-types/problem.ts';

const CODES: Record<string, ProblemCode> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EACCES: 'not-allowed',
  EPERM: 'not-allowed',
  EROFS: 'not-allowed',
  ENOENT: 'not-found',
  ENOTDIR: 'not-found',
  EEXIST: 'file-exists',
};

/** What the disk answered (ENOSPC, EACCES...), or undefined for any other error. */
export const diskCode = (error: unknown): string | undefined =>
  error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;

/** An error of the disk as a problem with the file's name. */
export function fileProblem(error: unknown, file: string): Problem {
  return { code: CODES[diskCode(error) ?? ''] ?? 'not-readable', file };
}

/** Runs work on a file; what the disk refuses comes back as a problem. Errors of other kinds pass through. */
export async function attempt<T>(file: string, work: () => Promise<T>): Promise<Result<T>> {
  try {
    return succeed(await work());
  } catch (error) {
    if (diskCode(error) === undefined) throw error;
    const { code, ...rest } = fileProblem(error, file);
    return fail(code, rest);
  }
}
