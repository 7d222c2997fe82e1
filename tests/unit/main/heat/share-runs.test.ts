import { describe, expect, it } from 'vitest';
import { evaluate, evaluateRuns } from '../../../../main/heat/evaluate.ts';
import { createRunMemory } from '../../../../main/heat/run-memory.ts';
import { placesToShare, type ShareRuns } from '../../../../main/heat/share-runs.ts';
import { bandRuns } from '../../../../main/heat/uncertainty/band-runs.ts';
import { priorBelief } from '../../../../main/heat/uncertainty/priors.ts';
import { fail } from '../../../../shared-types/problem.ts';
import { run, segment, smallBoard, smallPlan } from './support.ts';

const board = smallBoard();
const dressing = [segment('Preheat', 60, [25, 300], null), segment('Dress', 60, [300, 300], null)];
const plan = smallPlan(board, {
  heatRuns: [
    run('removal', 'off'),
    run('site-preparation', 'dress', { segments: dressing }),
    run('installation', 'on'),
  ],
});
const alone = evaluate(board, plan, { phase: 'coarse' });

/** Another thread as far as data go: what comes and what goes back is cloned; it remembers its own runs. */
function elsewhere(asked: number[][]): ShareRuns {
  const memory = createRunMemory();
  return (task) => {
    asked.push(task.places);
    const given = structuredClone(task);
    const { phase, steps, places } = given;
    return () => structuredClone(evaluateRuns(given.board, given.plan, { phase, steps, memory }, places));
  };
}

describe('heat runs given to another thread', () => {
  it('give the same evaluation to the last bit, with and without memory, again and again', () => {
    const asked: number[][] = [];
    const share = elsewhere(asked);
    const memory = createRunMemory();
    for (let round = 0; round < 2; round++) {
      expect(evaluate(board, plan, { phase: 'coarse', share })).toEqual(alone);
      expect(evaluate(board, plan, { phase: 'coarse', share, memory })).toEqual(alone);
    }
    expect(asked).toEqual([[2], [2], [2], [2]]);
  });

  it('are moved by the same terms', () => {
    const steps = { outlet: 12, inPlane: -0.2 };
    const shared = evaluate(board, plan, { phase: 'coarse', steps, share: elsewhere([]) });
    expect(shared).toEqual(evaluate(board, plan, { phase: 'coarse', steps }));
    expect(shared).not.toEqual(alone);
  });

  it('are made here when the other thread went lost', () => {
    expect(evaluate(board, plan, { phase: 'coarse', share: () => () => null })).toEqual(alone);
  });

  it('end the evaluation with their problem', () => {
    const share: ShareRuns = () => () => fail('cancelled');
    expect(evaluate(board, plan, { phase: 'coarse', share })).toMatchObject({ problem: { code: 'cancelled' } });
  });

  it('are not waited for once the evaluation here is cancelled', () => {
    const share: ShareRuns = () => () => {
      throw new Error('waited');
    };
    const cut = evaluate(board, plan, { phase: 'coarse', share, isCancelled: () => true });
    expect(cut).toMatchObject({ problem: { code: 'cancelled' } });
  });
});

it('bands are the same when half of their runs are made elsewhere, and when that goes lost', () => {
  const belief = priorBelief(board, plan);
  const single = bandRuns(board, plan, belief);
  const asked: number[][] = [];
  expect(bandRuns(board, plan, belief, { share: elsewhere(asked) })).toEqual(single);
  expect(
    asked.filter((places) => places.length === 3),
    'one of each pair',
  ).toHaveLength(7);
  expect(bandRuns(board, plan, belief, { share: () => () => null })).toEqual(single);
});

describe('which runs are given away', () => {
  it('one of two that blow; what is remembered before the gas counts little', () => {
    expect(placesToShare(plan)).toEqual([2]);
    const longest = [...dressing, segment('Wait', 9000, [300, 300], null)];
    expect(
      placesToShare({
        ...plan,
        heatRuns: [run('removal', 'off'), run('site-preparation', 'p', { segments: longest })],
      }),
    ).toEqual([0]);
  });

  it('none of a single run', () => {
    expect(placesToShare({ ...plan, heatRuns: [run('removal', 'off')] })).toEqual([]);
  });
});
