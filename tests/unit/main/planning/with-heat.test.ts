import { describe, expect, test } from 'vitest';
import { evaluate } from '../../../../main/heat/evaluate.ts';
import { assess } from '../../../../main/planning/assess.ts';
import { type Board, emptyBoard } from '../../../../shared-types/board.ts';
import type { Assessment } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { planForTargets } from '../../../../shared-types/rules/new-plan.ts';
import { suggestionsOf, takeAllSuggestions } from '../../../../shared-types/rules/suggestions.ts';
import { findingWords } from '../../../../shared-types/words/findings.ts';
import { actionReason } from '../../../../shared-types/words/planning.ts';
import { partOf } from './support.ts';

const sized = (lengthMm: number, widthMm: number, heightMm: number) => ({
  name: '',
  shape: 'rectangle' as const,
  lengthMm,
  widthMm,
  heightMm,
});

/** A board of 90 x 70 mm: an array in the middle, bypass parts round it and below it, plastic and cells further off. */
function crowdedBoard(): Board {
  const bypass = Array.from({ length: 12 }, (_, index) =>
    partOf(`C${index + 1}`, 'chip-capacitor', {
      side: index < 6 ? 'top' : 'bottom',
      x: 36 + (index % 6) * 3.5,
      y: index < 6 ? 46.5 : 36,
      package: sized(1, 0.5, 0.5),
    }),
  );
  const far = Array.from({ length: 6 }, (_, index) =>
    partOf(`R${index + 1}`, 'chip-resistor', { x: 8, y: 8 + index * 3, package: sized(1.6, 0.8, 0.5) }),
  );
  return {
    ...emptyBoard('Crowded board', 90, 70),
    parts: [
      partOf('U1', 'bga', { x: 45, y: 35, package: sized(19, 19, 1.4) }),
      ...bypass,
      ...far,
      partOf('J1', 'connector-pbt', { x: 45, y: 21.5, package: sized(16, 5, 5) }),
      partOf('C90', 'electrolytic-medium', { x: 62.5, y: 35, package: { ...sized(10, 10, 10.2), shape: 'round' } }),
      partOf('BT1', 'coin-cell', { x: 78, y: 60, package: sized(16, 16, 5) }),
      partOf('L1', 'power-inductor', { side: 'bottom', x: 45, y: 30, package: sized(12, 12, 7) }),
    ],
  };
}

function assessed(board: Board, plan: Plan): Assessment {
  const result = evaluate(board, plan, { phase: 'coarse' });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return assess(board, plan, result.value);
}

describe('planning on real heat', () => {
  const board = crowdedBoard();
  const plan = planForTargets(board, 'T-1', ['U1']);
  const first = assessed(board, plan);
  const advice = (found: Assessment, refdes: string) => found.actions.find((action) => action.refdes === refdes);

  test('the advice a technician expects', () => {
    expect(advice(first, 'U1')?.action).toBe('target');
    expect(advice(first, 'BT1')).toMatchObject({ action: 'remove-first', reason: 'always-off' });
    expect(['remove-first', 'shield']).toContain(advice(first, 'J1')?.action);
    expect(advice(first, 'L1')?.action).toBe('secure');
    for (let index = 1; index <= 12; index++) expect(advice(first, `C${index}`)?.action).toBe('leave-will-reflow');
    for (let index = 1; index <= 6; index++) expect(advice(first, `R${index}`)?.action).toBe('leave');
  });

  test('every sentence is whole, and nothing is called safe', () => {
    const sentences = [
      ...first.actions.map((action) => actionReason(action)),
      ...first.findings.flatMap((finding) => Object.values(findingWords(finding))),
    ];
    for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|NaN|Infinity|\?|\bsafe\b/);
  });

  test('numbers to act on lie in the order of the run', () => {
    for (const numbers of first.runNumbers) {
      expect(numbers.startGasAtC).toBeGreaterThan(100);
      expect(numbers.startGasAtC).toBeLessThan(217);
      if (numbers.moltenAtS === undefined) continue;
      expect(numbers.moltenAtS).toBeGreaterThan(numbers.gasFromS ?? Number.NaN);
      expect(numbers.notMoltenByS).toBeGreaterThanOrEqual(numbers.moltenAtS);
    }
    expect(first.runNumbers).toHaveLength(2);
  });

  test('taking all suggestions comes to rest, and nothing that stays is over in body or skin', () => {
    let current = plan;
    let found = first;
    let rounds = 0;
    for (; rounds < 5; rounds++) {
      const open = suggestionsOf(found, current);
      if (open.length === 0) break;
      current = takeAllSuggestions(current, open);
      found = assessed(board, current);
    }
    expect(rounds).toBeLessThanOrEqual(3);
    for (const exposure of found.evaluation.parts) {
      if (exposure.refdes === 'U1') continue;
      expect(exposure.margins.body ?? 0, exposure.refdes).toBeGreaterThanOrEqual(0);
      expect(exposure.margins.skin ?? 0, exposure.refdes).toBeGreaterThanOrEqual(0);
    }
  });
});
