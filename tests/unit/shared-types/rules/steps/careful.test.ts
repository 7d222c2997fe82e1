import { describe, expect, test } from 'vitest';
import type { Board, Cover } from '../../../../../shared-types/board.ts';
import type { Assessment } from '../../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../../shared-types/plan.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import { planSteps } from '../../../../../shared-types/rules/steps/plan-steps.ts';
import type { StepPlan } from '../../../../../shared-types/rules/steps/types.ts';
import type { Tag } from '../../../../../shared-types/tags.ts';
import { METRIC, measuresIn } from '../../../../../shared-types/words/measures.ts';
import { stepFaultWords, stepWords } from '../../../../../shared-types/words/steps/step-words.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';

const board = boardWith([
  partNamed('U1', { class: 'bga' }),
  partNamed('U5', { x: 40, class: 'serial-memory' }),
  partNamed('C9', { x: 60, class: 'electrolytic-medium' }),
  partNamed('BT1', { x: 80, class: 'coin-cell' }),
]);
const start = planForTargets(board, 'T-1', ['U1']);
const common = { order: null, note: '' };
const off = (refdes: string, goesBack: boolean): Tag => ({
  ...common,
  id: `off-${refdes}`,
  kind: 'remove',
  refdes,
  goesBack,
  traySlot: '',
});
const tagged = (...tags: Tag[]): Plan => ({ ...start, tags: [...start.tags, ...tags] });
const can = (more: Partial<Cover>): Cover => ({
  ...{ id: 'SH1', kind: 'can', side: 'top', turn: 0, heightMm: 3, sheetMm: 0.2, material: 'tinned-steel' },
  ...{ x: 60, y: board.parts[2].y, lengthMm: 16, widthMm: 16, fixing: 'clipped' },
  ...more,
});
const covered = (one: Board, cover: Cover): Board => ({ ...one, covers: [cover] });

const find = ({ steps }: StepPlan, id: string) => steps.find((step) => step.id === id);
/** The ids stand in this order, all of them, and nothing is told against it. */
function inOrder(made: StepPlan, ...ids: string[]): void {
  const places = ids.map((id) => made.steps.findIndex((step) => step.id === id));
  expect(places, ids.join(' < ')).not.toContain(-1);
  expect(places).toEqual(places.toSorted((a, b) => a - b));
  expect(made.faults.filter(({ code }) => code === 'cannot-order')).toEqual([]);
}

test('a rail is measured for a short before the unit is powered as it came', () => {
  const made = planSteps(board, start, null);
  inOrder(made, 'record', 'note-resistance', 'note-power', 'power-off', 'off:BT1');
  expect(made.waits).toContainEqual({ step: 'note-power', on: 'note-resistance', reason: 'checks-before-power' });
});

describe('what is not on the board is not checked on it', () => {
  test('a part that stays off has no polarity and is not read back', () => {
    const made = planSteps(board, tagged(off('C9', false), off('U5', false)), null);
    expect(find(made, 'read-out:U5')).toBeDefined();
    expect(find(made, 'read-back:U5')).toBeUndefined();
    expect(find(made, 'polarity')?.parts).toEqual(['U1']);
    const back = planSteps(board, tagged(off('C9', true), off('U5', true)), null);
    expect(find(back, 'read-back:U5')).toBeDefined();
    // The cell is in the tray until power-on: its own step checks its polarity.
    expect(find(back, 'polarity')?.parts).toEqual(['U1', 'C9', 'U5']);
  });

  test('nor is a place where nothing goes on', () => {
    const plan = planForTargets(board, 'T-1', ['U5']);
    const removal = { ...plan, heatRuns: plan.heatRuns.filter(({ kind }) => kind === 'removal') };
    const made = planSteps(board, removal, null);
    expect(find(made, 'read-out:U5')).toBeDefined();
    expect(find(made, 'read-back:U5')).toBeUndefined();
    expect(find(made, 'polarity')).toBeUndefined();
    inOrder(planSteps(board, plan, null), 'no-shorts', 'polarity', 'supply', 'read-back:U5');
  });
});

