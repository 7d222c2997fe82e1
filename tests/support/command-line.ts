import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, vi } from 'vitest';
import { runCommandLine } from '../../main/shells/command-line/run.ts';

export type Ended = { status: number; out: string; error: string };

/** A folder of a test file's own, gone after it, and the command line as a user meets it: words in, status and texts out. */
export function commandLineIn(name: string): { at(file: string): string; run(...words: string[]): Promise<Ended> } {
  vi.stubGlobal('__VERSION__', 'test');
  const folder = mkdtempSync(join(tmpdir(), `heatmargin-${name}-`));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    at: (file) => join(folder, file),
    async run(...words) {
      const heard = { out: '', error: '' };
      const status = await runCommandLine(words, {
        out: (text) => {
          heard.out += text;
        },
        error: (text) => {
          heard.error += text;
        },
      });
      return { status, ...heard };
    },
  };
}
