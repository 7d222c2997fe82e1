import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runExampleCase } from '../../main/heat/example-case.ts';
import { type Verification, verification } from '../support/verification/record.ts';

/**
 * Cases of the form of `example heat`. Those in tests/reference/cases were solved by an independent program
 * (tests/support/heat/monolithic.mjs, written by cases/make-expectations.mjs); the design's own example was made by
 * a monolithic sparse solve that shares no method with the splitting.
 */
type Expected = { nozzle: { Re: number; hPlateau: number } | null; parts: Record<string, Record<string, number>> };

function compare(
  verify: Verification,
  name: string,
  given: object,
  expected: Expected,
  stepS: number,
  withinK: number,
): void {
  const result = runExampleCase(given, { cellMm: 2, stepS });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { nozzle, parts } = result.value;
  if (expected.nozzle) {
    verify.ratio(`${name}: Reynolds number`, '', nozzle!.Re, expected.nozzle.Re, 1e-5);
    verify.ratio(`${name}: film of the plateau`, 'W/m2K', nozzle!.hPlateau, expected.nozzle.hPlateau, 1e-5);
  }
  expect(Object.keys(parts).sort()).toEqual(Object.keys(expected.parts).sort());
  const compared = Object.entries(expected.parts).flatMap(([ref, figures]) =>
    Object.entries(figures).map(([figure, celsius]) => {
      const found = parts[ref]![figure as keyof (typeof parts)[string]];
      return { at: `${ref} ${figure}`, found, celsius, off: Math.abs(found - celsius) };
    }),
  );
  const worst = compared.reduce((one, other) => (other.off > one.off || Number.isNaN(other.off) ? other : one));
  const count = `worst of ${compared.length} figures`;
  verify.near(`${name}: ${count}, ${worst.at}`, '°C', worst.found, worst.celsius, withinK);
}

const read = (path: URL) => JSON.parse(readFileSync(path, 'utf8')) as { expected: Expected; expectedFine: Expected };

const title = (file: string): string => file.replace('.json', '').replaceAll('-', ' ');
const independent = (steps: string): Verification =>
  verification({
    ...{
      topic: 'Whole cases',
      item: 'independent-cases',
      problem: `Boards with nozzle or hood, parts, preheater: ${steps}`,
    },
    source: 'monolithic solve of the same page by an independent program (tests/support/heat/monolithic.mjs)',
  });
const pageExample = (): Verification =>
  verification({
    ...{ topic: 'Whole cases', item: 'page-example', problem: 'The example of the heat model page, steps of 1 s' },
    source: 'monolithic sparse solve made with the page, which shares no method with a splitting solver',
  });

describe('cases solved by an independent program', () => {
  const folder = new URL('./cases/', import.meta.url);
  const names = readdirSync(folder).filter((file) => file.endsWith('.json'));
  it('are there', () => expect(names.length).toBeGreaterThanOrEqual(4));
  for (const name of names) {
    it(`${name}: within 0.15 K with steps of 1 s`, () => {
      const given = read(new URL(name, folder));
      compare(independent('steps of 1 s'), title(name), given, given.expected, 1, 0.15);
    });
    it(`${name}: within 0.05 K with steps of 0.25 s`, () => {
      const given = read(new URL(name, folder));
      compare(independent('steps of 0.25 s'), title(name), given, given.expectedFine, 0.25, 0.05);
    });
  }
});

describe('the example of the heat model page', () => {
  const path = new URL('../../../shared/design/heat-example.json', import.meta.url);
  const there = existsSync(path);
  if (!there) console.log('skipped: ../shared/design/heat-example.json is not there');
  it.skipIf(!there)('every figure within 0.2 K (0.03 K expected of independent programs)', () => {
    const given = read(path);
    compare(pageExample(), 'as given', given, given.expected, 1, 0.03);
  });
  it.skipIf(!there)('is solved without its expected figures being read', () => {
    const given = read(path) as Partial<ReturnType<typeof read>>;
    const { expected } = given;
    delete given.expected;
    compare(pageExample(), 'expected figures taken out of the input', given, expected!, 1, 0.03);
  });
});
