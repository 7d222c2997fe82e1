import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';

const LARGEST_BYTES = 512 * 1024 * 1024;

/** Bytes of a file named on the command line. Errors: not-found, not-allowed, too-large, not-readable. */
export function readBytes(path: string): Result<{ name: string; bytes: Uint8Array }> {
  try {
    if (statSync(path).isDirectory()) return fail('not-readable', { file: path });
    if (statSync(path).size > LARGEST_BYTES) return fail('too-large', { file: path, detail: { limit: '512 MB' } });
    return succeed({ name: basename(path), bytes: new Uint8Array(readFileSync(path)) });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    return fail(code === 'ENOENT' ? 'not-found' : code === 'EACCES' ? 'not-allowed' : 'not-readable', { file: path });
  }
}

/** A file as UTF-8 text. Errors: as `readBytes`, and not-text. */
export function readText(path: string): Result<string> {
  const read = readBytes(path);
  if (!read.ok) return read;
  try {
    return succeed(new TextDecoder('utf-8', { fatal: true }).decode(read.value.bytes));
  } catch {
    return fail('not-text', { file: path });
  }
}
