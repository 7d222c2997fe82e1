import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';

/** Writes a file whole or not at all: beside it first, then renamed. Errors: not-found, not-allowed, disk-full, not-readable. */
export function writeOutput(path: string, bytes: Uint8Array): Result<true> {
  const beside = `${path}.${process.pid}.part`;
  try {
    const handle = openSync(beside, 'w');
    try {
      for (let at = 0; at < bytes.length; ) at += writeSync(handle, bytes, at);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(beside, path);
    return succeed(true);
  } catch (error) {
    rmSync(beside, { force: true });
    const code = (error as NodeJS.ErrnoException).code ?? '';
    const known = { ENOENT: 'not-found', EACCES: 'not-allowed', EROFS: 'not-allowed', ENOSPC: 'disk-full' } as const;
    return fail(known[code as keyof typeof known] ?? 'not-allowed', { file: path });
  }
}
