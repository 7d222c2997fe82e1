import { expect, test } from 'vitest';
import { addSiteOn } from '../../../../renderer/editing/sites.ts';
import { common } from '../../../../renderer/inspector/common.ts';
import { type BarFigures, barScale } from '../../../../renderer/inspector/exposure-words.ts';
import { profileLines } from '../../../../renderer/stages/heat/profile-lines.ts';
import { freeNumber, nextNumber } from '../../../../renderer/stages/start/free-number.ts';
import { startingPlan } from '../../../../renderer/stages/start/starting-plan.ts';
import { openOfWorkMap } from '../../../../renderer/stages/work-map/open-of-work-map.ts';
import { startingState } from '../../../../renderer/state/app-state.ts';
import type { TicketCard } from '../../../../shared-types/contract.ts';
import { emptyPlan } from '../../../../shared-types/rules/new-plan.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { smallDocument } from '../editing/sample-document.ts';

const card = (number: string) => ({ number }) as TicketCard;

test('a ticket number is proposed that the shelf does not hold', () => {
  expect(nextNumber([])).toBe('T-1');
  expect(nextNumber([card('GG-0412'), card('GG-0409')])).toBe('GG-0413');
  expect(freeNumber([card('GG-0412')], 'gg-0412')).toBe('gg-0412-2');
  expect(freeNumber([card('A'), card('A-2')], 'A')).toBe('A-3');
});

test('a new plan carries the technician and the date', () => {
  const plan = startingPlan(emptyPlan('T-1'), { ...defaultSettings, technician: 'M. Vogt' }, new Date(2026, 2, 7));
  expect(plan.ticket).toMatchObject({ number: 'T-1', technician: 'M. Vogt', date: '2026-03-07' });
});

test('a profile is drawn from its segments: gas in pieces, ends in seconds', () => {
  const run = addSiteOn(smallDocument(), 'U1').plan.heatRuns[0];
  const lines = profileLines(run, undefined, 23);
  expect(lines.seconds).toBe(run.segments.reduce((sum, segment) => sum + segment.seconds, 0));
  expect(lines.ends).toHaveLength(run.segments.length);
  expect(lines.gas).toHaveLength(1);
  const hottest = Math.max(...run.segments.flatMap(({ gas, preheater }) => [gas?.endC ?? 0, preheater.endC]));
  expect(lines.highestC).toBe(hottest);
  expect(lines.site).toEqual([]);
});

test('the sheet says what is open: no site first, then the figures', () => {
  const ticket = (document: ReturnType<typeof smallDocument>) => ({
    ...startingState(),
    ticket: { id: 't', fileName: 't', document, revision: 0, save: { state: 'filed' as const, at: null } },
  });
  expect(openOfWorkMap(ticket(smallDocument()))).toEqual(['No rework site is marked.']);
  expect(openOfWorkMap(ticket(addSiteOn(smallDocument(), 'U1')))).toEqual([
    'No technician is named.',
    'The heat is not worked out for the present plan.',
  ]);
});

test('one scale holds every peak and limit of a part', () => {
  const bars: BarFigures[] = [
    { judged: 'body', peakC: 240, limitC: 260, shieldedC: 200 },
    { judged: 'joint', peakC: 270, limitC: 217, shieldedC: 230 },
  ];
  expect(barScale(bars).toC).toBeGreaterThan(270);
});

test('what several have in common, or null', () => {
  expect(common([{ a: 1 }, { a: 1 }], (one) => one.a)).toBe(1);
  expect(common([{ a: 1 }, { a: 2 }], (one) => one.a)).toBeNull();
  expect(common([{ a: null }, { a: null }], (one) => one.a)).toBeNull();
});
