import { expect, test } from 'vitest';
import { emptyHistory, record, undo } from '../../../../renderer/editing/history.ts';
import { addSiteOn, removeSite } from '../../../../renderer/editing/sites.ts';
import {
  doMove,
  exchangeOf,
  moveTagged,
  nextGroupId,
  putStock,
  putStrapGroup,
  removeStrapGroup,
  setExchange,
  setExchanged,
  setStockFirst,
  tagMoves,
  tickPosition,
  wantSetting,
} from '../../../../renderer/editing/straps.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { planStraps } from '../../../../shared-types/rules/straps/plan-straps.ts';
import { readGroup } from '../../../../shared-types/rules/straps/read.ts';
import { jumpers, position, reel, strapPart, strapTicket } from '../../../support/straps.ts';

const group = jumpers('strap-1', [position('R1'), position('R2'), position('R3', '4k7'), position('R4')], {
  old: '1001',
  new: '0110',
});
const parts = [
  strapPart('R1', '10k'),
  strapPart('R2', '10k -', { x: 12 }),
  strapPart('R3', '4k7 -', { x: 14 }),
  strapPart('R4', '10k', { x: 16 }),
];
const ticket = (): TicketDocument => strapTicket(parts, [group], { 'strap-1': 'new' }, [reel('4k7')]);
const planOf = (document: TicketDocument) => planStraps(document.board, document.plan);

test('moves become tags, once, and one undo takes them all back', () => {
  const before = ticket();
  const { moves } = planOf(before);
  const tagged = tagMoves(before, moves);
  expect(tagged.plan.tags.map((tag) => [tag.kind, tag.refdes])).toEqual([
    ['remove', 'R4'],
    ['relocate', 'R1'],
  ]);
  expect(tagged.plan.tags[0]).toMatchObject({ goesBack: false, traySlot: 'A1' });
  expect(tagged.plan.tags[1]).toMatchObject({ toRefdes: 'R2' });
  expect(moves.every((move) => moveTagged(tagged, move))).toBe(true);
  expect(tagMoves(tagged, moves)).toBe(tagged);
  const history = record(emptyHistory, 'tags', before, tagged);
  expect(undo(history, tagged)?.document).toEqual(before);
});

test('what was done is ticked: the code is read again and the moves run out', () => {
  let document = ticket();
  const codes = [];
  for (let step = 0; step < 5; step++) {
    codes.push(readGroup(document.board, document.plan.straps.ticked, group).code);
    const [move] = planOf(document).moves;
    if (!move) break;
    document = doMove(document, move);
  }
  expect(codes).toEqual(['1001', '1000', '0100', '0110']);
  expect(planOf(document)).toMatchObject({ moves: [], settled: ['strap-1'] });
  const back = tickPosition(document, 'R2', null);
  expect(readGroup(back.board, back.plan.straps.ticked, group).code).toBe('0010');
});

test('a group that is edited keeps the wish while its setting is there; deleted, the wish goes', () => {
  const document = ticket();
  expect(putStrapGroup(document, { ...group, name: 'other' }).plan.straps.wanted).toHaveLength(1);
  expect(putStrapGroup(document, { ...group, settings: [group.settings[0]] }).plan.straps.wanted).toEqual([]);
  const gone = removeStrapGroup(document, 'strap-1');
  expect([gone.board.straps, gone.plan.straps.wanted]).toEqual([[], []]);
  expect(nextGroupId(document)).toBe('strap-2');
  expect(wantSetting(document, 'strap-1', null).plan.straps.wanted).toEqual([]);
  expect(wantSetting(document, 'strap-1', 'setting-1').plan.straps.wanted).toEqual([
    { groupId: 'strap-1', settingId: 'setting-1' },
  ]);
});

test('stock is added to, changed and taken from', () => {
  const more = putStock(ticket(), 9, reel('10k'));
  expect(more.plan.straps.stock.map((entry) => entry.value)).toEqual(['4k7', '10k']);
  expect(putStock(more, 0, null).plan.straps.stock.map((entry) => entry.value)).toEqual(['10k']);
  expect(planOf(setStockFirst(more, true)).relocated).toBe(0);
});

test('parts in and out hang on their site and go with it', () => {
  const document = addSiteOn(ticket(), 'R1');
  const siteId = document.plan.sites[0].id;
  const told = setExchanged(setExchange(document, siteId, { agrees: 'agrees' }), siteId, 'on', { heightMm: 1.2 });
  expect(exchangeOf(told, siteId)).toMatchObject({ agrees: 'agrees', on: { heightMm: 1.2 }, off: { heightMm: null } });
  expect(removeSite(told, siteId).plan.exchanges).toEqual([]);
});
