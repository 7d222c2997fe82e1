import { setImmediate } from 'node:timers/promises';
import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import type { WorkMapInput } from '../work-map/draw-sheet.ts';
import { renderWorkMapSvg } from '../work-map/render-svg.ts';
import { openPagePictures, pngOfPage } from './page-pictures.ts';
import { createPhotoWarper } from './warp-photos.ts';

/** The pages of the work map as files of their own; `only` gives one page (the first is 1), none if it is not there. */
export async function sheetPages(
  input: WorkMapInput,
  format: Exclude<SheetFormat, 'pdf'>,
  dpi: number,
  only?: number,
  progress: (share: number) => void = () => undefined,
): Promise<Uint8Array[]> {
  if (format === 'png') await openPagePictures();
  const all = renderWorkMapSvg(input, format === 'png' ? createPhotoWarper(dpi) : undefined);
  const wanted = only === undefined ? all : all.slice(only - 1, only);
  const files: Uint8Array[] = [];
  for (const svg of wanted) {
    files.push(format === 'svg' ? new TextEncoder().encode(svg) : await pngOfPage(svg, dpi));
    progress(files.length / wanted.length);
    // A page takes a while: what waits gets its turn in between.
    await setImmediate();
  }
  return files;
}
