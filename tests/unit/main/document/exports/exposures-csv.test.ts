import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { exposuresCsv } from '../../../../../main/document/exports/exposures-csv.ts';
import { evaluate } from '../../../../../main/heat/evaluate.ts';
import { assess } from '../../../../../main/planning/assess.ts';
import type { Assessment } from '../../../../../shared-types/evaluation.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import { EXPOSURE_HEADINGS } from '../../../../../shared-types/words/exports.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';

const board = boardWith([
  partNamed('U1'),
  partNamed('-C1', {
    x: 60,
    class: 'mlcc',
    value: '=1+1',
    package: { ...partNamed('x').package, lengthMm: 1, widthMm: 0.5 },
  }),
  partNamed('R9', { x: 20, fitted: false }),
]);
const plan = planForTargets(board, 'T-1', ['U1']);
let assessment: Assessment;
let rows: Record<string, string>[];

beforeAll(() => {
  const evaluated = evaluate(board, plan, { phase: 'coarse' });
  if (!evaluated.ok) throw new Error(evaluated.problem.code);
  assessment = assess(board, plan, evaluated.value);
  const text = new TextDecoder().decode(exposuresCsv(board, plan, assessment));
  rows = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
});

describe('the table of exposures', () => {
  test('every part has a row, the smallest margin first, empty positions last with the reason', () => {
    const margins = assessment.evaluation.parts.map(({ marginK }) => marginK).sort((a, b) => a - b);
    expect(rows).toHaveLength(3);
    for (const row of rows) expect(Object.keys(row)).toEqual([...EXPOSURE_HEADINGS]);
    expect(rows.slice(0, 2).map((row) => Number(row['Margin (K)']))).toEqual(
      margins.map((k) => Math.round(k * 10) / 10),
    );
    expect(rows[2]).toMatchObject({ Part: 'R9', 'State (estimate)': 'not evaluated: not fitted', 'Margin (K)': '' });
  });

  test('figures are those of the evaluation, to a tenth, as plain numbers', () => {
    for (const exposure of assessment.evaluation.parts) {
      const row = rows.find(({ Part }) => Part.replace(/^'/, '') === exposure.refdes);
      expect(Number(row?.['Body, hottest (°C)'])).toBeCloseTo(exposure.body.maxC, 0);
      expect(Math.abs(Number(row?.['Joint, hottest (°C)']) - exposure.joint.maxC)).toBeLessThan(0.051);
      expect(Number(row?.['Body limit (°C)'])).toBeCloseTo(exposure.limits.body?.celsius ?? 0, 1);
      expect(row?.['Margin (K)']).toMatch(/^-?\d+(\.\d)?$/);
    }
  });

  test('texts of the board cannot become formulas', () => {
    const chip = rows.find(({ Part }) => Part.endsWith('C1'));
    expect(chip).toMatchObject({ Part: "'-C1", Value: "'=1+1" });
  });
});
