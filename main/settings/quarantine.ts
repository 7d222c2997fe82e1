import { copyFileSync, readFileSync, renameSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import { settingsFrom } from './settings-store.ts';

/**
 * Sets a settings file aside that no longer reads, before a store would wipe or refuse it. A file in which single fields do not fit
 * is kept as a copy; the fields that do fit stay. The problem names the file set aside; null: nothing to do.
 */
export function quarantineSettings(path: string, now: Date): Problem | null {
  const read = readText(path);
  if (read === 'absent') return null;
  const aside = join(dirname(path), `settings-set-aside-${now.toISOString().replace(/[:.]/g, '-')}.json`);
  if (read === 'unreadable') {
    renameSync(path, aside);
    return { code: 'not-readable', file: basename(aside) };
  }
  const value = parsed(read.text);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    renameSync(path, aside);
    return { code: 'not-json', file: basename(aside) };
  }
  const { unfit } = settingsFrom(value);
  if (unfit.length === 0) return null;
  copyFileSync(path, aside);
  return { code: 'invalid-field', file: basename(aside), where: unfit.join(', ') };
}

function readText(path: string): { text: string } | 'absent' | 'unreadable' {
  try {
    return { text: readFileSync(path, 'utf8') };
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'absent' : 'unreadable';
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
