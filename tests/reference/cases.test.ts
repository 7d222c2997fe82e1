import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runExampleCase } from '../../main/heat/example-case.ts';

/**
 * Cases of the form of `example heat`. Those in tests/reference/cases were solved by an independent program
 * (tests/support/heat/monolithic.mjs, written by cases/make-expectations.mjs); the design's own example was made by
 * a monolithic sparse solve that shares no method with the splitting.
 */
type Expected = { nozzle: { Re: number; hPlateau: number } | null; parts: Record<string, Record<string, number>> };

function compare(given: object, expected: Expected, stepS: number, withinK: number): void {
  const result = runExampleCase(given, { cellMm: 2, stepS });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  const { nozzle, parts } = result.value;
  if (expected.nozzle) {
    expect(Math.abs(nozzle!.Re / expected.nozzle.Re - 1)).toBeLessThan(1e-5);
    expect(Math.abs(nozzle!.hPlateau / expected.nozzle.hPlateau - 1)).toBeLessThan(1e-5);
  }
  expect(Object.keys(parts).sort()).toEqual(Object.keys(expected.parts).sort());
  for (const [ref, figures] of Object.entries(expected.parts)) {
    for (const [name, celsius] of Object.entries(figures)) {
      const found = parts[ref]![name as keyof (typeof parts)[string]];
      expect(Math.abs(found - celsius), `${ref} ${name}: ${found} against ${celsius}`).toBeLessThan(withinK);
    }
  }
}

const read = (path: URL) => JSON.parse(readFileSync(path, 'utf8')) as { expected: Expected; expectedFine: Expected };

describe('cases solved by an independent program', () => {
  const folder = new URL('./cases/', import.meta.url);
  const names = readdirSync(folder).filter((file) => file.endsWith('.json'));
  it('are there', () => expect(names.length).toBeGreaterThanOrEqual(4));
  for (const name of names) {
    it(`${name}: within 0.15 K with steps of 1 s`, () => {
      const given = read(new URL(name, folder));
      compare(given, given.expected, 1, 0.15);
    });
    it(`${name}: within 0.05 K with steps of 0.25 s`, () => {
      const given = read(new URL(name, folder));
      compare(given, given.expectedFine, 0.25, 0.05);
    });
  }
});

describe('the example of the heat model page', () => {
  const path = new URL('../../../shared/design/heat-example.json', import.meta.url);
  const there = existsSync(path);
  if (!there) console.log('skipped: ../shared/design/heat-example.json is not there');
  it.skipIf(!there)('every figure within 0.2 K (0.03 K expected of independent programs)', () => {
    const given = read(path);
    compare(given, given.expected, 1, 0.03);
  });
  it.skipIf(!there)('is solved without its expected figures being read', () => {
    const given = read(path) as Partial<ReturnType<typeof read>>;
    const { expected } = given;
    delete given.expected;
    compare(given, expected!, 1, 0.03);
  });
});
