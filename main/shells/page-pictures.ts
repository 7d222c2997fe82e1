import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';

const require = createRequire(import.meta.url);
/** WebAssembly is opened once a process, when the first picture is asked for. */
let opened: Promise<void> | null = null;

/**
 * A page of the work map (SVG) as PNG of `dpi` dots per inch. The letters are outlines already: no font of the machine is looked for,
 * nothing is fetched.
 */
export async function pngOfPage(svg: string, dpi: number): Promise<Uint8Array> {
  opened ??= initWasm(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
  await opened;
  const widthPx = Math.round((210 / 25.4) * dpi);
  const resvg = new Resvg(svg, { fitTo: { mode: 'width', value: widthPx }, font: { loadSystemFonts: false } });
  const image = resvg.render();
  const png = image.asPng();
  image.free();
  resvg.free();
  return png;
}
