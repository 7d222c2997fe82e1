// Writes the samples and the JSON Schemas: node sample-boards/make.mjs
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const here = new URL('.', import.meta.url);
const { module } = await runnerImport(fileURLToPath(new URL('make/files.ts', here)), { logLevel: 'error' });
for (const [name, content] of Object.entries(module.sampleFiles())) {
  writeFileSync(new URL(name, here), content);
  console.log(`${name}: ${content.length} characters or bytes`);
}
