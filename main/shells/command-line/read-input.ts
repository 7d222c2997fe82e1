import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
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

/** As many files, and folders in one another, as an import takes. */
const MOST_FILES = 500;
const DEEPEST = 6;

/** Null: the folder may not be read; reading it as a file then says so. */
function namesIn(folder: string): string[] | null {
  try {
    return readdirSync(folder).filter((name) => !name.startsWith('.'));
  } catch {
    return null;
  }
}

/** Files of a folder and of those in it, by name; hidden ones left out. Links are followed, to `DEEPEST` at most. */
function filesBelow(path: string, depth = 0): string[] {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return [path];
  if (depth > DEEPEST) return [];
  const names = namesIn(path);
  if (!names) return [path];
  return names.sort().flatMap((name) => filesBelow(join(path, name), depth + 1));
}

/** Files named on the command line; of folders the files in them. Errors: those of `readBytes`. */
export function readFiles(paths: readonly string[]): Result<{ name: string; bytes: Uint8Array }[]> {
  const found: string[] = [];
  for (const path of paths) {
    const below = filesBelow(path);
    if (below.length === 0) return fail('not-found', { file: path });
    found.push(...below);
    if (found.length > MOST_FILES) return fail('too-large', { file: path, detail: { limit: `${MOST_FILES} files` } });
  }
  const files = [];
  for (const path of found) {
    const read = readBytes(path);
    if (!read.ok) return read;
    files.push(read.value);
  }
  return succeed(files);
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
