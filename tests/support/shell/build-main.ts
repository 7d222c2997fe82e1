import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createBuilder } from 'vite';
import { afterAll } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');

/**
 * Builds part of the house as it stands, with its own configuration, into a folder that goes after the file's tests. It lies below
 * node_modules so that what is built finds its packages. Call it in `beforeAll`.
 */
export async function buildPart(part: 'main' | 'preload'): Promise<string> {
  const cache = join(root, 'node_modules/.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'heatmargin-test-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const outDir = join(folder, 'dist', part);
  const builder = await createBuilder(
    {
      configFile: join(root, 'vite.config.ts'),
      logLevel: 'error',
      environments: { [part]: { build: { outDir, emptyOutDir: true } } },
    },
    null,
  );
  await builder.build(builder.environments[part]);
  return outDir;
}
