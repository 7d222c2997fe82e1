import { describe, expect, it } from 'vitest';
import { runExampleCase } from '../../main/heat/example-case.ts';
import { asCase, caseCutout } from '../support/heat/as-case.ts';
import { verification } from '../support/verification/record.ts';
import { evaluated, run, smallBoard, smallPlan } from '../unit/main/heat/support.ts';

describe('a case as a real ticket', () => {
  const square = smallBoard().parts.filter((one) => one.package.shape === 'rectangle');
  it.each(['top', 'bottom'] as const)('worked on the %s: every body as by example heat, within 0.01 K', (side) => {
    const board = { ...smallBoard(), parts: square, cutouts: [caseCutout] };
    const plan = smallPlan(board, { heatRuns: [run('removal', 'run-1', { side })] });
    const result = runExampleCase(asCase(board, plan), { cellMm: 2, stepS: 1 });
    if (!result.ok) throw new Error(JSON.stringify(result.problem));
    const { parts } = evaluated(board, plan);
    const verify = verification({
      ...{
        topic: 'Whole cases',
        item: 'ticket-as-example',
        problem: 'Board and plan of a ticket against the same case by hand',
      },
      source: 'the case form above, which is held against the independent programs',
    });
    const expected = Object.entries(result.value.parts);
    expect(expected.length).toBe(square.length);
    for (const [ref, { peakBodyMean }] of expected) {
      const found = parts.find((one) => one.refdes === ref)!;
      verify.near(`${side}: ${ref}, peak mean of its body`, '°C', found.body.meanC, peakBodyMean, 0.01);
    }
  });
});
