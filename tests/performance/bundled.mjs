// Modules of the house bundled as they ship: a module runner would add its own cost to every import that an inner loop reads.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

/** The bundle as a file in `folder`, for a process of its own. */
export async function bundleFile(source, folder) {
  const entry = join(folder, 'entry.ts');
  writeFileSync(entry, source);
  const lib = { entry, formats: ['es'], fileName: () => 'bundle.mjs' };
  const rolldownOptions = { external: [/^node:/] };
  const options = { lib, outDir: folder, emptyOutDir: false, minify: false, target: 'node20', rolldownOptions };
  await build({ root: folder, configFile: false, logLevel: 'error', build: options });
  return join(folder, 'bundle.mjs');
}

/** @param source a module that exports from absolute paths of the house */
export async function bundled(source) {
  const folder = mkdtempSync(join(tmpdir(), 'heatmargin-bench-'));
  try {
    return await import(pathToFileURL(await bundleFile(source, folder)).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
