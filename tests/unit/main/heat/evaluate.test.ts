import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../../main/heat/evaluate.ts';
import { runExampleCase } from '../../../../main/heat/example-case.ts';
import { prepareRun } from '../../../../main/heat/heat-run.ts';
import { presences } from '../../../../main/heat/presence.ts';
import type { Board } from '../../../../shared-types/board.ts';
import { DEFAULT_SHIELD } from '../../../../shared-types/library/shields.ts';
import { asCase, caseCutout } from '../../../support/heat/as-case.ts';
import { evaluated, exposure, part, run, segment, site, smallBoard, smallPlan } from './support.ts';

function preparedRun(board: Board) {
  const plan = smallPlan(board);
  const prepared = prepareRun(board, plan, presences(board, plan)[0]!, 0.002, 1, new Map());
  if (!prepared.ok) throw new Error(prepared.problem.code);
  return prepared.value;
}

describe('a ticket', () => {
  const square = smallBoard().parts.filter((one) => one.package.shape === 'rectangle');
  for (const side of ['top', 'bottom'] as const) {
    it(`agrees with the same case by example heat within 0.01 K, worked on the ${side}`, () => {
      const board = { ...smallBoard(), parts: square, cutouts: [caseCutout] };
      const plan = smallPlan(board, { heatRuns: [run('removal', 'run-1', { side })] });
      const result = runExampleCase(asCase(board, plan), { cellMm: 2, stepS: 1 });
      if (!result.ok) throw new Error(JSON.stringify(result.problem));
      const { grid, runs, parts } = evaluated(board, plan);
      for (const [ref, figures] of Object.entries(result.value.parts)) {
        const found = parts.find((one) => one.refdes === ref)!;
        expect(found.body.meanC, ref).toBeCloseTo(figures.peakBodyMean, 2);
        const field = runs[0]!.fields[found.side];
        const one = board.parts.find((candidate) => candidate.refdes === ref)!;
        const cell = (x: number, y: number) => Math.floor(y / grid.cellMm) * grid.columns + Math.floor(x / grid.cellMm);
        const under = field[cell(one.x, one.y)]!;
        expect(under).toBeGreaterThan(figures.peakJointMin - 0.01);
        expect(under).toBeLessThan(figures.peakJointMax + 0.01);
        expect(found.joint.maxC).toBeLessThan(figures.peakJointMax + 2);
      }
    });
  }

  it('is the same from call to call, and says what it is', () => {
    const board = smallBoard();
    const first = evaluated(board, smallPlan(board), { revision: 7 });
    const second = evaluated(board, smallPlan(board), { revision: 7 });
    expect(second).toEqual(first);
    expect(first).toMatchObject({ revision: 7, phase: 'coarse', bands: 'not-computed' });
    expect(first.grid).toMatchObject({ columns: 30, rows: 22, cellMm: 2, originX: 0, originY: 0, grownFromMm: null });
    expect(first.parts.every((one) => one.bandK === null)).toBe(true);
  });

  it('keeps sides apart: the worked side is the one that is blown', () => {
    const board = smallBoard();
    const top = exposure(evaluated(board, smallPlan(board)), 'U1');
    const below = smallPlan(board, { heatRuns: [run('removal', 'run-1', { side: 'bottom' })] });
    const bottom = exposure(evaluated(board, below), 'U1');
    expect(top.shares.gas).toBeGreaterThan(0.3);
    expect(top.shares.preheater).toBe(0);
    expect(bottom.shares.gas).toBe(0);
    expect(bottom.shares.preheater).toBeGreaterThan(0.1);
    const heated = evaluated(board, smallPlan(board)).runs[0]!.fields;
    const centre = 11 * 30 + 15;
    expect(heated.top[centre]!).toBeGreaterThan(heated.bottom[centre]!);
  });

  it('takes tagged parts off, leaves empty positions out and says why', () => {
    const base = smallBoard();
    const board = {
      ...base,
      parts: [...base.parts, part('C7', 5, 5, [1, 1, 1], { fitted: false }), part('C8', 200, 5, [1, 1, 1])],
    };
    const tag = { id: 't1', kind: 'remove', order: 1, note: '', refdes: 'E1', goesBack: true, traySlot: '' } as const;
    const evaluation = evaluated(board, smallPlan(board, { tags: [tag] }));
    expect(evaluation.notEvaluated).toEqual([
      { refdes: 'E1', reason: 'removed' },
      { refdes: 'C7', reason: 'not-fitted' },
      { refdes: 'C8', reason: 'off-board' },
    ]);
  });

  it('leaves a lifted site bare until the new part goes on', () => {
    const board = smallBoard();
    const runs = [run('removal', 'off'), run('site-preparation', 'dress'), run('installation', 'on')];
    const evaluation = evaluated(board, smallPlan(board, { heatRuns: runs }));
    expect(evaluation.runs.map((one) => one.targets.length)).toEqual([1, 0, 1]);
    const u1 = exposure(evaluation, 'U1');
    expect(u1.reflows).toBe(2);
    expect(evaluation.notices.map((one) => one.code)).toContain('iron-not-modelled');
    // Without the part's mass the bare site follows the gas sooner, so that run's field differs.
    expect(evaluation.runs[1]!.fields.top[11 * 30 + 15]).not.toBeCloseTo(
      evaluation.runs[0]!.fields.top[11 * 30 + 15]!,
      1,
    );
    const worst = evaluation.fields.top[11 * 30 + 15]!;
    expect(worst).toBe(Math.max(...evaluation.runs.map((one) => one.fields.top[11 * 30 + 15]!)));
  });

  it('takes the site as bare when it is prepared, even if no removal run stands before', () => {
    const board = smallBoard();
    const evaluation = evaluated(board, smallPlan(board, { heatRuns: [run('site-preparation', 'dress')] }));
    expect(evaluation.notEvaluated).toEqual([{ refdes: 'U1', reason: 'removed' }]);
  });

  it("judges neighbours' joints by their solidus and the target by its package", () => {
    const board = smallBoard();
    const evaluation = evaluated(board, smallPlan(board));
    expect(exposure(evaluation, 'U1').limits.joint).toBeNull();
    expect(exposure(evaluation, 'C1').limits.joint).toMatchObject({ celsius: 217, origin: 'alloy' });
    const c1 = exposure(evaluation, 'C1');
    expect(c1.marginK).toBeCloseTo(Math.min(c1.margins.body ?? 999, c1.margins.skin ?? 999, c1.margins.joint!), 9);
    expect(c1.margins.joint).toBeCloseTo(217 - c1.joint.maxC, 9);
    expect(c1.state).toBe('over');
    expect(c1.secondsOver).toBeGreaterThan(5);
    expect(c1.overAtS).toBeGreaterThan(180);
    const warm = run('removal', 'run-1', { segments: [segment('Warm', 120, [25, 200], null)] });
    const mild = evaluated(board, smallPlan(board, { heatRuns: [warm] }));
    expect(mild.parts.map((one) => one.state)).toEqual(board.parts.map(() => 'clear'));
    expect(exposure(mild, 'C2')).toMatchObject({ secondsOver: 0, overAtS: null, reflow: 'none', reflows: 0 });
  });

  it('uses an own limit before that of the class', () => {
    const board = smallBoard();
    board.parts[1] = { ...board.parts[1]!, limits: { bodyC: 150, source: 'data sheet' } };
    const u2 = exposure(evaluated(board, smallPlan(board)), 'U2');
    expect(u2.limits.body).toMatchObject({ celsius: 150, origin: 'own' });
  });

  it('measures the clearance to the rework area', () => {
    const board = smallBoard();
    const evaluation = evaluated(board, smallPlan(board));
    expect(exposure(evaluation, 'U2').clearanceMm).toBeCloseTo(44 - 3.5 - 36.5, 9);
    expect(exposure(evaluation, 'C9').clearanceMm).toBe(0);
    expect(exposure(evaluation, 'E1').clearanceMm).toBeCloseTo(Math.hypot(52 - 36.5, 34 - 28.5) - 3.15, 9);
  });

  it('tells the target when it melts', () => {
    const board = smallBoard();
    const [target] = evaluated(board, smallPlan(board)).runs[0]!.targets;
    expect(target).toMatchObject({ refdes: 'U1', siteId: 'site-1', verdict: 'melts', liquidusC: 220 });
    expect(target!.windowC).toEqual({ from: 225, to: 230 });
    expect(target!.moltenAtS).toBeGreaterThan(180);
    expect(target!.moltenAtS).toBeLessThan(250);
    expect(target!.secondsAnyAbove).toBeGreaterThan(target!.secondsAllAbove);
    expect(target!.coldestJointC).toBeLessThan(target!.hottestJointC);
  });

  it('predicts what a watch point and the site read at the end of each segment', () => {
    const board = smallBoard();
    const watch = {
      id: 'w',
      kind: 'watchPoint',
      order: null,
      note: '',
      name: 'W1',
      side: 'top',
      x: 30,
      y: 31,
      refdes: null,
    } as const;
    const [result] = evaluated(board, smallPlan(board, { tags: [watch] })).runs;
    const [w1] = result!.watch;
    expect(w1!.atSegmentEndC).toHaveLength(4);
    expect(w1!.peakC).toBeGreaterThanOrEqual(Math.max(...w1!.atSegmentEndC));
    expect(result!.segments.map((one) => one.gasOutletC)).toEqual([null, null, 345, null]);
    expect(result!.segments[1]!.preheaterSourceC).toBeGreaterThan(300);
    expect(result!.siteSeries!.celsius).toHaveLength(281);
    expect(result!.siteSeries!.celsius[180]).toBeCloseTo(result!.segments[1]!.siteC, 3);
  });

  it('takes a measured outlet as it is and a setting as nine tenths of the rise', () => {
    const board = smallBoard();
    const plan = smallPlan(board);
    const setting = { ...plan, station: { ...plan.station, gasReads: 'setting' as const } };
    const [result] = evaluated(board, setting).runs;
    expect(result!.segments[2]).toMatchObject({ gasSetC: 345, gasOutletC: 25 + 0.9 * 320 });
    expect(evaluated(board, setting).notices.map((one) => one.code)).toContain('outlet-from-setting');
  });

  it('predicts a shielded part within 3 K of the same run with the shield on', () => {
    const board = smallBoard();
    for (const refdes of ['C1', 'U2', 'E1', 'C9']) {
      const bare = exposure(evaluated(board, smallPlan(board)), refdes);
      const tag = { id: 't', kind: 'shield', order: null, note: '', refdes, shield: DEFAULT_SHIELD } as const;
      const shielded = exposure(evaluated(board, smallPlan(board, { tags: [tag] })), refdes);
      expect(Math.abs(bare.ifShielded.bodyMaxC - shielded.body.maxC), refdes).toBeLessThan(3);
      expect(Math.abs(bare.ifShielded.skinMaxC - shielded.skin.maxC), refdes).toBeLessThan(3);
      expect(shielded.body.maxC).toBeLessThan(bare.body.maxC);
    }
  });

  it('is cancelled within a few steps and reports progress', () => {
    const board = smallBoard();
    const shares: number[] = [];
    const result = evaluate(board, smallPlan(board), {
      phase: 'coarse',
      onProgress: (share) => shares.push(share),
      isCancelled: () => shares.length >= 3,
    });
    expect(result).toEqual({ ok: false, problem: { code: 'cancelled' } });
    expect(shares).toHaveLength(3);
  });

  it('asks before every step whether it is cancelled, and takes none after that', () => {
    const board = smallBoard();
    let steps = 0;
    let asked = 0;
    const all = evaluate(board, smallPlan(board), {
      phase: 'coarse',
      onProgress: () => steps++,
      isCancelled: () => ++asked < 0,
    });
    expect(all.ok).toBe(true);
    // 60 + 120 + 70 + 30 steps of 1 s, two of each segment in halves; and once more for each that progress is told of.
    expect(asked).toBe(288 + steps);
    asked = 0;
    expect(evaluate(board, smallPlan(board), { phase: 'coarse', isCancelled: () => ++asked > 101 }).ok).toBe(false);
    expect(asked, 'asked in the step, and once more on the way out').toBe(103);
    const { simulation } = preparedRun(board);
    let looks = 0;
    simulation.advance(100, () => ++looks > 5);
    expect(simulation.stepsDone).toBe(5);
  });

  it('names what stands in the way', () => {
    const board = smallBoard();
    const noRun = evaluate(board, smallPlan(board, { heatRuns: [] }), { phase: 'coarse' });
    expect(noRun).toMatchObject({ ok: false, problem: { code: 'no-heat-run' } });
    const plan = smallPlan(board, { sites: [], heatRuns: [run('removal', 'run-1', { siteIds: [] })] });
    const noSite = evaluate(board, plan, { phase: 'coarse' });
    expect(noSite).toMatchObject({ ok: false, problem: { where: 'segment Gas of heat run run-1' } });
    const { station } = smallPlan(board);
    const sensor = { ...station, preheater: { ...station.preheater, sensor: { x: 500, y: 5 } } };
    const lost = evaluate(board, smallPlan(board, { station: sensor }), { phase: 'coarse' });
    expect(lost).toMatchObject({ ok: false, problem: { where: 'station, preheater sensor' } });
  });

  it('lets several sites of one preheat have their own stretch of gas', () => {
    const board = smallBoard();
    const second = site(board, 'U2', 'site-2');
    const gas = { ...segment('Gas 2', 60, [330, 330], [345, 345]), siteId: 'site-2' };
    const segments = [...run('removal', 'x').segments.slice(0, 3), gas];
    const plan = smallPlan(board, {
      sites: [site(board, 'U1'), second],
      heatRuns: [run('removal', 'run-1', { siteIds: ['site-1', 'site-2'], segments })],
    });
    const [result] = evaluated(board, plan).runs;
    expect(result!.targets.map((one) => one.refdes)).toEqual(['U1', 'U2']);
    expect(result!.targets[1]!.moltenAtS!).toBeGreaterThan(result!.targets[0]!.moltenAtS!);
  });
});
