import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { readTicketFile } from '../../main/files/ticket-file.ts';
import { evaluate } from '../../main/heat/evaluate.ts';
import type { Evaluation } from '../../shared-types/evaluation.ts';
import type { Plan, TicketDocument } from '../../shared-types/plan.ts';
import { expect, test } from './opened.ts';

const SAMPLE = 'sample-boards/tide-gauge-logger.hmticket';

/** What the window must show is computed here without it: same ticket, no worker, no carrier, no page. */
function sample(): TicketDocument {
  const read = readTicketFile(new Uint8Array(readFileSync(SAMPLE)), SAMPLE);
  if (!read.ok) throw new Error(read.problem.code);
  return read.value.document;
}
function figuresOf({ board, plan }: TicketDocument): Evaluation {
  const result = evaluate(board, plan, { phase: 'fine' });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

/** A field with a figure: typed, counted when left. */
async function enter(field: Locator, value: number): Promise<void> {
  await field.fill(String(value));
  await field.press('Enter');
}
async function choose(page: Page, label: string | RegExp, option: string): Promise<void> {
  await page.getByRole('button', { name: label }).first().click();
  await page.getByRole('option', { name: option, exact: true }).click();
}
/** The figure of a row of a table, whole degrees. */
async function cell(row: Locator, column: number): Promise<number> {
  return Number.parseInt((await row.getByRole('cell').nth(column).textContent()) ?? '', 10);
}

test.setTimeout(100_000);
test('the Heat stage: time, curves and the station, figure by figure', async ({ page, w }) => {
  const document = sample();
  const expected = figuresOf(document);
  const removal = expected.runs[0]!;
  await w.importFile(SAMPLE);
  await w.stage('heat');
  await w.figures();

  const curves = w.section('Curves');
  const row = (name: string) => curves.getByRole('row', { name: new RegExp(`^ ?${name}\\b`) });
  const track = page.getByRole('slider', { name: 'Time in the heat run' });

  await test.step('the scrubber moves map and read-out through the run', async () => {
    await w.find('U1');
    const at = await w.middle();
    await page.keyboard.press('Escape');
    await choose(page, /Heat run/, 'Removal');
    const atRest = await w.temperatureAt(at);
    await track.focus();
    await page.keyboard.press('Home');
    await expect(track).toHaveAttribute('aria-valuetext', '0:00, Preheat');
    await expect.poll(() => w.temperatureAt(at)).toBe(Math.round(document.plan.station.roomC));
    const cold = await w.canvas.screenshot();
    const ends = removal.segments.slice(0, 4).map((segment) => segment.endsAtS);
    const watch = removal.watch.find((one) => one.name === 'W1')!;
    const seen: number[] = [];
    for (const [index, endS] of ends.entries()) {
      await track.focus();
      for (let now = index === 0 ? 0 : ends[index - 1]!; now < endS; now += 10)
        await page.keyboard.press('Shift+ArrowRight');
      await expect(track).toHaveAttribute('aria-valuenow', String(endS));
      await expect(row('W1')).toBeVisible();
      const read = await cell(row('W1'), 0);
      expect(Math.abs(read - watch.atSegmentEndC[index]!), `W1 at ${endS} s`).toBeLessThanOrEqual(1);
      await expect
        .poll(() => w.temperatureAt(at))
        .toBeGreaterThan((seen.at(-1) ?? Math.round(document.plan.station.roomC)) + 15);
      seen.push(await w.temperatureAt(at));
    }
    expect(Math.abs(seen[3]! - removal.segments[3]!.siteC)).toBeLessThan(12);
    expect((await w.canvas.screenshot()).equals(cold)).toBe(false);
    await page.getByRole('button', { name: 'Worst over time' }).click();
    await expect(track).toHaveAttribute('aria-valuetext', 'worst over time');
    await expect.poll(() => w.temperatureAt(at)).toBe(atRest);
    expect(atRest).toBeGreaterThan(seen[3]! - 1);
  });

  await test.step('curves of a chosen part stand beside its limits', async () => {
    const exposure = expected.parts.find((part) => part.refdes === 'J3')!;
    await expect(row('U1 hottest')).toBeVisible();
    expect(await cell(row('U1 hottest'), 0)).toBe(Math.round(removal.targets[0]!.hottestJointC));
    expect(await cell(row('U1 coldest'), 0)).toBe(Math.round(removal.targets[0]!.coldestJointC));
    await w.find('J3');
    await choose(page, /Worst of all runs|Removal|Installation/, 'Installation');
    await expect(row('J3 hottest')).toBeVisible();
    // The curve is the hottest cell, the peak of a part is read between cells.
    const hottest = await cell(row('J3 hottest'), 0);
    expect(Math.abs(hottest - exposure.joint.maxC)).toBeLessThan(2);
    expect(await cell(row('J3 hottest'), 1)).toBe(Math.round(exposure.limits.joint!.celsius));
    await curves.getByText('Skin', { exact: true }).click();
    await expect(row('J3')).toBeVisible();
    expect(Math.abs((await cell(row('J3'), 0)) - exposure.skin.maxC)).toBeLessThan(3);
    expect(await cell(row('J3'), 1)).toBe(Math.round(exposure.limits.skin!.celsius));
    await page.keyboard.press('Escape');
    await choose(page, /Heat run/, 'Removal');
  });

  const coldest = async () => {
    const told = w.section('Target').getByRole('row').filter({ hasText: 'U1' }).first();
    return cell(told, 0);
  };

  await test.step('an outlet that is measured counts in place of the rule', async () => {
    await choose(page, /The temperature is/, 'the dial, outlet measured');
    const readings = [
      [250, 232],
      [350, 331],
      [450, 428],
    ] as const;
    for (const [index, [setting, outlet]] of readings.entries()) {
      await enter(page.getByRole('textbox', { name: `Setting ${index + 1}`, exact: true }), setting);
      await enter(page.getByRole('textbox', { name: `Outlet at setting ${index + 1}`, exact: true }), outlet);
    }
    await w.figures();
    const plan: Plan = {
      ...document.plan,
      station: {
        ...document.plan.station,
        outletReadings: readings.map(([settingC, outletC]) => ({ settingC, outletC })),
      },
    };
    const measured = figuresOf({ board: document.board, plan }).runs[0]!.targets[0]!.coldestJointC;
    expect(measured).toBeGreaterThan(removal.targets[0]!.coldestJointC + 5);
    await expect.poll(coldest).toBe(Math.round(measured));
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
  });

  let stronger = document.plan.heatRuns;
  let usual = 0;
  await test.step('a level on the dial is a flow, and the flow counts', async () => {
    await choose(page, /The flow is/, 'a level on the dial');
    await enter(page.getByRole('textbox', { name: 'Flow at low' }), 14);
    const flow = page.getByRole('button', { name: /^Gas: gas flow/ });
    await expect(flow).toContainText('8');
    await flow.click();
    await page.getByRole('menuitem', { name: /^low/ }).click();
    await expect(flow).toContainText('low');
    await w.figures();
    stronger = document.plan.heatRuns.map((run, index) =>
      index > 0
        ? run
        : { ...run, segments: run.segments.map((one, at) => (at === 3 ? { ...one, flowLMin: 14 } : one)) },
    );
    const hotter = figuresOf({ board: document.board, plan: { ...document.plan, heatRuns: stronger } });
    usual = hotter.runs[0]!.targets[0]!.coldestJointC;
    expect(usual).toBeGreaterThan(removal.targets[0]!.coldestJointC + 5);
    await expect.poll(coldest).toBe(Math.round(usual));
  });

  await test.step('board readings after switch-on give film and lag of the preheater', async () => {
    const truth = { filmWm2K: 31, lagS: 55 };
    const readings = boardReadings(document, truth, 320);
    await page.getByRole('button', { name: 'Enter readings' }).click();
    await enter(page.getByRole('textbox', { name: 'Preheater set to' }), 320);
    for (const [index, atS] of [60, 120, 240].entries())
      await enter(page.getByRole('textbox', { name: `Board after ${atS} s` }), Math.round(readings[index]!));
    await page.getByRole('button', { name: 'Fit the preheater' }).click();
    const said = page.getByText(/^Fitted: film/);
    await expect(said).toBeVisible({ timeout: 30_000 });
    const [, film, lag] = /film (\d+) W.*lag (\d+) s/.exec((await said.textContent()) ?? '')!;
    expect(Math.abs(Number(film) / truth.filmWm2K - 1)).toBeLessThan(0.1);
    expect(Math.abs(Number(lag) / truth.lagS - 1)).toBeLessThan(0.15);
    await expect(page.getByText('Film and lag are fitted to readings.')).toBeVisible();
    await w.figures();
    const { preheater } = document.plan.station;
    const known = { ...document.plan.station, preheater: { ...preheater, filmWm2K: Number(film), lagS: Number(lag) } };
    const warmer = figuresOf({ board: document.board, plan: { ...document.plan, heatRuns: stronger, station: known } });
    const fitted = warmer.runs[0]!.targets[0]!.coldestJointC;
    expect(fitted).toBeGreaterThan(usual + 2);
    // Film and lag are said in whole figures: half of one is worth about a degree.
    await expect.poll(async () => Math.abs((await coldest()) - fitted)).toBeLessThan(2.5);
    await page.getByRole('button', { name: 'Back to the usual' }).click();
    await expect(page.getByText(/Film and lag as usual/)).toBeVisible();
  });
});

/** What a board of the ticket reads over the middle of a preheater with that film and lag, 60, 120 and 240 s after switch-on. */
function boardReadings({ board, plan }: TicketDocument, truth: Partial<Plan['station']['preheater']>, sourceC: number) {
  const xs = board.outline.map((corner) => corner.x);
  const ys = board.outline.map((corner) => corner.y);
  const [x, y] = [xs, ys].map((all) => (Math.min(...all) + Math.max(...all)) / 2);
  const point = { id: 'tag-mid', kind: 'watchPoint' as const, order: null, note: '', name: 'M', side: 'top' as const };
  const segments = [60, 60, 120].map((seconds) => ({
    ...plan.heatRuns[0]!.segments[0]!,
    ...{ seconds, preheater: { startC: sourceC, endC: sourceC }, gas: null, flowLMin: 0, siteId: null },
  }));
  const warmed: Plan = {
    ...plan,
    station: { ...plan.station, preheater: { ...plan.station.preheater, ...truth } },
    tags: [...plan.tags.filter((tag) => tag.kind !== 'remove'), { ...point, x: x!, y: y!, refdes: null }],
    heatRuns: [{ ...plan.heatRuns[0]!, siteIds: [], segments }],
  };
  return figuresOf({ board, plan: warmed }).runs[0]!.watch.find((one) => one.name === 'M')!.atSegmentEndC;
}