describe('without a heat run', () => {
  const bare = (...tags: Tag[]): Plan => ({ ...start, sites: [], heatRuns: [], tags });

  test('what is soldered by hand is cleaned before power', () => {
    const way = { ...common, id: 'p5', kind: 'reprogram', refdes: 'U5' } as const;
    inOrder(
      planSteps(board, bare({ ...way, way: 'off-and-back' }), null),
      'read-out:U5',
      'program-part:U5',
      'clean',
      'no-shorts',
      'supply',
      'read-back:U5',
    );
    expect(find(planSteps(board, bare({ ...way, way: 'in-circuit' }), null), 'clean')).toBeUndefined();
  });

  test('a part under a can comes off behind the can, which goes back over it', () => {
    inOrder(
      planSteps(covered(board, can({})), bare(off('C9', true)), null),
      'cover-off:SH1',
      'off:C9',
      'count-off',
      'back:C9',
      'clean',
      'cover-back:SH1',
      'count-back',
      'no-shorts',
    );
  });

  test('a soldered can over it stops the work: no run takes it off', () => {
    const made = planSteps(covered(board, can({ fixing: 'soldered' })), bare(off('C9', true)), null);
    inOrder(made, 'can-off:SH1', 'off:C9', 'back:C9', 'cover-back:SH1');
    expect(find(made, 'can-off:SH1')?.alert).toBe('stop');
    expect(
      planSteps(covered(board, can({})), bare(off('U5', true)), null).steps.some(({ kind }) => kind === 'cover-off'),
    ).toBe(false);
  });
});

describe('under a can of the site', () => {
  const { x, y } = board.parts[0];
  const watch: Tag = { ...common, id: 'w', kind: 'watchPoint', name: 'W1', side: 'top', x, y, refdes: 'U1' };
  const fenced = (): Plan => {
    const plan = tagged(watch);
    return {
      ...plan,
      sites: plan.sites.map((site) => ({ ...site, fence: { marginMm: 2, rimGapMm: 0.5 } })) as Plan['sites'],
    };
  };

  test('thermocouple and fence stand when the can is off, before the gas', () => {
    const plan = fenced();
    const [site] = plan.sites;
    for (const fixing of ['soldered', 'clipped'] as const) {
      const made = planSteps(covered(board, can({ x, y, lengthMm: 30, widthMm: 30, fixing })), plan, null);
      const lifted = fixing === 'soldered' ? 'can-off:SH1' : 'cover-off:SH1';
      inOrder(made, lifted, `fence:${site.id}`, 'thermocouple:w', 'heat:run-1');
    }
  });

  test('what melted under it is inspected, and flux washed off, before the can is back', () => {
    const melted = { refdes: 'U5', reflow: 'whole', solidusC: 217 };
    const evaluation = { parts: [melted], notices: [], runs: [] };
    const assessment = { evaluation, actions: [], findings: [], runNumbers: [] } as unknown as Assessment;
    const made = planSteps(covered(board, can({ x: 30, y, lengthMm: 60, widthMm: 30 })), start, assessment);
    inOrder(made, 'cool:run-3', 'inspect-reflowed', 'clean', 'cover-back:SH1', 'count-back', 'no-shorts');
    const reasons = made.waits
      .filter(({ step }) => step === 'cover-back:SH1')
      .map(({ on, reason }) => `${on} ${reason}`);
    expect(reasons).toEqual(
      expect.arrayContaining(['inspect-reflowed under-before-cover', 'clean clean-before-cover']),
    );
  });

  test('coating is taken off when a clipped can is off', () => {
    const coated = { ...board, parts: board.parts.map((part) => ({ ...part, coated: part.refdes === 'U1' })) };
    const made = planSteps(covered(coated, can({ x, y, lengthMm: 30, widthMm: 30 })), start, null);
    inOrder(made, 'power-off', 'cover-off:SH1', 'coating-off', 'heat:run-1');
  });
});

test('a part that is placed twice is written once, before the first time', () => {
  const plan = planForTargets(board, 'T-1', ['U5']);
  const again = { ...plan.heatRuns.find(({ kind }) => kind === 'installation')!, id: 'run-9', name: 'Again' };
  const made = planSteps(board, { ...plan, heatRuns: [...plan.heatRuns, again] }, null);
  const ids = made.steps.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  inOrder(made, 'program-part:U5', 'place:run-3:U5', 'heat:run-3', 'heat:run-9');
});

