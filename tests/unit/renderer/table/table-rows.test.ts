import { expect, test } from 'vitest';
import { setTag } from '../../../../renderer/editing/tags.ts';
import { partRowsOf } from '../../../../renderer/state/part-rows.ts';
import { shownState } from '../../../../renderer/table/shown-state.ts';
import { byDesignator, shownRows, startingTable } from '../../../../renderer/table/table-rows.ts';
import { moved } from '../../../../renderer/table/use-table-keys.ts';
import type { ActionKind, Assessment, PartExposure, PartState } from '../../../../shared-types/evaluation.ts';
import { part, smallDocument } from '../editing/sample-document.ts';

const peak = (celsius: number) => ({ maxC: celsius, minC: celsius, meanC: celsius });

function exposure(refdes: string, marginK: number, reflow: PartExposure['reflow'] = 'none'): PartExposure {
  const state: PartState = marginK < 0 ? 'over' : 'clear';
  const source = { text: 'test', how: 'assumption', confidence: 'L' } as const;
  return {
    refdes,
    side: 'top',
    worstRunId: 'run-1',
    body: peak(200),
    skin: peak(201),
    joint: peak(202),
    clearanceMm: 3,
    peakAtS: 1,
    secondsOver: 0,
    riseKPerS: 1,
    acrossK: 1,
    shares: { gas: 0.2, preheater: 0.5, joints: 0.3, losses: 0 },
    ifShielded: { bodyMaxC: 190, skinMaxC: 190, jointMaxC: 190 },
    limits: { body: null, skin: null, joint: { celsius: 217, origin: 'alloy', source } },
    margins: { body: null, skin: null, joint: marginK },
    marginK,
    governedBy: 'joint',
    bandK: null,
    state,
    reflow,
    reflows: reflow === 'none' ? 0 : 1,
    warmCycles: 0,
    solidusC: 217,
  };
}

function assessment(list: [string, number, ActionKind][]): Assessment {
  return {
    evaluation: {
      parts: list.map(([refdes, margin, action]) =>
        exposure(refdes, margin, action === 'leave-will-reflow' ? 'whole' : 'none'),
      ),
      notEvaluated: [{ refdes: 'R1', reason: 'not-fitted' }],
    },
    actions: list.map(([refdes, , action]) => ({ refdes, action, reason: 'r', figures: {}, done: false })),
  } as unknown as Assessment;
}

const document = {
  ...smallDocument(),
  board: { ...smallDocument().board, parts: [...smallDocument().board.parts, part('C10', 1, 1), part('C9', 2, 2)] },
};
const figures = assessment([
  ['U1', 20, 'target'],
  ['C1', -4, 'leave-will-reflow'],
  ['C2', -9, 'remove-first'],
  ['U2', -30, 'cannot-be-saved'],
  ['C10', 40, 'leave'],
  ['C9', -2, 'shield'],
]);
const names = (rows: ReturnType<typeof shownRows>) => rows.map((row) => row.part.refdes);

test('exceptions come first, the gravest on top; parts left in peace are no rows', () => {
  const rows = partRowsOf(document, figures);
  expect(names(shownRows(rows, startingTable))).toEqual(['U2', 'C2', 'C9', 'U1']);
  expect(names(shownRows(rows, { ...startingTable, filter: 'all' }))).toEqual([
    'U2',
    'C2',
    'C9',
    'U1',
    'C1',
    'C10',
    'R1',
  ]);
});

test('a tagged part is always shown', () => {
  const rows = partRowsOf(setTag(document, ['C10'], 'shield'), figures);
  expect(names(shownRows(rows, startingTable))).toContain('C10');
});

test('chips and text narrow the rows', () => {
  const rows = partRowsOf(document, figures);
  const by = (filter: (typeof startingTable)['filter']) => names(shownRows(rows, { ...startingTable, filter }));
  expect(by('reflow')).toEqual(['C1']);
  expect(by('remove')).toEqual(['C2']);
  expect(by('shield')).toEqual(['C9']);
  expect(by('over')).toEqual(['U2', 'C2', 'C9', 'C1']);
  expect(names(shownRows(rows, { ...startingTable, filter: 'all', text: 'c1' }))).toEqual(['C1', 'C10']);
});

test('figures sort as numbers, empty ones last either way', () => {
  const rows = partRowsOf(document, figures);
  const sorted = (down: boolean) =>
    names(shownRows(rows, { filter: 'all', text: '', sorting: { column: 'margin', down } }));
  expect(sorted(false)).toEqual(['U2', 'C2', 'C1', 'C9', 'U1', 'C10', 'R1']);
  expect(sorted(true)).toEqual(['C10', 'U1', 'C9', 'C1', 'C2', 'U2', 'R1']);
});

test('designators count as people count', () => {
  expect(['C10', 'C9', 'C1'].toSorted(byDesignator)).toEqual(['C1', 'C9', 'C10']);
});

test('a part that may reflow where it lies is no warning, one that must come off is', () => {
  const rows = partRowsOf(document, figures);
  const stateOf = (refdes: string) => shownState(rows.find((row) => row.part.refdes === refdes) ?? rows[0]);
  expect(stateOf('C1')).toBe('reflow');
  expect(stateOf('C2')).toBe('over');
  expect(stateOf('C10')).toBe('clear');
  expect(stateOf('R1')).toBeNull();
});

test('arrow keys stop at the ends', () => {
  expect(moved('ArrowDown', -1, 3)).toBe(0);
  expect(moved('ArrowDown', 2, 3)).toBe(2);
  expect(moved('ArrowUp', 0, 3)).toBe(0);
  expect(moved('End', 0, 3)).toBe(2);
  expect(moved('ArrowDown', 0, 0)).toBeNull();
  expect(moved('x', 0, 3)).toBeNull();
});
