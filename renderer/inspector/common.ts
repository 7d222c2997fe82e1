/** What all have in common; null: they differ. */
export function common<T, V>(items: readonly T[], read: (item: T) => V): V | null {
  const first = items.length > 0 ? read(items[0]) : null;
  return items.every((item) => Object.is(read(item), first)) ? first : null;
}
