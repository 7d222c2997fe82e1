// Everything a newcomer needs, in one order: format and lint, types, dependency rules, unused code, build, unit and reference
// tests, the browser. Ends with 'N passed, N failed', counted from the runners' own JSON reports.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { findChromium, meetNeeds } from './support/needs.mjs';

const reports = 'reports';
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });
const missing = meetNeeds();
const counts = { passed: 0, failed: 0, skipped: 0 };
const failures = [];

function step(name, command, count) {
  const started = Date.now();
  console.log(`\n== ${name}`);
  const run = spawnSync(command[0], command.slice(1), {
    stdio: 'inherit',
    shell: false,
    env: {
      ...process.env,
      HEATMARGIN_BROWSER: findChromium() ?? '',
      NODE_ENV: '',
      NO_COLOR: '1',
      FORCE_COLOR: undefined,
    },
  });
  const counted = count?.();
  const ok = run.status === 0;
  if (counted) for (const key of Object.keys(counts)) counts[key] += counted[key];
  if (!counted) counts[ok ? 'passed' : 'failed']++;
  else if (!ok && counted.failed === 0) counts.failed++;
  if (!ok) failures.push(name);
  console.log(`== ${name}: ${ok ? 'passed' : 'FAILED'} in ${((Date.now() - started) / 1000).toFixed(1)} s`);
  return ok;
}

const readReport = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null);

function countVitest(file) {
  const report = readReport(file);
  if (!report) return { passed: 0, failed: 1, skipped: 0 };
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

function countPlaywright(file) {
  const stats = readReport(file)?.stats;
  if (!stats) return { passed: 0, failed: 1, skipped: 0 };
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected, skipped: stats.skipped };
}

const npx = (...words) => ['npx', '--no-install', ...words];
step('Format and lint', npx('biome', 'ci', '.'));
step('Types', npx('tsc', '-p', '.'));
step(
  'Dependency rules',
  npx('depcruise', '--config', '.dependency-cruiser.cjs', '--output-type', 'err', 'main', 'renderer', 'shared-types'),
);
step('Unused code', npx('knip'));
const built = step('Build', npx('vite', 'build', '--app', '--logLevel', 'warn'));
const vitestReport = `${reports}/vitest.json`;
step(
  'Unit, document and reference tests',
  npx(
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${vitestReport}`,
    '--reporter=./tests/support/verification/reporter.ts',
  ),
  () => countVitest(vitestReport),
);
const playwrightReport = `${reports}/playwright.json`;
if (built) step('Browser tests', npx('playwright', 'test'), () => countPlaywright(playwrightReport));

if (missing.length > 0) failures.push(...missing.map((need) => `missing ${need.what}`));
counts.failed += missing.length;
if (failures.length > 0) console.log(`\nFailed: ${failures.join(', ')}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(counts.failed > 0 ? 1 : 0);
