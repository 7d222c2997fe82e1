// Modules of the house bundled as they ship: a module runner would add its own cost to every import that an inner loop reads.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/** @param source a module that exports from absolute paths of the house */
export async function bundled(source) {
  const folder = mkdtempSync(join(tmpdir(), 'heatmargin-bench-'));
  const entry = join(folder, 'entry.ts');
  writeFileSync(entry, source);
  try {
    const lib = { entry, formats: ['es'], fileName: () => 'bundle.mjs' };
    const options = { lib, outDir: folder, emptyOutDir: false, minify: false, target: 'node20' };
    await build({ root: folder, configFile: false, logLevel: 'error', build: options });
    return await import(pathToFileURL(join(folder, 'bundle.mjs')).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
