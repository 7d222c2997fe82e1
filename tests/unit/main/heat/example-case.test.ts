import { describe, expect, it } from 'vitest';
import { runExampleCase } from '../../../../main/heat/example-case.ts';
import { problemSentence } from '../../../../shared-types/words/problems.ts';

const GRID = { cellMm: 2, stepS: 1 };
const example = () => ({
  room: 25,
  board: { W: 0.03, H: 0.02, t: 0.0016, rhoc: 2.28e6, kpar: 16, kthru: 0.6 },
  parts: [
    { ref: 'U1', side: 'top', x: 0.015, y: 0.01, l: 0.008, w: 0.008, height: 0.001, g: 20000, rhoc: 2e6, k: 0.9 },
  ],
  site: { x: 0.015, y: 0.01 },
  nozzle: { shape: 'round', D: 0.008, H: 0.012 },
  preheater: { x: 0.015, y: 0.01, l: 0.03, w: 0.02, h: 25, lag: 20 },
  profile: [
    { s: 20, pre: [200, 200] },
    { s: 10, pre: [200, 200], gas: [300, 300], flow: 30 },
  ],
});

/** Runs the example with some keys changed and returns its problem as the user reads it. */
function complaint(change: (given: ReturnType<typeof example>) => unknown): string {
  const result = runExampleCase(change(example()), GRID);
  return result.ok ? '' : problemSentence({ ...result.problem, file: 'case.json' });
}

describe('a case', () => {
  it('runs with what may be left out left out', () => {
    const result = runExampleCase(example(), GRID);
    expect(result).toMatchObject({ ok: true, value: { notEvaluated: [] } });
    const bare = { ...example(), nozzle: undefined, profile: [{ s: 10, pre: [200, 200] }] };
    expect(runExampleCase(bare, GRID)).toMatchObject({ ok: true, value: { nozzle: null } });
  });

  it('gives the same figures whatever is written under expected', () => {
    const wrong = { ...example(), expected: { nozzle: { Re: 1 }, parts: { U1: { peakBodyMax: 1 } } } };
    expect(runExampleCase(wrong, GRID)).toEqual(runExampleCase(example(), GRID));
  });

  it('tells where the case is wrong and what to do', () => {
    expect(complaint((given) => ({ ...given, board: { ...given.board, t: -1 } }))).toContain('board.t');
    expect(complaint((given) => ({ ...given, parts: [{ ...given.parts[0], side: 'left' }] }))).toContain(
      'parts[0].side',
    );
    expect(complaint((given) => ({ ...given, parts: [...given.parts, ...given.parts] }))).toContain('U1 is used twice');
    expect(complaint((given) => ({ ...given, shields: [{ ref: 'U7', R: 1 }] }))).toContain('no part is called U7');
    expect(complaint((given) => ({ ...given, nozzle: undefined }))).toContain('profile[1].gas');
    expect(complaint((given) => ({ ...given, site: undefined }))).toContain('profile[1].at');
    expect(complaint((given) => ({ ...given, profile: [{ s: 5, gas: [300, 300] }] }))).toContain('profile[0].flow');
    const sensor = complaint((given) => ({ ...given, preheater: { ...given.preheater, sensor: [1, 1], max: 300 } }));
    expect(sensor).toContain('preheater.sensor');
    expect(complaint(() => 'no object')).toContain('the whole case');
    expect(complaint(() => null)).toContain('case.json');
  });

  it('reports a part beside the board and runs the others', () => {
    const given = example();
    const beside = { ...given, parts: [...given.parts, { ...given.parts[0]!, ref: 'X1', x: 0.5 }] };
    const result = runExampleCase(beside, GRID);
    expect(result).toMatchObject({ ok: true, value: { notEvaluated: ['X1'] } });
    expect(result.ok && Object.keys(result.value.parts)).toEqual(['U1']);
  });

  it('takes a shield as series resistance and mass on the part alone', () => {
    const bare = runExampleCase(example(), GRID);
    const shielded = runExampleCase({ ...example(), shields: [{ ref: 'U1', R: 0.05, mc: 300 }] }, GRID);
    if (!bare.ok || !shielded.ok) throw new Error('did not run');
    expect(shielded.value.parts.U1!.peakBodyMax).toBeLessThan(bare.value.parts.U1!.peakBodyMax - 3);
  });

  it('a board sensor holds the lower face near its set temperature and the source below its limit', () => {
    const base = example();
    const hot = {
      ...base,
      preheater: { ...base.preheater, sensor: [0.015, 0.01], max: 400 },
      profile: [{ s: 400, pre: [120, 120] }],
    };
    const result = runExampleCase({ ...hot, parts: [{ ...base.parts[0]!, side: 'bottom' }] }, GRID);
    if (!result.ok) throw new Error('did not run');
    expect(Math.abs(result.value.parts.U1!.peakJointMax - 120)).toBeLessThan(25);
    const limited = runExampleCase({ ...hot, preheater: { ...hot.preheater, max: 100 } }, GRID);
    expect(limited.ok && limited.value.parts.U1!.peakJointMax).toBeLessThan(100);
  });
});
