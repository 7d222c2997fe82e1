import { produce } from 'immer';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { StrapMove } from '../../shared-types/rules/straps/plan-straps.ts';
import { nextTraySlot } from '../../shared-types/rules/suggestions.ts';
import type { ExchangedPart, SiteExchange, StrapGroup, StrapStock, StrapTick } from '../../shared-types/straps.ts';
import { unknownPart } from '../../shared-types/straps.ts';
import { nextId } from './ids.ts';
import { insertInOrder } from './order.ts';
import { removeTagsById, tagsOf } from './tags.ts';

/** Puts a group in the place of the one with its id, or adds it. A wish for a setting that is gone goes with it. */
export function putStrapGroup(document: TicketDocument, group: StrapGroup): TicketDocument {
  return produce(document, (draft) => {
    const { straps } = draft.board;
    const at = straps.findIndex((one) => one.id === group.id);
    if (at < 0) straps.push(group);
    else straps[at] = group;
    const known = new Set(group.settings.map((setting) => setting.id));
    draft.plan.straps.wanted = draft.plan.straps.wanted.filter(
      (wish) => wish.groupId !== group.id || known.has(wish.settingId),
    );
  });
}

export function removeStrapGroup(document: TicketDocument, groupId: string): TicketDocument {
  return produce(document, (draft) => {
    draft.board.straps = draft.board.straps.filter((group) => group.id !== groupId);
    draft.plan.straps.wanted = draft.plan.straps.wanted.filter((wish) => wish.groupId !== groupId);
  });
}

export const nextGroupId = (document: TicketDocument): string => nextId('strap', document.board.straps);

/** Chooses the setting that a group must say; null: none. */
export function wantSetting(document: TicketDocument, groupId: string, settingId: string | null): TicketDocument {
  return produce(document, (draft) => {
    const others = draft.plan.straps.wanted.filter((wish) => wish.groupId !== groupId);
    draft.plan.straps.wanted = settingId === null ? others : [...others, { groupId, settingId }];
  });
}

export function setStockFirst(document: TicketDocument, stockFirst: boolean): TicketDocument {
  return produce(document, (draft) => {
    draft.plan.straps.stockFirst = stockFirst;
  });
}

/** Changes an entry of the stock; an index behind the last adds one; null takes it out. */
export function putStock(document: TicketDocument, index: number, entry: StrapStock | null): TicketDocument {
  return produce(document, (draft) => {
    if (entry) draft.plan.straps.stock[Math.min(index, draft.plan.straps.stock.length)] = entry;
    else draft.plan.straps.stock.splice(index, 1);
  });
}

/** What the technician found or left in a position; null: the board drawing holds again. */
export function tickPosition(document: TicketDocument, refdes: string, tick: StrapTick | null): TicketDocument {
  return produce(document, (draft) => {
    const { ticked } = draft.plan.straps;
    const at = ticked.findIndex((one) => one.refdes === refdes);
    if (tick && at >= 0) ticked[at] = tick;
    else if (tick) ticked.push(tick);
    else if (at >= 0) ticked.splice(at, 1);
  });
}

/**
 * A move as done: its goal is fitted with the part, where it came from is empty. `move.value`: what stands there now.
 */
export function doMove(document: TicketDocument, move: StrapMove): TicketDocument {
  const tick = (refdes: string, fitted: boolean): StrapTick => ({
    refdes,
    fitted,
    value: fitted ? move.value : '',
    evidence: move.kind === 'add' ? 'from-reel' : 'not-checked',
    marking: '',
  });
  const left = move.from === null ? document : tickPosition(document, move.from, tick(move.from, false));
  return move.to === null ? left : tickPosition(left, move.to, tick(move.to, true));
}

/** True when the plan carries the tag of a move already; an added part has none: it stands in the list of moves. */
export function moveTagged(document: TicketDocument, move: StrapMove): boolean {
  const tags = move.from === null ? [] : tagsOf(document, move.from);
  if (move.kind === 'relocate') return tags.some((tag) => tag.kind === 'relocate' && tag.toRefdes === move.to);
  return move.kind === 'add' || tags.some((tag) => tag.kind === 'remove' && !tag.goesBack);
}

/** Sets the tags of all moves: relocate with its goal, remove for what stays off. Tags that say otherwise go. */
export function tagMoves(document: TicketDocument, moves: readonly StrapMove[]): TicketDocument {
  return moves.filter((move) => !moveTagged(document, move)).reduce(tagMove, document);
}

function tagMove(document: TicketDocument, move: StrapMove): TicketDocument {
  const refdes = move.from;
  if (refdes === null || move.kind === 'add') return document;
  const old = tagsOf(document, refdes).filter((tag) => ['remove', 'relocate', 'shield'].includes(tag.kind));
  const cleared = removeTagsById(
    document,
    old.map((tag) => tag.id),
  );
  return produce(cleared, (draft) => {
    const { tags } = draft.plan;
    const common = { id: nextId('tag', tags), order: null, note: '', refdes };
    const slot = nextTraySlot(cleared.plan);
    insertInOrder(
      tags,
      move.kind === 'relocate' && move.to !== null
        ? { ...common, kind: 'relocate', toRefdes: move.to }
        : { ...common, kind: 'remove', goesBack: false, traySlot: slot },
    );
  });
}

const startingExchange = (siteId: string): SiteExchange => ({
  siteId,
  off: unknownPart(),
  on: unknownPart(),
  agrees: 'not-checked',
  agreesNote: '',
});
export const exchangeOf = (document: TicketDocument, siteId: string): SiteExchange =>
  document.plan.exchanges.find((one) => one.siteId === siteId) ?? startingExchange(siteId);

/** Changes what goes out or in at a site. */
export function setExchange(
  document: TicketDocument,
  siteId: string,
  fields: Partial<Omit<SiteExchange, 'siteId'>>,
): TicketDocument {
  return produce(document, (draft) => {
    const at = draft.plan.exchanges.findIndex((one) => one.siteId === siteId);
    const next = { ...exchangeOf(document, siteId), ...fields };
    if (at < 0) draft.plan.exchanges.push(next);
    else draft.plan.exchanges[at] = next;
  });
}

export const setExchanged = (
  document: TicketDocument,
  siteId: string,
  which: 'off' | 'on',
  fields: Partial<ExchangedPart>,
): TicketDocument => setExchange(document, siteId, { [which]: { ...exchangeOf(document, siteId)[which], ...fields } });
