// Compiles the kernels and writes them as a module of the house: `npm run kernels`. The same source gives the same bytes; a test
// builds them again and compares.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import asc from 'assemblyscript/asc';

const here = join(import.meta.dirname, '../../../main/heat/kernels');

/** The text of `kernel-bytes.ts` for the source as it is. */
export async function kernelModule() {
  const folder = mkdtempSync(join(tmpdir(), 'heatmargin-kernels-'));
  const file = join(folder, 'kernels.wasm');
  const shape = ['--runtime', 'stub', '--importMemory', '--noExportMemory', '--enable', 'simd', '--noAssert'];
  try {
    const words = ['index.ts', '--baseDir', join(here, 'assembly'), '--outFile', file, '-O3', ...shape];
    const { error, stderr } = await asc.main(words, {});
    if (error) throw new Error(`${error.message}\n${stderr}`);
    const text = readFileSync(file).toString('base64');
    return `/** The kernels of \`assembly/\`, compiled (\`npm run kernels\`); not to be edited. */\nexport const KERNEL_BYTES =\n  '${text}';\n`;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (import.meta.filename === process.argv[1]) {
  const text = await kernelModule();
  writeFileSync(join(here, 'kernel-bytes.ts'), text);
  console.log(`kernel-bytes.ts: ${text.length} characters`);
}
