import { execFileSync } from 'node:child_process';
import { defineConfig } from '@playwright/test';

/** The installed Chromium: tests/run.mjs hands it over; run by hand, it is looked for. */
function browser(): string {
  if (process.env.HEATMARGIN_BROWSER) return process.env.HEATMARGIN_BROWSER;
  return execFileSync('sh', ['-c', 'command -v chromium || command -v google-chrome || command -v microsoft-edge'], {
    encoding: 'utf8',
  }).trim();
}

export default defineConfig({
  testDir: 'tests/e2e',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  timeout: 120_000,
  expect: { timeout: 15_000 },
  workers: 1,
  reporter: [['list'], ['json', { outputFile: 'reports/playwright.json' }]],
  use: {
    viewport: { width: 1366, height: 768 },
    launchOptions: {
      executablePath: browser(),
      args: [
        '--no-sandbox',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--enable-unsafe-swiftshader',
      ],
    },
    trace: 'retain-on-failure',
  },
});
