import { expect, test } from 'vitest';
import { judgeCase } from '../../../../support/imports/dialects/judge-case.ts';
import { dialectCase } from '../../../../support/imports/dialects/write-case.ts';

const CASES = 150;

test('random boards in random dialects come back as they were, or the import says what is unclear; never silently wrong', () => {
  const verdicts = Array.from({ length: CASES }, (_, index) => {
    const given = dialectCase(index + 1);
    return { ...judgeCase(given), seed: given.seed, texts: given.texts };
  });
  const wrong = verdicts.filter(({ outcome }) => outcome === 'wrong');
  expect(
    wrong.map(({ seed, why, texts }) => ({ seed, why: why.slice(0, 3), text: texts[0].text.slice(0, 400) })),
  ).toEqual([]);
  // Saying 'unclear' of everything would be no import.
  expect(verdicts.filter(({ outcome }) => outcome === 'right').length).toBeGreaterThan(0.9 * CASES);
});
