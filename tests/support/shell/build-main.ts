import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createBuilder } from 'vite';
import { afterAll, beforeAll } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');

/**
 * Builds part of the house as it stands, with its own configuration, for the tests of one file. The folder lies below node_modules so
 * that what is built finds its packages, and goes when the tests are over. Call it at the top of the file; the answer is the folder.
 */
export function builtPart(part: 'main' | 'preload'): () => string {
  let folder = '';
  beforeAll(async () => {
    const cache = join(root, 'node_modules/.cache');
    mkdirSync(cache, { recursive: true });
    folder = mkdtempSync(join(cache, 'heatmargin-test-'));
    await build(part, join(folder, 'dist', part));
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return () => join(folder, 'dist', part);
}

async function build(part: 'main' | 'preload', outDir: string): Promise<void> {
  const builder = await createBuilder(
    {
      configFile: join(root, 'vite.config.ts'),
      logLevel: 'error',
      environments: { [part]: { build: { outDir, emptyOutDir: true } } },
    },
    null,
  );
  await builder.build(builder.environments[part]);
}
