import { beforeAll, describe, expect, it } from 'vitest';
import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { planSteps } from '../../../shared-types/rules/steps/plan-steps.ts';
import { cautionsFor } from '../../../shared-types/words/cautions.ts';
import { stepWords } from '../../../shared-types/words/steps/step-words.ts';
import { clock } from '../../../shared-types/words/work-map.ts';
import { type PdfPage, pagesOfPdf, popplerMissing, textOfPdf } from '../../support/pdf.ts';
import { madeUpBoard, madeUpPlan } from '../../unit/main/work-map/made-up.ts';
import {
  assessed,
  expectBenchSizes,
  expectEmbeddedFonts,
  expectInsidePages,
  expectWordsApart,
  print,
} from './print.ts';

if (popplerMissing) console.log(`Skipped: ${popplerMissing}`);

const LONG = 'Überlandstraße-Łódź Дніпро Θεσσαλονίκη ≥ 10 kΩ ± 5 % → '.repeat(4).slice(0, 200);

function wordy(board: Board): Plan {
  const plan = madeUpPlan(board, { tags: 30 });
  return {
    ...plan,
    ticket: {
      number: 'HM-LONG-'.repeat(12),
      customer: LONG,
      unit: 'x'.repeat(200),
      order: LONG.repeat(12),
      technician: 'Μαρία Ὁδυσσέως / Søren Ķīlis / Đặng Thị Ánh',
      date: '2026-11-20T23:59:00Z',
      notes: `${LONG}\n\n${'notes '.repeat(900)}`,
    },
    tags: plan.tags.map((tag, index) => ({ ...tag, note: index === 3 ? 'long note '.repeat(199) : LONG })),
    heatRuns: plan.heatRuns.map((run) => ({ ...run, name: `${run.name} ${LONG}`.slice(0, 100) })),
  };
}

type Case = { name: string; board: Board; plan: Plan };
const board240 = madeUpBoard(240);
const renamed = (board: Board): Board => ({
  ...board,
  name: LONG,
  revision: LONG.slice(0, 100),
  parts: board.parts.map((part, index) =>
    index % 9 === 5 ? { ...part, value: LONG, package: { ...part.package, name: LONG } } : part,
  ),
});
const cases: Case[] = [
  { name: 'a usual ticket', board: board240, plan: madeUpPlan(board240, { tags: 14 }) },
  {
    name: 'two sites, turned',
    board: board240,
    plan: { ...madeUpPlan(board240, { tags: 20, targets: ['U1', 'U2'] }), clampedTurnDeg: 90 },
  },
  {
    name: 'turned by an odd angle',
    board: board240,
    plan: { ...madeUpPlan(board240, { tags: 25 }), clampedTurnDeg: 37 },
  },
  { name: '700 parts and 60 tags', board: madeUpBoard(700), plan: madeUpPlan(madeUpBoard(700), { tags: 60 }) },
  { name: 'no tags', board: madeUpBoard(60), plan: madeUpPlan(madeUpBoard(60), { tags: 0 }) },
  { name: 'eight heat runs', board: madeUpBoard(120), plan: madeUpPlan(madeUpBoard(120), { tags: 30, runs: 8 }) },
  { name: 'an empty plan', board: madeUpBoard(60), plan: emptyPlan('HM-0') },
  { name: 'a board without parts', board: { ...madeUpBoard(2), parts: [], covers: [] }, plan: emptyPlan('HM-0') },
  { name: 'long names and notes in many scripts', board: renamed(board240), plan: wordy(board240) },
];

describe.skipIf(popplerMissing)('the printed work map', () => {
  for (const { name, board, plan } of cases)
    describe(name, () => {
      let bytes: Uint8Array;
      let pages: PdfPage[];
      let told: number;
      const assessment = assessed(board, plan);
      beforeAll(async () => {
        const sheet = await print(board, plan, assessment);
        bytes = sheet.bytes;
        told = sheet.pages;
        pages = pagesOfPdf(bytes);
      });

      it('is A4, every word well inside the page', () => {
        expect(pages.length).toBe(told);
        expectInsidePages(pages);
      });

      it('keeps every word clear of every other', () => {
        expectWordsApart(pages);
      });

      it('prints figures for the bench at 10 points or more', () => {
        expectBenchSizes(pages, board);
      });

      it('embeds its fonts', () => {
        expectEmbeddedFonts(bytes);
      });
    });
});

