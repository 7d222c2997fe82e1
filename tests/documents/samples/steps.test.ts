import { describe, expect, test } from 'vitest';
import { stepJson, stepLinesOf } from '../../../main/shells/command-line/step-lines.ts';
import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import { planSteps } from '../../../shared-types/rules/steps/plan-steps.ts';
import type { StepPlan } from '../../../shared-types/rules/steps/types.ts';
import type { StepMark } from '../../../shared-types/steps.ts';
import { sourceWords, stepWords } from '../../../shared-types/words/steps/step-words.ts';
import { ticketOf, told, withTags } from '../../support/stories.ts';
import { off } from '../../support/tags.ts';

const stepsOf = ({ board, plan }: TicketDocument, assessment: Assessment | null = null) =>
  planSteps(board, plan, assessment);
const step = (made: StepPlan, id: string) => made.steps.find((one) => one.id === id)!;

/** The ids stand in this order, all of them. */
function inOrder({ steps }: StepPlan, ...ids: string[]): void {
  const places = ids.map((id) => steps.findIndex((one) => one.id === id));
  expect(places, ids.join(' < ')).not.toContain(-1);
  expect(places).toEqual(places.toSorted((a, b) => a - b));
}

describe('1, greenhouse-gateway', () => {
  const ticket = ticketOf('greenhouse-gateway');
  const made = stepsOf(ticket);

  test('cell and module off and counted before the heat, straps when the site is cold, the cell back last of all', () => {
    inOrder(
      made,
      'off:BT1',
      'off:A1',
      'count-off',
      'heat:run-1',
      'lift:run-1:U1',
      'cool:run-1',
      'heat:run-2',
      'heat:run-3',
    );
    inOrder(
      made,
      'cool:run-3',
      'move-strap:R104>',
      'move-strap:R101>R102',
      'move-strap:>R105',
      'strap-read:strap-1',
      'supply',
    );
    inOrder(
      made,
      'back:A1',
      'count-back',
      'no-shorts',
      'supply',
      'current',
      'cell-back:BT1',
      'function-test',
      'hand-back',
    );
    expect(step(made, 'count-off').expects[0]).toMatchObject({ predicted: 2, exact: true });
    // The cell is in the tray until power-on.
    expect(step(made, 'count-back').expects[0]).toMatchObject({ predicted: 1, exact: true });
    expect(step(made, 'strap-read:strap-1').expects[0].predicted).toBe('01101');
    expect(step(made, 'strap-report:strap-1').expects[0].predicted).toBe('16 Gbit');
    expect(stepWords(step(made, 'move-strap:R101>R102')).act).toBe('Move the strap R101 to R102: 10k 0402');
  });

  test('both memories and the processor go through each stage, in the order of their tags', () => {
    for (const refdes of ['U1', 'U2', 'U3'])
      inOrder(
        made,
        `lift:run-1:${refdes}`,
        `dress:run-2:${refdes}`,
        `inspect-pads:run-2:${refdes}`,
        `incoming:run-3:${refdes}`,
        `place:run-3:${refdes}`,
        'heat:run-3',
      );
    inOrder(made, 'lift:run-1:U1', 'lift:run-1:U2', 'lift:run-1:U3');
  });

  test('figures stand beside the readings of W1 to W3, and the parts that melt are named', () => {
    const { assessment } = told(ticket, 'coarse');
    const worked = stepsOf(ticket, assessment);
    const [run] = assessment.evaluation.runs;
    const heat = step(worked, 'heat:run-1');
    const reads = heat.expects.find(({ key }) => key === 'at-gas-off:W2')!;
    expect(reads.predicted).toBe(
      run.watch.find(({ name }) => name === 'W2')!.atSegmentEndC[
        ticket.plan.heatRuns[0].segments.findLastIndex(({ gas }) => gas)
      ],
    );
    const gasOn = ticket.plan.heatRuns[0].segments.findIndex(({ gas }) => gas);
    const before = run.watch.find(({ name }) => name === 'W2')!.atSegmentEndC[gasOn - 1];
    expect(heat.expects.find(({ key }) => key === 'at-gas-on:W2')!.predicted).toBe(before);
    expect(heat.expects.filter(({ name }) => name === 'molten-at').map(({ of }) => of)).toEqual(['U1', 'U2', 'U3']);
    const melted = assessment.evaluation.parts.filter(
      ({ reflow, refdes }) => reflow !== 'none' && !['U1', 'U2', 'U3'].includes(refdes),
    );
    expect(step(worked, 'inspect-reflowed').parts).toHaveLength(melted.length);
    inOrder(worked, 'off:BT1', 'bake-board', 'heat:run-1');
  });
});