test('what does not agree is told in the units of the window or sheet', () => {
  const figures = { count: 3, aboveC: 200 };
  const found = { code: 'bake-first', weight: 'note', place: { kind: 'board', id: 'board' }, figures, source: null };
  const evaluation = { parts: [], notices: [], runs: [] };
  const assessment = { evaluation, actions: [], findings: [found], runNumbers: [] } as unknown as Assessment;
  const made = planSteps(board, start, assessment);
  const fault = { code: 'done-before', stepId: 'heat:run-1', on: 'bake-board', reason: 'bake-before-heat' } as const;
  expect(stepFaultWords(fault, made, METRIC)).toMatch(/bake the board at \d+ °C/);
  expect(stepFaultWords(fault, made, measuresIn('F', 'mm'))).toMatch(/bake the board at \d+ °F/);
});

test('an underfilled part is softened at the figure of its finding, with its source', () => {
  const glued = { ...board, parts: board.parts.map((part) => ({ ...part, underfilled: part.refdes === 'U1' })) };
  const [site] = start.sites;
  const source = { text: 'A panel', grade: 'M' };
  const place = { kind: 'site', id: site.id };
  const found = { code: 'target-underfilled', weight: 'warn', place, figures: { aboveC: 231 }, source };
  const evaluation = { parts: [], notices: [], runs: [] };
  const assessment = { evaluation, actions: [], findings: [found], runNumbers: [] } as unknown as Assessment;
  const lift = find(planSteps(glued, start, assessment), 'lift:run-1:U1')!;
  expect(lift).toMatchObject({ source, figures: { aboveC: 231 } });
  expect(stepWords(lift).why).toMatch(/^Underfilled: soften it above 231 °C, then twist\. Without prying/);
  expect(stepWords(find(planSteps(glued, start, null), 'lift:run-1:U1')!).why).toMatch(/soften it, then twist/);
  expect(stepWords(find(planSteps(board, start, assessment), 'lift:run-1:U1')!).why).toMatch(/^Straight up/);
});

test('an iron burns: parts taken off and put back by it say so, what is pulled or is a cell does not', () => {
  const plugged = { ...board, parts: [...board.parts, partNamed('A1', { x: 120, class: 'module-on-connector' })] };
  const made = planSteps(plugged, tagged(off('C9', true)), null);
  for (const id of ['off:C9', 'back:C9']) expect(find(made, id)?.cautions).toEqual(['burns', 'fumes']);
  expect(find(made, 'off:BT1')?.cautions).toEqual(['cells']);
  expect(find(made, 'off:A1')?.cautions).toEqual([]);
  const { x, y } = board.parts[0];
  const soldered = planSteps(covered(board, can({ x, y, fixing: 'soldered' })), start, null);
  expect(find(soldered, 'can-off:SH1')?.cautions).toEqual(['covers', 'burns']);
  expect(find(soldered, 'cover-back:SH1')?.cautions).toEqual(['burns', 'fumes']);
});

test('what came off last goes back first', () => {
  inOrder(planSteps(board, tagged(off('C9', true), off('U5', true)), null), 'off:C9', 'off:U5', 'back:U5', 'back:C9');
});

test('an order of tags that cannot be kept is told, not followed', () => {
  const plan = tagged({ ...off('SH1', true), order: 9 }, { ...off('C9', true), order: 2 });
  const made = planSteps(covered(board, can({})), plan, null);
  inOrder(made, 'cover-off:SH1', 'off:C9');
  expect(made.faults).toContainEqual({
    ...{ code: 'order-against', stepId: 'off:C9', on: 'cover-off:SH1', reason: 'can-before-part' },
  });
});

test('a move behind a step that is gone leaves everything in its place', () => {
  const move = { stepId: 'set-up', phase: 'before-heat', behind: 'off:X1' };
  const moved = planSteps(board, { ...start, steps: { ...start.steps, moves: [move] } }, null);
  expect(moved.steps).toEqual(planSteps(board, start, null).steps);
});

test('pads are inspected when the board has cooled, wherever the step is moved to', () => {
  const { waits } = planSteps(board, start, null);
  expect(waits).toContainEqual({ step: 'inspect-pads:run-2:U1', on: 'cool:run-2', reason: 'cold-before-touch' });
});

test('a memory lifted and put back is compared with what was read out of it', () => {
  const plan = tagged(off('U5', true));
  const readings = [{ key: 'check-sum-1', value: '9F3A' }];
  const mark = {
    ...{ stepId: 'read-out:U5', done: true, by: '', at: '', note: '', words: '' },
    phase: 'received',
    readings,
  };
  const made = planSteps(board, { ...plan, steps: { ...plan.steps, marks: [mark] } }, null);
  expect(find(made, 'read-back:U5')?.expects[0].predicted).toBe('9F3A');
});
