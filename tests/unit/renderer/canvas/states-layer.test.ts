import { describe, expect, it } from 'vitest';
import { drawnStates, stateLayer } from '../../../../renderer/canvas/layers/states.ts';
import type { ActionKind, PartExposure } from '../../../../shared-types/evaluation.ts';
import { assessmentOf, boardWith, modelOf, part, sceneOf } from './sample.ts';

function marksFor(exposure: Partial<PartExposure>, action: ActionKind = 'leave') {
  const chip = part('C1', 50, 30, 4, 2);
  const actions = [{ refdes: 'C1', action, reason: '', figures: {}, done: false }];
  const assessment = assessmentOf(() => 100, [{ refdes: 'C1', side: 'top', ...exposure }], { actions });
  return stateLayer.marks(sceneOf(modelOf(boardWith([chip]), {}, { assessment })));
}
const signs = (marks: ReturnType<typeof marksFor>) =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

describe('part states', () => {
  it('leave a clear part alone', () => {
    expect(marksFor({ state: 'clear' })).toEqual([]);
  });

  it('dash an unsure part and ask', () => {
    const marks = marksFor({ state: 'unsure' });
    expect(marks.filter((mark) => mark.kind === 'line').length).toBeGreaterThan(8);
    expect(signs(marks)).toEqual(['?']);
  });

  it('double the outline of a part that is over, with a sign', () => {
    const marks = marksFor({ state: 'over' });
    expect(marks.filter((mark) => mark.kind === 'polygon')).toHaveLength(2);
    expect(signs(marks)).toEqual(['!']);
  });

  it('wave round a part that will reflow, without a warning when that is meant', () => {
    const marks = marksFor({ state: 'over', reflow: 'whole' }, 'leave-will-reflow');
    const [wave] = marks;
    expect(wave.kind === 'polygon' && wave.points.length).toBeGreaterThan(80);
    expect(signs(marks)).toEqual([]);
  });

  it('leave the target to its tag', () => {
    expect(marksFor({ state: 'over', reflow: 'whole' }, 'target')).toEqual([]);
  });

  it('tell a part that is over although it may reflow nowhere', () => {
    const states = drawnStates(assessmentOf(() => 1, [{ refdes: 'J1', state: 'over', reflow: 'partly' }]));
    expect(states.get('J1')).toBe('over');
  });

  it('show a part that cannot be saved as over, whatever doubt the band leaves', () => {
    const assessment = assessmentOf(() => 1, [{ refdes: 'U2', state: 'unsure', reflow: 'whole' }]);
    const actions = [{ refdes: 'U2', action: 'cannot-be-saved' as const, reason: '', figures: {}, done: false }];
    expect(drawnStates({ ...assessment, actions }).get('U2')).toBe('over');
  });

  it('show only the parts of the side that is seen', () => {
    const under = part('C1', 50, 30, 4, 2, { side: 'bottom' });
    const assessment = assessmentOf(() => 100, [{ refdes: 'C1', side: 'bottom', state: 'over' }]);
    const seen = (shownSide: 'top' | 'bottom') =>
      stateLayer.marks(sceneOf(modelOf(boardWith([under]), {}, { assessment, shownSide }))).length;
    expect(seen('top')).toBe(0);
    expect(seen('bottom')).toBe(3);
  });
});
