import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';

test('the dependency rules saw the whole house', () => {
  const output = execFileSync(
    'npx',
    [
      '--no-install',
      'depcruise',
      '--config',
      '.dependency-cruiser.cjs',
      '--output-type',
      'json',
      'main',
      'renderer',
      'shared-types',
    ],
    { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 },
  );
  const { summary, modules } = JSON.parse(output) as {
    summary: { totalCruised: number };
    modules: { source: string; dependencies: unknown[] }[];
  };
  expect(summary.totalCruised).toBeGreaterThan(150);
  const evaluate = modules.find((module) => module.source === 'main/heat/evaluate.ts');
  expect(evaluate?.dependencies.length).toBeGreaterThan(3);
});
