import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export type PdfWord = { text: string; x0: number; y0: number; x1: number; y1: number };
export type PdfPage = { width: number; height: number; words: PdfWord[] };
export type PdfFont = { name: string; type: string; embedded: boolean; subset: boolean };

/** Whether the poppler tools are here; tests that need them skip with this reason otherwise. */
export const popplerMissing: string | null = ['pdftotext', 'pdffonts'].every((tool) => !spawnSync(tool, ['-v']).error)
  ? null
  : 'pdftotext and pdffonts are not installed (Debian: poppler-utils)';

function withFile<T>(bytes: Uint8Array, use: (path: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'heatmargin-pdf-'));
  try {
    const path = join(folder, 'sheet.pdf');
    writeFileSync(path, bytes);
    return use(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const unescaped = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

/** Pages and words with their boxes (points, y down), as `pdftotext -bbox` sees them. */
export function pagesOfPdf(bytes: Uint8Array): PdfPage[] {
  const xml = withFile(bytes, (path) => {
    const out = `${path}.html`;
    execFileSync('pdftotext', ['-bbox', path, out]);
    return readFileSync(out, 'utf8');
  });
  return xml
    .split('<page ')
    .slice(1)
    .map((page) => {
      const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(page) ?? [];
      const words = [...page.matchAll(/<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)<\/word>/gs)];
      return {
        width: Number(width),
        height: Number(height),
        words: words.map(([, x0, y0, x1, y1, text]) => ({
          text: unescaped(text),
          x0: Number(x0),
          y0: Number(y0),
          x1: Number(x1),
          y1: Number(y1),
        })),
      };
    });
}

/** The text of a PDF in reading order, one string a page. */
export function textOfPdf(bytes: Uint8Array): string[] {
  const text = withFile(bytes, (path) => execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' }));
  return text.split('\f').slice(0, -1);
}

export type GreyPage = { widthPx: number; heightPx: number; at(x: number, y: number): number };

/** One page of a PDF as `pdftoppm` draws it, 0 black to 255 white; so many dots per point. */
export function greyOfPdf(bytes: Uint8Array, page: number, dotsPerPoint: number): GreyPage {
  const args = ['-gray', '-r', `${72 * dotsPerPoint}`, '-f', `${page}`, '-l', `${page}`, '-singlefile'];
  const picture = withFile(bytes, (path) => {
    execFileSync('pdftoppm', [...args, path, path]);
    return readFileSync(`${path}.pgm`);
  });
  // Portable grey map: 'P5', width, height, 255, one byte a dot.
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.toString('latin1', 0, 60)) ?? [];
  const [widthPx, heightPx] = [Number(width), Number(height)];
  return { widthPx, heightPx, at: (x, y) => picture[(head?.length ?? 0) + Math.round(y) * widthPx + Math.round(x)] };
}

/** Fonts of a PDF as `pdffonts` lists them. */
export function fontsOfPdf(bytes: Uint8Array): PdfFont[] {
  const lines = withFile(bytes, (path) => execFileSync('pdffonts', [path], { encoding: 'utf8' })).split('\n');
  return lines
    .slice(2)
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const [name] = line.split(/\s+/);
      const flags = /(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$/.exec(line);
      return {
        name,
        type: line
          .slice(name.length)
          .trim()
          .split(/\s{2,}/)[0],
        embedded: flags?.[1] === 'yes',
        subset: flags?.[2] === 'yes',
      };
    });
}

/** Words that reach beyond the page, less `margin` points. */
export const wordsOutside = (page: PdfPage, margin = 0): PdfWord[] =>
  page.words.filter(
    (word) => word.x0 < margin || word.y0 < margin || word.x1 > page.width - margin || word.y1 > page.height - margin,
  );

/** Pairs of words whose boxes overlap by more than the tolerance in both directions, points. */
export function overlappingWords(page: PdfPage, tolerance = 0.2): [PdfWord, PdfWord][] {
  const sorted = [...page.words].sort((a, b) => a.x0 - b.x0);
  const pairs: [PdfWord, PdfWord][] = [];
  for (let i = 0; i < sorted.length; i++)
    for (let j = i + 1; j < sorted.length && sorted[j].x0 < sorted[i].x1 - tolerance; j++) {
      const down = Math.min(sorted[i].y1, sorted[j].y1) - Math.max(sorted[i].y0, sorted[j].y0);
      const across = Math.min(sorted[i].x1, sorted[j].x1) - Math.max(sorted[i].x0, sorted[j].x0);
      if (down > tolerance && across > tolerance) pairs.push([sorted[i], sorted[j]]);
    }
  return pairs;
}
