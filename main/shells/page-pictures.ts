import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initWasm, Resvg } from '@resvg/resvg-wasm';

const require = createRequire(import.meta.url);
/** WebAssembly is opened once a process or worker, when the first picture is asked for. */
let opened: Promise<void> | null = null;

/** Comes before everything else here. */
export function openPagePictures(): Promise<void> {
  opened ??= initWasm(readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm')));
  return opened;
}

/**
 * A page of the work map (SVG) as PNG of `dpi` dots per inch. The letters are outlines already: no font of the machine is looked for,
 * nothing is fetched.
 */
export async function pngOfPage(svg: string, dpi: number): Promise<Uint8Array> {
  await openPagePictures();
  const widthPx = Math.round((210 / 25.4) * dpi);
  const resvg = new Resvg(svg, { fitTo: { mode: 'width', value: widthPx }, font: { loadSystemFonts: false } });
  const image = resvg.render();
  const png = image.asPng();
  image.free();
  resvg.free();
  return png;
}

/** A decoded picture: four bytes a pixel. */
export type RawPicture = { widthPx: number; heightPx: number; rgba: Uint8Array };

/** Decodes a JPEG or PNG by drawing it on white, pixel for pixel. `openPagePictures` comes first. */
export function pixelsOf(picture: { bytes: Uint8Array; widthPx: number; heightPx: number }): RawPicture {
  const { bytes, widthPx, heightPx } = picture;
  const kind = bytes[0] === 0x89 ? 'png' : 'jpeg';
  const href = `data:image/${kind};base64,${Buffer.from(bytes).toString('base64')}`;
  const whole = `width="${widthPx}" height="${heightPx}"`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${whole}><rect ${whole} fill="#fff"/><image ${whole} preserveAspectRatio="none" image-rendering="optimizeSpeed" href="${href}"/></svg>`;
  const resvg = new Resvg(svg, { font: { loadSystemFonts: false } });
  const image = resvg.render();
  const rgba = image.pixels;
  image.free();
  resvg.free();
  return { widthPx, heightPx, rgba };
}
