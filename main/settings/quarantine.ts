import { copyFileSync, readFileSync, renameSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import { settingsFrom } from './settings-store.ts';

/**
 * Sets a settings file aside that no longer reads, before a store would wipe or refuse it. A file in which single fields do not fit
 * is kept as a copy; the fields that do fit stay. The problem names the file set aside; null: nothing to do.
 */
export function quarantineSettings(path: string, now: Date): Problem | null {
  const text = readText(path);
  if (text === null) return null;
  const aside = join(dirname(path), `settings-set-aside-${now.toISOString().replace(/[:.]/g, '-')}.json`);
  const value = parsed(text);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    renameSync(path, aside);
    return { code: 'not-json', file: basename(aside) };
  }
  const { unfit } = settingsFrom(value);
  if (unfit.length === 0) return null;
  copyFileSync(path, aside);
  return { code: 'invalid-field', file: basename(aside), where: unfit.join(', ') };
}

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