describe.skipIf(popplerMissing)('what the work map says', () => {
  const unmarked = madeUpPlan(board240, { tags: 20, targets: ['U1', 'U2'] });
  const mark = {
    ...{ done: true, by: 'Mira', at: '', note: '', words: 'Take off Q77', phase: 'before-heat' },
    readings: [],
  };
  const marks = [
    { ...mark, stepId: 'off:Q77' },
    { ...mark, stepId: 'count-off', done: false, note: 'One under the mat', readings: [{ key: 'off', value: 99 }] },
  ];
  const plan = { ...unmarked, steps: { ...unmarked.steps, marks } };
  const assessment = assessed(board240, plan);
  let pages: string[];
  let all: string;
  beforeAll(async () => {
    pages = textOfPdf((await print(board240, plan, assessment)).bytes);
    all = pages.join('\n').replaceAll('\u00a0', ' ');
  });
  /** The sheet of a run, not the list of steps, which has its name too. */
  const runSheet = (title: string) => pages.find((page) => page.includes(title) && page.includes('Segments')) ?? '';

  it('says what it is, that it estimates, and what it does not know', () => {
    expect(pages[0]).toContain('HM-2107');
    expect(pages[0]).toContain('Exchange the gateway processor');
    for (const page of pages) {
      expect(page).toContain('Band: not computed yet');
      expect(page).toContain('Invented demonstration board');
      expect(page).toMatch(/Page \d+ of \d+/);
    }
    expect(all).not.toMatch(/\bsafe\b/i);
  });

  it('prints every step once, in order, each with a box', () => {
    const { steps } = planSteps(board240, plan, assessment);
    const lines = all.split('\n');
    const starts = steps.map((step, index) => {
      const head = stepWords(step).act.slice(0, 24);
      return lines.findIndex(
        (line) =>
          line.trim().startsWith(`${index + 1} ${head}`) || line.includes(` ${index + 1} Check: ${head}`.slice(0, 20)),
      );
    });
    expect(starts.filter((line) => line < 0)).toEqual([]);
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
    expect(lines.findIndex((line) => line.includes('Sign-off'))).toBeGreaterThan(starts.at(-1) ?? 0);
  });

  it('prints what was counted and noted, what does not agree, and what no longer applies', () => {
    expect(all).toMatch(/Counted off: 99, but the plan has \d+\./);
    expect(all).toMatch(/Counted off, predicted \d+ +99/);
    expect(all).toContain('One under the mat.');
    expect(all).toMatch(/Ticked or noted, but no longer asked for by the plan\s+Take off Q77 \(Mira\)/);
  });

  it('labels the underside', () => {
    expect(all).toContain('Bottom, seen from below');
  });

  it('lists every removal by its tray slot, with the counts', () => {
    const removals = plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag] : []));
    expect(removals.length).toBeGreaterThan(3);
    const lines = all.split('\n');
    const at = removals.map((tag) =>
      lines.findIndex((line) => new RegExp(`\\b${tag.traySlot}\\b.*\\b${tag.refdes}\\b`).test(line)),
    );
    expect(at.every((line) => line >= 0)).toBe(true);
    expect(all).toContain(`of ${removals.length}`);
    expect(all).toContain(`of ${removals.filter((tag) => tag.goesBack).length}`);
  });

  it('prints the numbers that planning found, on the first page and on the sheet of each run', () => {
    for (const [place, run] of plan.heatRuns.entries()) {
      const numbers = assessment.runNumbers.filter((one) => one.runId === run.id);
      const sheet = runSheet(`Heat run ${place + 1} of 3: ${run.name}`);
      expect(sheet).not.toBe('');
      for (const { refdes, moltenAtS, notMoltenByS } of numbers)
        if (moltenAtS !== undefined && notMoltenByS !== undefined)
          for (const page of [pages[0], sheet]) {
            expect(page).toContain(`${refdes} ${clock(moltenAtS)}`);
            expect(page).toContain(clock(notMoltenByS));
          }
    }
    expect(assessment.runNumbers.some((numbers) => numbers.moltenAtS !== undefined)).toBe(true);
  });

  it('puts predicted readings of each segment beside an empty field', () => {
    const [result] = assessment.evaluation.runs;
    const sheet = runSheet('Heat run 1 of 3');
    expect(sheet).toContain('Board °C');
    expect(sheet).toContain('actual');
    for (const segment of result.segments)
      expect(sheet).toMatch(new RegExp(`${segment.name.split(' ')[0]}[^\\n]*\\b${Math.round(segment.siteC)}\\b`));
    for (const reading of result.watch) expect(sheet).toContain(`${reading.name} predicted`);
  });

  it('says ordinary parts in one line', () => {
    const left = assessment.actions.filter(({ action }) => action.startsWith('leave'));
    const reflow = left.filter(({ action }) => action === 'leave-will-reflow');
    expect(reflow.length).toBeGreaterThan(0);
    expect(all).toContain(`${left.length} ordinary parts: leave, ${reflow.length} of them will reflow.`);
  });

  it('prints each caution that applies', () => {
    for (const { title } of cautionsFor(assessment.cautions)) expect(all).toContain(title);
    expect(all).not.toContain('Cells and batteries come off');
  });

  it('numbers the isotherms every 20 degrees and the limit', () => {
    const isotherms = pages.find((page) => page.includes('highest temperature over all heat runs')) ?? '';
    for (const level of [180, 200, 217, 240]) expect(isotherms).toMatch(new RegExp(`\\b${level}\\b`));
  });

  it('gives the same bytes for the same input, and others on another day', async () => {
    const [first, second, later] = await Promise.all([
      print(board240, plan, assessment),
      print(board240, plan, assessment),
      print(board240, plan, assessment, '2026-11-26T10:00'),
    ]);
    expect(Buffer.compare(first.bytes, second.bytes)).toBe(0);
    expect(Buffer.compare(first.bytes, later.bytes)).not.toBe(0);
    expect(textOfPdf(later.bytes).join('').replaceAll('2026-11-26', '2026-11-25')).toBe(
      textOfPdf(first.bytes).join(''),
    );
  });

  it('says what stands in the way when a target does not melt', async () => {
    const cold: Plan = {
      ...plan,
      heatRuns: plan.heatRuns.map((run) => ({
        ...run,
        segments: run.segments.map((segment) => ({ ...segment, gas: null })),
      })),
    };
    const [page] = textOfPdf((await print(board240, cold, assessed(board240, cold))).bytes);
    expect(page).toContain('Do not start.');
    expect(page).toMatch(/U1 does not melt: coldest joint \d+/);
  });
});
