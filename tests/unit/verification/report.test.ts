import { describe, expect, it } from 'vitest';
import { pageOf } from '../../support/verification/page.ts';
import type { Problem, Row } from '../../support/verification/record.ts';
import { markdownOf, type Outcome, reportOf } from '../../support/verification/report.ts';

const row = (more: Partial<Row> = {}): Row => ({
  ...{
    what: 'rise <at> 5 mm',
    expected: '81.21 K',
    got: '81.17 K',
    error: '-0.04',
    limit: '± 0.25 K',
    ok: true,
    used: 0.16,
  },
  ...more,
});
const problem = (more: Partial<Problem> = {}): Problem => ({
  ...{ topic: 'Sources on a plate', item: 'disc-source', problem: 'Disc of 10 W', source: 'a book' },
  ...{ rows: [row()], charts: [] },
  ...more,
});
const outcome = (more: Partial<Outcome> = {}): Outcome => ({
  ...{ file: 'plate.test.ts', name: 'disc', state: 'passed', messages: [], problems: [problem()] },
  ...more,
});
const page = (outcomes: Outcome[]) => pageOf(reportOf(outcomes), '2026-11-25', 'version 0', []);

describe('the verification report', () => {
  it('counts what ran, and joins rows that several tests wrote to one problem', () => {
    const report = reportOf([outcome(), outcome({ name: 'again' })]);
    expect(report.topics[0]?.problems).toHaveLength(1);
    expect([report.figures, report.failed]).toEqual([2, 0]);
    expect(page([outcome()])).toContain('none failed');
  });

  it('shows a row that does not hold as failed, on page and table', () => {
    const broken = outcome({ state: 'failed', problems: [problem({ rows: [row(), row({ ok: false, used: 1.4 })] })] });
    expect(page([broken]).match(/<tr class="failed">/g)).toHaveLength(1);
    expect(page([broken])).toContain('1 failed');
    expect(markdownOf(reportOf([broken]), 'today')).toContain('| 140 % | **failed** |');
  });

  it('shows a test that broke off before or between its rows as failed, with what it said', () => {
    const stopped = outcome({ state: 'failed', messages: ['cannot read <the> case'] });
    expect(page([stopped])).toContain('cannot read &lt;the&gt; case');
    const silent = outcome({ state: 'failed', messages: ['never began'], problems: [] });
    const html = page([outcome(), silent]);
    expect(html).toContain('never began');
    expect(reportOf([outcome(), silent]).failed).toBe(1);
  });

  it('claims nothing that did not run: items without a row are listed as not checked', () => {
    const html = page([outcome(), outcome({ state: 'skipped', problems: [], name: 'example of the page' })]);
    expect(html).toMatch(/Gaussian spread: <span class="mark bad">not checked in this run/);
    expect(html).not.toMatch(/disc source \(Bessel\): <span class="mark bad">not checked/);
    expect(html).toContain('example of the page <span class="soft">(plate.test.ts)</span>: did not run');
    expect(reportOf([outcome({ problems: [problem({ rows: [] })] })]).items[0]?.problems).toEqual([]);
  });

  it('asks nothing of the network and escapes what tests write', () => {
    const chart = {
      title: 'a < b',
      x: 'r',
      y: 'K',
      series: [
        {
          name: 'exact',
          style: 'line' as const,
          points: [
            [0, 1],
            [2, 3],
          ] as [number, number][],
        },
      ],
    };
    const html = page([outcome({ problems: [problem({ charts: [chart] })] })]);
    expect(html).toContain('rise &lt;at&gt; 5 mm');
    expect(html).toContain('a &lt; b');
    expect(html).not.toMatch(/(src|href)="(https?:)?\/\//);
  });
});
