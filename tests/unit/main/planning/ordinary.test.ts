import { expect, test } from 'vitest';
import { withoutOrdinaryDoubt } from '../../../../main/planning/ordinary.ts';
import type { PartBands } from '../../../../shared-types/uncertainty.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf } from './support.ts';

const BANDS: PartBands = {
  bodyK: 20,
  skinK: 20,
  jointK: 20,
  secondsOverS: 0,
  mostly: 'outlet',
  mostlyShare: 0.5,
  outletMeasuredK: null,
};

function stateAfter(classId: string, heat: Heat) {
  const part = partOf('R7', classId);
  const board = boardOf([part]);
  const doubtful = { ...exposureOf(part, heat), state: 'unsure' as const, bandK: 20, bands: BANDS };
  return withoutOrdinaryDoubt(board, evaluationOf(planOf(board), [doubtful])).parts[0].state;
}

test('a small part whose solder may or may not melt is no exception: it is left either way', () => {
  expect(stateAfter('chip-resistor', { body: 205, joint: 210 })).toBe('clear');
  expect(stateAfter('chip-resistor', { body: 222, joint: 222 })).toBe('clear');
});

test('what may be cooked, is no small part, or may not melt again stays unsure', () => {
  expect(stateAfter('chip-resistor', { body: 245, joint: 250 })).toBe('unsure');
  expect(stateAfter('bga', { body: 205, joint: 210 })).toBe('unsure');
  expect(stateAfter('electrolytic-small', { body: 205, joint: 210 })).toBe('unsure');
});
