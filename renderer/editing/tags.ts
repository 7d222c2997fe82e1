import { produce } from 'immer';
import { DEFAULT_SHIELD } from '../../shared-types/library/shields.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { nextTraySlot } from '../../shared-types/rules/suggestions.ts';
import type { Tag, TagKind, TagOf } from '../../shared-types/tags.ts';
import { nextId } from './ids.ts';
import { insertInOrder, renumber, tagsInOrder } from './order.ts';
import { addSiteOn, removeSite } from './sites.ts';

/** Tags of parts; a watch point is a place and has commands of its own. */
export type PartTagKind = Exclude<TagKind, 'watchPoint'>;

/** Only one of these at a time on a part; programming a part goes with any of them. */
const EXCLUSIVE: ReadonlySet<TagKind> = new Set(['remove', 'relocate', 'shield', 'replace']);

/** Tags that belong to a part, watch points on it left out. */
export function tagsOf(document: TicketDocument, refdes: string): Tag[] {
  return document.plan.tags.filter((tag) => tag.kind !== 'watchPoint' && tag.refdes === refdes);
}

export function hasTag(document: TicketDocument, refdes: string, kind: PartTagKind): boolean {
  return document.plan.tags.some((tag) => tag.kind === kind && tag.refdes === refdes);
}

/**
 * Tags each part with the kind; a part that has it keeps its tag as it is. Replace marks a site on the part.
 * Unknown designators are passed over. `shield`: id of the shield for new shield tags.
 */
export function setTag(
  document: TicketDocument,
  refdes: readonly string[],
  kind: PartTagKind,
  shield: string = DEFAULT_SHIELD,
): TicketDocument {
  const known = new Set(document.board.parts.map((part) => part.refdes));
  return refdes
    .filter((one) => known.has(one) && !hasTag(document, one, kind))
    .reduce((next, one) => tagOne(next, one, kind, shield), document);
}

function tagOne(document: TicketDocument, refdes: string, kind: PartTagKind, shield: string): TicketDocument {
  if (kind === 'replace') return addSiteOn(document, refdes);
  const clashing = EXCLUSIVE.has(kind) ? tagsOf(document, refdes).filter((tag) => EXCLUSIVE.has(tag.kind)) : [];
  const cleared = removeTagsById(
    document,
    clashing.map((tag) => tag.id),
  );
  return produce(cleared, (draft) => {
    const { tags } = draft.plan;
    insertInOrder(tags, newTag(nextId('tag', tags), refdes, kind, shield, nextTraySlot(cleared.plan)));
  });
}

function newTag(
  id: string,
  refdes: string,
  kind: Exclude<PartTagKind, 'replace'>,
  shield: string,
  traySlot: string,
): Tag {
  const common = { id, refdes, order: null, note: '' };
  if (kind === 'remove') return { ...common, kind, goesBack: true, traySlot };
  if (kind === 'relocate') return { ...common, kind, toRefdes: '' };
  if (kind === 'shield') return { ...common, kind, shield };
  return { ...common, kind, way: 'in-circuit' };
}

/** Takes the kind off when every part has it, else sets it on all: what a tag key does to a selection. */
export function toggleTag(document: TicketDocument, refdes: readonly string[], kind: PartTagKind): TicketDocument {
  const all = refdes.length > 0 && refdes.every((one) => hasTag(document, one, kind));
  return all ? removeTagKind(document, refdes, kind) : setTag(document, refdes, kind);
}

/** Takes tags of one kind off the parts; a replace tag takes its site along. */
export function removeTagKind(document: TicketDocument, refdes: readonly string[], kind: PartTagKind): TicketDocument {
  const wanted = new Set(refdes);
  const ids = document.plan.tags.filter((tag) => tag.kind === kind && wanted.has(tag.refdes ?? ''));
  return removeTagsById(
    document,
    ids.map((tag) => tag.id),
  );
}

/** Takes every tag off the parts. */
export function clearTags(document: TicketDocument, refdes: readonly string[]): TicketDocument {
  return removeTagsById(
    document,
    refdes.flatMap((one) => tagsOf(document, one).map((tag) => tag.id)),
  );
}

/** Removes tags; a replace tag takes its site and that site's stretches of the heat runs along. */
export function removeTagsById(document: TicketDocument, ids: readonly string[]): TicketDocument {
  if (ids.length === 0) return document;
  const gone = new Set(ids);
  const sites = document.plan.tags.flatMap((tag) => (tag.kind === 'replace' && gone.has(tag.id) ? [tag.siteId] : []));
  const without = sites.reduce(removeSite, document);
  return produce(without, (draft) => {
    draft.plan.tags = draft.plan.tags.filter((tag) => !gone.has(tag.id));
    renumber(draft.plan.tags);
  });
}

/** Changes fields of one tag; `kind` guards that the tag is of the kind the fields belong to. */
export function setTagFields<K extends TagKind>(
  document: TicketDocument,
  tagId: string,
  kind: K,
  fields: Partial<Omit<TagOf<K>, 'id' | 'kind' | 'order'>>,
): TicketDocument {
  return produce(document, (draft) => {
    const tag = draft.plan.tags.find((one) => one.id === tagId);
    if (tag?.kind === kind) Object.assign(tag, fields);
  });
}

/** Another shield on a part; what was said of the one before does not hold for it. */
export function setShield(document: TicketDocument, tagId: string, shield: string): TicketDocument {
  return produce(document, (draft) => {
    const tag = draft.plan.tags.find((one) => one.id === tagId);
    if (tag?.kind !== 'shield') return;
    tag.shield = shield;
    delete tag.gapMm;
    delete tag.layers;
    delete tag.waterG;
  });
}

export function setTagNote(document: TicketDocument, tagId: string, note: string): TicketDocument {
  return produce(document, (draft) => {
    const tag = draft.plan.tags.find((one) => one.id === tagId);
    if (tag) tag.note = note;
  });
}

/** Moves a tag to a place in the order of work, counted from 1; the others close up. */
export function moveTag(document: TicketDocument, tagId: string, place: number): TicketDocument {
  const ids = tagsInOrder(document.plan.tags).map((tag) => tag.id);
  const from = ids.indexOf(tagId);
  if (from < 0) return document;
  ids.splice(from, 1);
  ids.splice(Math.max(0, Math.min(ids.length, place - 1)), 0, tagId);
  return produce(document, (draft) => renumber(draft.plan.tags, ids));
}
