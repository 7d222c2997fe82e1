/** The next free id of the form `prefix-number`: one above the highest in use, so that an id is never given twice in a row. */
export function nextId(prefix: string, taken: readonly { id: string }[]): string {
  return `${prefix}-${nextNumber(
    prefix,
    taken.map((item) => item.id),
  )}`;
}

/** One above the highest number that follows `prefix-` in the given ids. */
export function nextNumber(prefix: string, ids: readonly string[]): number {
  const pattern = new RegExp(`^${prefix}-(\\d+)$`);
  return 1 + ids.reduce((highest, id) => Math.max(highest, Number(pattern.exec(id)?.[1] ?? 0)), 0);
}
