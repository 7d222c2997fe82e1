import { expect, test } from 'vitest';
import { nameOf, titleOf } from '../../../../renderer/stages/start/card-name.ts';
import type { TicketCard } from '../../../../shared-types/contract.ts';

const card = (fileName: string, number: string, problem: TicketCard['problem'] = null): TicketCard => ({
  ...{ id: fileName, fileName, number, problem, boardName: 'B', target: '', invented: false, sample: false },
  ...{ changedAt: '2026-01-01T00:00:00Z', counts: { parts: 0, sites: 0, tags: 0, heatRuns: 0 } },
  drawing: { outline: [], top: [], sites: [] },
});

test('a card bears the number of its ticket, and the name of its file where another bears the same', () => {
  const present = card('T-1.hmticket', 'T-1');
  const earlier = card('T-1 (earlier 2026-01-01).hmticket', 'T-1');
  const other = card('T-2.hmticket', 'T-2');
  expect(titleOf(present, [present, other])).toBe('T-1');
  expect([present, earlier].map((one) => titleOf(one, [present, earlier, other]))).toEqual([
    'T-1',
    'T-1 (earlier 2026-01-01)',
  ]);
});

test('a damaged ticket, whose number nobody knows, is called by its file', () => {
  const damaged = card('T-3.hmticket', '', { code: 'damaged-ticket' });
  expect(nameOf(damaged)).toBe('T-3.hmticket');
  expect(titleOf(damaged, [damaged, card('x.hmticket', '', { code: 'damaged-ticket' })])).toBe('T-3.hmticket');
});
