// Finds what the tests need outside npm: a Chromium for the browser tests and poppler for the printed sheet.
import { execFileSync, spawnSync } from 'node:child_process';

const which = (names) => {
  for (const name of names) {
    const found = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
    if (found.status === 0) return found.stdout.trim();
  }
  return null;
};

export const findChromium = () =>
  process.env.HEATMARGIN_BROWSER ||
  which(['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge']);

const needs = [
  { what: 'Chromium', package: 'chromium', present: () => findChromium() !== null },
  {
    what: 'pdftotext and pdftoppm',
    package: 'poppler-utils',
    present: () => which(['pdftotext']) !== null && which(['pdftoppm']) !== null,
  },
];

/** Installs what is missing where it may (root with apt-get); else says exactly what to run. Returns what is still missing. */
export function meetNeeds() {
  const missing = () => needs.filter((need) => !need.present());
  if (missing().length === 0) return [];
  const packages = missing().map((need) => need.package);
  const mayInstall = process.getuid?.() === 0 && which(['apt-get']) !== null;
  if (mayInstall) {
    console.log(`Installing ${packages.join(', ')} by apt-get, once.`);
    const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    try {
      execFileSync('apt-get', ['update', '-q'], { stdio: 'ignore', env: environment });
      execFileSync('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...packages], {
        stdio: 'ignore',
        env: environment,
      });
    } catch (error) {
      console.log(`apt-get failed: ${error.message}`);
    }
  }
  for (const need of missing()) console.log(`Missing: ${need.what}. Run: sudo apt-get install ${need.package}`);
  return missing();
}
