import { expect, it } from 'vitest';
import { recall, remember } from '../../../../renderer/state/import-memory.ts';
import type { ImportFacts } from '../../../../shared-types/import-report.ts';

const reportOf = (...shapes: string[]) => ({ tables: shapes.map((shape) => ({ shape })) }) as unknown as ImportFacts;

it('keeps choices for files with the same headings, and only for those', () => {
  const choices = { tables: { 'a|b': { unit: 'mil' as const } }, bottomX: 'negated' as const, outline: 3 };
  const kept = remember([], reportOf('a|b', 'a|b'), choices);
  expect(kept).toEqual([{ shape: 'a|b', table: { unit: 'mil' }, bottomX: 'negated' }]);
  // An outline's rank belongs to one board.
  expect(recall(kept, reportOf('a|b'))).toEqual({ tables: { 'a|b': { unit: 'mil' } }, bottomX: 'negated' });
  expect(recall(kept, reportOf('c|d'))).toBeNull();
});

it('forgets a kind that was imported without a choice, and keeps the others', () => {
  const kept = [
    { shape: 'a', table: { unit: 'mm' as const } },
    { shape: 'b', table: { unit: 'mil' as const } },
  ];
  expect(remember(kept, reportOf('a'), {})).toEqual([kept[1]]);
});

it('keeps sixty kinds', () => {
  let kept: ReturnType<typeof remember> = [];
  for (let index = 0; index < 70; index++)
    kept = remember(kept, reportOf(`s${index}`), { tables: { [`s${index}`]: { unit: 'mm' } } });
  expect(kept.map(({ shape }) => shape)).toEqual(Array.from({ length: 60 }, (_, index) => `s${index + 10}`));
});
