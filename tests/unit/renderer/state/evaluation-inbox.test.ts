import { expect, test } from 'vitest';
import { noEvaluation } from '../../../../renderer/state/app-state.ts';
import { isStale, matters, receive } from '../../../../renderer/state/evaluation-inbox.ts';
import type { MainEvent } from '../../../../shared-types/contract.ts';
import type { Assessment } from '../../../../shared-types/evaluation.ts';

function result(revision: number, phase: 'coarse' | 'fine'): Extract<MainEvent, { name: 'evaluation.result' }> {
  const fields = { top: new Float32Array(), bottom: new Float32Array() };
  const grid = { columns: 0, rows: 0, cellMm: 1, originX: 0, originY: 0, grownFromMm: null };
  const assessment: Assessment = {
    evaluation: {
      revision,
      phase,
      grid,
      fields,
      runs: [],
      parts: [],
      notEvaluated: [],
      notices: [],
      bands: 'not-computed',
    },
    actions: [],
    findings: [],
    runNumbers: [],
    cautions: [],
  };
  return { name: 'evaluation.result', id: 't', revision, phase, assessment };
}

const after = (...events: MainEvent[]) => events.reduce(receive, { ...noEvaluation, wantedRevision: 3 });

test('a result of an older revision is dropped, and so is a lower phase of the same', () => {
  expect(after(result(3, 'coarse'), result(2, 'fine')).assessment?.evaluation.revision).toBe(3);
  expect(after(result(3, 'fine'), result(3, 'coarse')).assessment?.evaluation.phase).toBe('fine');
  expect(after(result(3, 'fine'), result(4, 'coarse')).assessment?.evaluation.revision).toBe(4);
});

test('a result that is older than the document but newer than the shown one is taken, and counts as stale', () => {
  const state = after(result(1, 'fine'), result(2, 'coarse'));
  expect(state.assessment?.evaluation.revision).toBe(2);
  expect(isStale(state)).toBe(true);
  expect(isStale(after(result(3, 'coarse')))).toBe(false);
});

test('progress ends with the fine result of the wanted revision', () => {
  const progress: MainEvent = { name: 'evaluation.progress', id: 't', revision: 3, phase: 'fine', share: 0.4 };
  expect(after(progress).running).toEqual({ phase: 'fine', share: 0.4 });
  expect(after(progress, result(3, 'coarse')).running).not.toBeNull();
  expect(after(progress, result(3, 'fine')).running).toBeNull();
});

test('a failure is told, a cancelled run is none', () => {
  const failed = (code: 'evaluation-failed' | 'cancelled'): MainEvent => ({
    name: 'evaluation.failed',
    id: 't',
    revision: 3,
    problem: { code },
  });
  expect(after(failed('evaluation-failed')).problem?.code).toBe('evaluation-failed');
  expect(after(failed('cancelled')).problem).toBeNull();
});

test('notes, names and ticket data leave the figures alone; tags, stations and bodies do not', () => {
  const patch = (...path: (string | number)[]) => matters({ op: 'replace', path });
  expect(patch('plan', 'ticket', 'notes')).toBe(false);
  expect(patch('plan', 'tags', 2, 'note')).toBe(false);
  expect(patch('plan', 'tags', 2, 'order')).toBe(false);
  expect(patch('plan', 'clampedTurnDeg')).toBe(false);
  expect(patch('plan', 'heatRuns', 0, 'segments', 1, 'name')).toBe(false);
  expect(patch('plan', 'tags', 2)).toBe(true);
  expect(patch('plan', 'station', 'nozzle', 'standOffMm')).toBe(true);
  expect(patch('board', 'parts', 3, 'package', 'heightMm')).toBe(true);
});
