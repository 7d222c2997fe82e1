import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';
import { type PageFonts, pageOf } from './page.ts';
import { markdownOf, type Outcome, reportOf } from './report.ts';

const WEIGHTS = [
  ['sans', 400],
  ['sans', 600],
  ['mono', 400],
] as const;

function fonts(): PageFonts {
  return WEIGHTS.map(([kind, weight]) => ({
    family: kind === 'sans' ? 'IBM Plex Sans' : 'IBM Plex Mono',
    weight,
    woff2: readFileSync(
      `node_modules/@fontsource/ibm-plex-${kind}/files/ibm-plex-${kind}-latin-${weight}-normal.woff2`,
    ),
  }));
}

function outcomesOf(module: TestModule): Outcome[] {
  const file = module.relativeModuleId;
  const broken = module.errors().map(({ message }) => message);
  const tests = [...module.children.allTests()].map((test): Outcome => {
    const { state, errors } = test.result();
    const messages = (errors ?? []).map(({ message }) => message);
    return { file, name: test.fullName, state, messages, problems: test.meta().verification ?? [] };
  });
  if (broken.length === 0) return tests;
  return [...tests, { file, name: 'the file itself', state: 'failed', messages: broken, problems: [] }];
}

/** Writes reports/verification.html and .md from what the tests of the reference suite recorded as they ran. */
export default class VerificationReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const outcomes = modules.filter((module) => module.project.name === 'reference').flatMap(outcomesOf);
    if (outcomes.length === 0) return;
    const report = reportOf(outcomes);
    const made = `${new Date().toISOString().slice(0, 16).replace('T', ' ')} UTC`;
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    mkdirSync('reports', { recursive: true });
    writeFileSync(
      'reports/verification.html',
      pageOf(report, made, `version ${version}, Node ${process.version}`, fonts()),
    );
    writeFileSync('reports/verification.md', markdownOf(report, made));
    const missing = report.items.filter((item) => item.problems.length === 0);
    console.log(
      `Verification: ${report.figures} figures compared, ${report.failed} failed, ${missing.length} items not checked: reports/verification.html`,
    );
  }
}