test('2, signal-card: a run whose target does not melt says so instead of its readings', () => {
  const ticket = ticketOf('signal-card');
  const target = { siteId: 'site-1', refdes: 'U1', verdict: 'partly' };
  const run = ticket.plan.heatRuns[0];
  const evaluation = { parts: [], notices: [], runs: [{ runId: run.id, targets: [target], watch: [], segments: [] }] };
  const assessment = {
    evaluation,
    actions: [{ refdes: 'L1', action: 'secure' }],
    findings: [],
    runNumbers: [],
  } as unknown as Assessment;
  const made = stepsOf(ticket, assessment);
  expect(step(made, `heat:${run.id}`)).toMatchObject({ alert: 'stop', expects: [] });
  expect(stepWords(step(made, `heat:${run.id}`)).act).toMatch(/^Do not start .*U1 does not melt whole$/);
  inOrder(made, 'secure', `heat:${run.id}`);
  const stiffener = ticket.board.covers.find(({ kind }) => kind === 'stiffener')!;
  const bare = stepsOf(withTags(ticket, off(stiffener.id)));
  inOrder(bare, `cover-off:${stiffener.id}`, 'count-off', `heat:${run.id}`, `cover-back:${stiffener.id}`);
});

describe('3, tide-gauge-logger', () => {
  const made = stepsOf(ticketOf('tide-gauge-logger'));

  test('coating off before the iron and before heat, the cell off whatever the distance, coated again once it works', () => {
    inOrder(made, 'coating-off', 'off:BT1', 'heat:run-1');
    inOrder(made, 'clean', 'cell-back:BT1', 'function-test', 'coat-again', 'hand-back');
    expect(sourceWords(step(made, 'off:BT1'))).toMatch(/85 °C.*never reflow a battery/);
  });

  test('old alloy unknown: it comes off to the bare pads', () => {
    expect(stepWords(step(made, 'dress:run-2:U1')).why).toMatch(/Off to the bare pads, tin with SAC305/);
  });
});

describe('4, ferry-gate-controller', () => {
  const ticket = ticketOf('ferry-gate-controller');
  const made = stepsOf(ticket);

  test('in circuit asked first, two read-outs and the data block before the chip is hot, written back with the block', () => {
    inOrder(made, 'in-circuit-first:U1', 'read-out:U1', 'data-block:U1', 'heat:run-1', 'lift:run-1:U1');
    inOrder(made, 'data-block:U1', 'program-part:U1', 'place:run-3:U1', 'heat:run-3', 'supply', 'read-back:U1');
    expect(step(made, 'read-out:U1').expects.map(({ name }) => name)).toEqual(['check-sum-1', 'check-sum-2']);
  });

  test('read-outs that differ are told and stop the work; two that agree do not', () => {
    const read = (second: string): StepMark => ({
      ...{ stepId: 'read-out:U1', done: true, by: 'M', at: '', note: '', words: '', phase: 'received' },
      readings: [
        { key: 'check-sum-1', value: '9F3A 20C1' },
        { key: 'check-sum-2', value: second },
      ],
    });
    const marked = (mark: StepMark) => ({
      ...ticket,
      plan: { ...ticket.plan, steps: { ...ticket.plan.steps, marks: [mark] } },
    });
    expect(stepsOf(marked(read('9F3A 20C7'))).faults).toEqual([
      { code: 'read-outs-differ', stepId: 'read-out:U1', refdes: 'U1' },
    ]);
    expect(stepsOf(marked(read('9f3a  20c1 '))).faults).toEqual([]);
    expect(told(marked(read('9F3A 20C7')), 'coarse').finding('read-outs-differ')).toMatchObject({ weight: 'stop' });
  });

  test('with an electrolytic and a cap: the one off and counted, the other on before the run, off when it is cold', () => {
    const cap = { id: 'cap', kind: 'shield', refdes: 'J1', order: null, note: '', shield: 'cap' } as const;
    const both = stepsOf(withTags(ticket, off('C1'), cap));
    inOrder(both, 'off:C1', 'count-off', 'heat:run-1', 'cool:run-3', 'shields-off', 'clean');
    inOrder(both, 'shield:J1', 'heat:run-1');
    // J-STD-020 and the maker's sheets: an electrolytic stands one or two reflows; its class says so.
    inOrder(both, 'back:C1', 'count-back');
  });
});

