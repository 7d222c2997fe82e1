import type { Tag, TagKind } from '../../shared-types/tags.ts';

/** Order of work: parts come off before heat, shields go on, then the exchange; straps and firmware follow. */
const RANK: Record<TagKind, number> = { remove: 0, shield: 1, replace: 2, relocate: 3, reprogram: 4, watchPoint: 5 };

/** Tags that take a place in the order of work, first one first. Unordered tags follow in the order they were set. */
export function tagsInOrder(tags: readonly Tag[]): Tag[] {
  return tags
    .filter((tag) => tag.kind !== 'watchPoint')
    .toSorted((a, b) => (a.order ?? Infinity) - (b.order ?? Infinity));
}

/** Gives the ordered tags the numbers 1, 2, 3... in the given sequence; works on a draft. */
export function renumber(tags: Tag[], sequence: readonly string[] = tagsInOrder(tags).map((tag) => tag.id)): void {
  const place = new Map(sequence.map((id, index) => [id, index + 1]));
  for (const tag of tags) {
    const order = place.get(tag.id) ?? null;
    if (tag.order !== order) tag.order = order;
  }
}

/** Adds a tag behind the last tag of its rank or below, then renumbers; works on a draft. */
export function insertInOrder(tags: Tag[], tag: Tag): void {
  tags.push(tag);
  if (tag.kind === 'watchPoint') return;
  const sequence = tagsInOrder(tags).filter((other) => other.id !== tag.id);
  const behind = sequence.findLastIndex((other) => RANK[other.kind] <= RANK[tag.kind]);
  const ids = sequence.map((other) => other.id);
  ids.splice(behind + 1, 0, tag.id);
  renumber(tags, ids);
}
