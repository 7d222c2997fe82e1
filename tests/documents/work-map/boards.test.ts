import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { readBoard, readPlan } from '../../../main/document/open-document.ts';
import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { planForTargets } from '../../../shared-types/rules/new-plan.ts';
import { type PdfPage, pagesOfPdf, popplerMissing } from '../../support/pdf.ts';
import {
  assessed,
  expectBenchSizes,
  expectEmbeddedFonts,
  expectInsidePages,
  expectWordsApart,
  print,
} from './print.ts';

/** The sheets of the sample boards and of a real board of the outside, with the real evaluation and advice. */
const HERE = dirname(fileURLToPath(import.meta.url));
const SAMPLES = join(HERE, '../../../sample-boards');
const REAL = join(HERE, '../../../../shared/boards/thunderscope');

type Opened = { name: string; board: Board; plan: Plan };

function samples(): Opened[] {
  return readdirSync(SAMPLES)
    .filter((file) => file.endsWith('.board.json'))
    .flatMap((file) => {
      const planFile = join(SAMPLES, file.replace('.board.', '.plan.'));
      if (!existsSync(planFile)) return [];
      const board = readBoard(readFileSync(join(SAMPLES, file), 'utf8'), file);
      const plan = readPlan(readFileSync(planFile, 'utf8'), planFile);
      if (!board.ok || !plan.ok) throw new Error(`${file} cannot be read`);
      return [{ name: file, board: board.value, plan: plan.value }];
    });
}

/** The real board, imported, with a site at its largest array part (CSG325, 15 x 15 mm by its package name). */
function realBoard(): Opened[] {
  if (!existsSync(REAL)) {
    console.log('skipped: ../shared/boards/thunderscope is not here');
    return [];
  }
  const files = readdirSync(REAL)
    .filter((file) => /\.(txt|gm1|gtl|gbl)$/.test(file))
    .map((file) => ({ name: file, bytes: new Uint8Array(readFileSync(join(REAL, file))) }));
  const imported = importBoard(files, {});
  if (!imported.ok) throw new Error(JSON.stringify(imported.problem));
  const { board } = imported.value;
  const target = board.parts.find((part) => part.package.name.includes('CSG325'));
  if (!target) throw new Error('the array part is missing');
  return [{ name: 'the imported real board', board, plan: planForTargets(board, 'REAL-1', [target.refdes]) }];
}

if (popplerMissing) console.log(`skipped: ${popplerMissing}`);
const opened = popplerMissing ? [] : [...samples(), ...realBoard()];

describe.skipIf(popplerMissing)('the work map of every sample', () => {
  it('finds samples', () => {
    expect(opened.length).toBeGreaterThan(0);
  });

  for (const { name, board, plan } of opened)
    describe(name, () => {
      let bytes: Uint8Array;
      let pages: PdfPage[];
      let took: number;
      beforeAll(async () => {
        const assessment = assessed(board, plan);
        const start = performance.now();
        bytes = (await print(board, plan, assessment)).bytes;
        took = performance.now() - start;
        pages = pagesOfPdf(bytes);
      }, 60000);

      it('has every word inside its page and clear of every other, figures of 10 points, fonts embedded', () => {
        expectInsidePages(pages);
        expectWordsApart(pages);
        expectBenchSizes(pages, board);
        expectEmbeddedFonts(bytes);
      });

      it('names every site, tag and heat run', () => {
        const words = pages.flatMap((page) => page.words.map((word) => word.text)).join(' ');
        for (const site of plan.sites) expect(words).toContain(site.target);
        for (const tag of plan.tags) expect(words).toContain(tag.kind === 'watchPoint' ? tag.name : tag.refdes);
        for (const run of plan.heatRuns) expect(words.replaceAll('\u00a0', ' ')).toContain(run.name);
      });

      it('stays small and quick', () => {
        expect(bytes.length).toBeLessThan(1_500_000);
        expect(took).toBeLessThan(15000);
      });
    });
});
