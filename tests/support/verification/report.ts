import type { Problem } from './record.ts';
import { ITEMS, type ItemId, TOPICS, type Topic } from './requirements.ts';

/** What became of one test of the suite, and the rows it wrote while it ran. */
export type Outcome = {
  file: string;
  name: string;
  state: 'passed' | 'failed' | 'skipped' | 'pending';
  messages: string[];
  problems: Problem[];
};
export type ReportedProblem = Problem & { id: string; failed: boolean; messages: string[]; tests: string[] };
export type Report = {
  topics: { topic: Topic; problems: ReportedProblem[] }[];
  items: { id: ItemId; sentence: string; problems: ReportedProblem[] }[];
  /** Tests that wrote no row: properties that no figure says better, and what did not run. */
  others: Outcome[];
  figures: number;
  failed: number;
};

/** Joins rows of one problem that several tests wrote; whatever failed stays visible, with or without a row of its own. */
export function reportOf(outcomes: readonly Outcome[]): Report {
  const byName = new Map<string, ReportedProblem>();
  for (const outcome of outcomes) {
    for (const given of outcome.problems) {
      const key = `${given.topic}: ${given.problem}`;
      const found = byName.get(key) ?? { ...given, rows: [], charts: [], ...fresh(byName.size) };
      byName.set(key, found);
      found.rows.push(...given.rows);
      found.charts.push(...given.charts);
      found.tests.push(`${outcome.file}: ${outcome.name}`);
      if (outcome.state !== 'passed' || given.rows.some((row) => !row.ok)) {
        found.failed = true;
        found.messages.push(...outcome.messages);
      }
    }
  }
  const problems = [...byName.values()];
  const others = outcomes.filter((outcome) => outcome.problems.length === 0);
  return {
    topics: TOPICS.map((topic) => ({ topic, problems: problems.filter((one) => one.topic === topic) })),
    items: (Object.keys(ITEMS) as ItemId[]).map((id) => {
      return { id, sentence: ITEMS[id], problems: problems.filter((one) => one.item === id && one.rows.length > 0) };
    }),
    others,
    figures: problems.reduce((sum, one) => sum + one.rows.length, 0),
    failed: [...problems, ...others].filter((one) => ('failed' in one ? one.failed : one.state === 'failed')).length,
  };
}

const fresh = (index: number) => ({
  id: `p${index + 1}`,
  failed: false,
  messages: [] as string[],
  tests: [] as string[],
});

/** Worst share of its limit that a problem used, in percent; null where no row is one of size. */
export function worstUse(problem: Problem): number | null {
  const shares = problem.rows.flatMap((row) => (row.used === null ? [] : [row.used]));
  return shares.length === 0 ? null : Math.round(Math.max(...shares) * 100);
}

/** The same in a short table for a terminal, a commit or an issue. */
export function markdownOf(report: Report, made: string): string {
  const cell = (text: string) => text.replaceAll('|', '\\|');
  const lines = report.topics.flatMap(({ topic, problems }) =>
    problems.map((one) => {
      const use = worstUse(one);
      const state = one.failed ? '**failed**' : 'holds';
      return `| ${[topic, one.problem, one.source, one.rows.length, use === null ? '' : `${use} %`, state].map((text) => cell(String(text))).join(' | ')} |`;
    }),
  );
  const missing = report.items.filter((item) => item.problems.length === 0);
  return [
    `# Verification, ${made}`,
    '',
    `${report.figures} figures compared, ${report.failed} failed.`,
    '',
    '| topic | problem | source | figures | worst share of its limit | |',
    '|---|---|---|---|---|---|',
    ...lines,
    ...(missing.length > 0 ? ['', `Not checked in this run: ${missing.map((item) => item.sentence).join('; ')}.`] : []),
    '',
  ].join('\n');
}