describe('5, weighbridge-terminal', () => {
  const ticket = ticketOf('weighbridge-terminal');
  const { assessment } = told(ticket, 'coarse');

  test('the cell off without a tag, the bake before heat and before the part goes on, the can before the memory', () => {
    const made = stepsOf(ticket, assessment);
    inOrder(made, 'off:BT1', 'bake-board', 'can-off:SH1', 'count-off', 'heat:run-1', 'lift:run-1:U1');
    inOrder(made, 'bake-part:U1', 'place:run-3:U1', 'heat:run-3', 'inspect-joints', 'cover-back:SH1');
    expect(step(made, 'can-off:SH1')).toMatchObject({ phase: 'covers', alert: 'stop' });
    expect(step(made, 'inspect-pads:run-2:U1')).toMatchObject({ alert: 'stop', figures: { number: 3 } });
    // J-STD-033, user bake table: level 3, up to 1.4 mm, floor life not known.
    expect(stepWords(step(made, 'bake-part:U1')).act).toMatch(/9 h at 125 °C, 33 h at 90 °C or 13 d at 40 °C/);
    // The cell is off by then: the next weakest is an electrolytic, which stands 105 °C (SMTnet 6904).
    expect(step(made, 'bake-board').figures).toMatchObject({ bakeC: 90, standsC: 105 });
  });

  test('the command line says what stops the work before the steps, each with box, reading, reason and source', () => {
    const lines = stepLinesOf(ticket, assessment);
    expect(lines[0]).toMatch(/^33 steps, 33 open\./);
    expect(lines[1]).toMatch(/^Stop: U2 cannot be saved.*Decline, or quote/);
    const at = lines.indexOf('  [ ] 5. Take off BT1 (CR2032)');
    expect(lines[at + 2]).toMatch(/never reflow a battery; cautions: Cells\)$/);
    expect(lines).toContain('        Counted off: predicted 2');
    const json = JSON.parse(JSON.stringify(stepJson(ticket, assessment)));
    const heat = json.phases.find(({ id }: { id: string }) => id === 'run:run-1').steps[0];
    expect(heat).toMatchObject({ id: 'heat:run-1', done: false, parts: ['U1'] });
    expect(heat.after).toContainEqual({
      step: 'off:BT1',
      reason: 'cell-before-heat',
      sentence: 'no heat while a cell is on the board, whatever the distance',
    });
  });

  test('the command line tells what was read and noted, what does not agree, and what no longer applies', () => {
    const mark = (stepId: string, more: Partial<StepMark>): StepMark => ({
      ...{ stepId, done: false, by: 'M', at: '', readings: [], note: '', words: 'As it was', phase: 'covers', ...more },
    });
    const marks = [
      mark('count-off', { readings: [{ key: 'off', value: 1 }], note: 'one under the mat' }),
      mark('off:Q77', { done: true, words: 'Take off Q77' }),
    ];
    const steps = { ...ticket.plan.steps, marks };
    const lines = stepLinesOf({ ...ticket, plan: { ...ticket.plan, steps } }, assessment);
    expect(lines).toContain('        Counted off: predicted 2, actual 1');
    expect(lines).toContain('        Note: one under the mat');
    expect(lines).toContain('! Counted off: 1, but the plan has 2. Find the part before you go on.');
    expect(lines.slice(-2)).toEqual(['Ticked or noted, but no longer asked for by the plan', '  Take off Q77 (M)']);
  });

  test('a cover-removal run takes the can off in its own phase, before the removal, wherever the plan lists it', () => {
    const [removal] = ticket.plan.heatRuns;
    const run = { ...removal, id: 'run-c', name: 'Can off', kind: 'cover-removal' as const };
    for (const heatRuns of [
      [run, ...ticket.plan.heatRuns],
      [...ticket.plan.heatRuns, run],
    ]) {
      const made = stepsOf({ ...ticket, plan: { ...ticket.plan, heatRuns } }, assessment);
      inOrder(
        made,
        'bake-board',
        'heat:run-c',
        'can-off:SH1',
        'cool:run-c',
        'count-off',
        'heat:run-1',
        'lift:run-1:U1',
      );
      expect(step(made, 'can-off:SH1')).toMatchObject({ phase: 'run:run-c', alert: null });
      expect(made.faults).toEqual([]);
    }
  });
});
