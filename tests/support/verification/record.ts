import { expect, TestRunner } from 'vitest';
import type { ItemId, Topic } from './requirements.ts';

/** One compared figure, as it was compared; texts are made once, here, so that page and table show the same. */
export type Row = {
  what: string;
  expected: string;
  got: string;
  error: string;
  limit: string;
  ok: boolean;
  /** Share of the limit that the error used, 0 to 1 and above; null where the comparison is not one of size. */
  used: number | null;
};
export type Series = { name: string; style: 'line' | 'dots'; points: [x: number, y: number][] };
export type Chart = { title: string; x: string; y: string; log?: boolean; series: Series[] };
export type Heading = { topic: Topic; item: ItemId; problem: string; source: string };
export type Problem = Heading & { rows: Row[]; charts: Chart[] };

declare module 'vitest' {
  interface TaskMeta {
    verification?: Problem[];
  }
}

/** Four to five figures, powers of ten where they read better. */
export function figure(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-3 || size >= 1e6)) return value.toExponential(2);
  return String(Number(value.toFixed(size >= 100 ? 2 : size >= 1 ? 3 : 5)));
}

export type Verification = {
  /** |got - expected| below the limit, in the figure's own unit. */
  near(what: string, unit: string, got: number, expected: number, limit: number): void;
  /** |got / expected - 1| below the limit. */
  ratio(what: string, unit: string, got: number, expected: number, limit: number): void;
  /** An error of its own (worst difference, residual) below the limit. */
  below(what: string, unit: string, got: number, limit: number): void;
  above(what: string, unit: string, got: number, limit: number): void;
  between(what: string, unit: string, got: number, low: number, high: number): void;
  /** Texts, counts and lists that must be equal. */
  same(what: string, got: unknown, expected: unknown): void;
  chart(chart: Chart): void;
};

/**
 * Opens a problem of the verification report inside a running test. Each check writes its row and then fails the test if it
 * does not hold: the page shows what ran, nothing else.
 */
export function verification(heading: Heading): Verification {
  const problem: Problem = { ...heading, rows: [], charts: [] };
  const test = TestRunner.getCurrentTest();
  if (!test) throw new Error('a verification belongs inside a test');
  const { meta } = test;
  meta.verification = [...(meta.verification ?? []), problem];
  const add = (row: Row) => {
    problem.rows.push(row);
    const wanted = row.expected ? `, expected ${row.expected}` : '';
    expect.soft(row.ok, `${row.what}: got ${row.got}${wanted}, limit ${row.limit}`).toBe(true);
  };
  const withUnit = (text: string, unit: string) => (unit ? `${text} ${unit}` : text);
  const bound = (sign: string, ok: (got: number, limit: number) => boolean) => {
    return (what: string, unit: string, got: number, limit: number) => {
      const used = sign === '<' ? Math.max(0, got) / limit : null;
      const limitText = withUnit(`${sign} ${figure(limit)}`, unit);
      add({
        what,
        expected: '',
        got: withUnit(figure(got), unit),
        error: '',
        limit: limitText,
        ok: ok(got, limit),
        used,
      });
    };
  };
  return {
    near(what, unit, got, expected, limit) {
      const error = got - expected;
      const [e, g] = [expected, got].map((value) => withUnit(figure(value), unit));
      const ok = Math.abs(error) < limit;
      const limitText = withUnit(`± ${figure(limit)}`, unit);
      add({
        what,
        expected: e!,
        got: g!,
        error: signed(error, figure),
        limit: limitText,
        ok,
        used: Math.abs(error) / limit,
      });
    },
    ratio(what, unit, got, expected, limit) {
      const error = got / expected - 1;
      const [e, g] = [expected, got].map((value) => withUnit(figure(value), unit));
      const ok = Math.abs(error) < limit;
      const text = signed(error, percent);
      add({
        what,
        expected: e!,
        got: g!,
        error: text,
        limit: `± ${percent(limit)}`,
        ok,
        used: Math.abs(error) / limit,
      });
    },
    below: bound('<', (got, limit) => got < limit),
    above: bound('>', (got, limit) => got > limit),
    between(what, unit, got, low, high) {
      const limit = withUnit(`${figure(low)} to ${figure(high)}`, unit);
      add({
        what,
        expected: '',
        got: withUnit(figure(got), unit),
        error: '',
        limit,
        ok: got >= low && got <= high,
        used: null,
      });
    },
    same(what, got, expected) {
      const [g, e] = [got, expected].map((value) => (typeof value === 'string' ? value : JSON.stringify(value)));
      add({ what, expected: e!, got: g!, error: '', limit: 'equal', ok: g === e, used: null });
    },
    chart: (chart) => void problem.charts.push(chart),
  };
}

const percent = (share: number): string => {
  const value = share * 100;
  return Math.abs(value) < 1e-3 && value !== 0 ? `${value.toExponential(1)} %` : `${Number(value.toPrecision(3))} %`;
};
const signed = (value: number, text: (value: number) => string): string =>
  value > 0 ? `+${text(value)}` : text(value);
