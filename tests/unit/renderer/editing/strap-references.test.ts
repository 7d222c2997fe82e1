import { expect, test } from 'vitest';
import { deleteParts, renamePart } from '../../../../renderer/editing/add-parts.ts';
import { strapGroupsNaming } from '../../../../renderer/editing/strap-references.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import type { StrapGroup } from '../../../../shared-types/straps.ts';
import { smallDocument } from './sample-document.ts';

const position = (refdes: string) => ({ refdes, value: '10k', tolerancePercent: 1, meaning: '' });
const bits: StrapGroup = {
  id: 'g1',
  kind: 'bits',
  name: 'Memory size',
  describes: ['U2'],
  positions: [position('R1'), position('C1')],
  bits: [{ name: 'bit 0', pullUp: 'R1', pullDown: 'C1', whenOpen: null }],
  settings: [],
};
const divider: StrapGroup = {
  id: 'g2',
  kind: 'divider',
  name: 'Board revision',
  describes: [],
  positions: [position('R1'), position('C2')],
  top: 'R1',
  bottom: 'C2',
  supplyV: 3.3,
  supplyTolerancePercent: 1,
  ratiometric: true,
  converterErrorMv: 5,
  windows: [{ code: 'A', fromV: 0, toV: 1 }],
  settings: [],
};

function strapped(): TicketDocument {
  const { board, plan } = smallDocument();
  const tick = { refdes: 'R1', fitted: true, value: '', evidence: 'not-checked' as const, marking: '' };
  return {
    board: { ...board, straps: [bits, divider] },
    plan: { ...plan, straps: { ...plan.straps, ticked: [tick] } },
  };
}

test('strap groups and what was ticked follow a renamed part', () => {
  const next = renamePart(renamePart(strapped(), 'R1', 'R77'), 'U2', 'U9');
  expect(JSON.stringify([next.board.straps, next.plan.straps])).not.toMatch(/"(R1|U2)"/);
  expect(next.board.straps[0]).toMatchObject({ describes: ['U9'], bits: [{ pullUp: 'R77', pullDown: 'C1' }] });
  expect(next.board.straps[1]).toMatchObject({ top: 'R77', bottom: 'C2' });
  expect(next.plan.straps.ticked[0].refdes).toBe('R77');
});

test('a part that a strap group names is not deleted', () => {
  const start = strapped();
  expect(strapGroupsNaming(start, ['U1', 'R1'])).toEqual(['Memory size', 'Board revision']);
  expect(deleteParts(start, ['U1', 'R1'])).toBe(start);
  expect(deleteParts(start, ['U1']).board.parts).toHaveLength(4);
});
