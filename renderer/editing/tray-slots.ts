import type { Tag } from '../../shared-types/tags.ts';

const SLOTS_IN_A_ROW = 6;

/** The first free slot of the parts tray: A1 to A6, B1 to B6 ... Z6; empty when the tray is full. */
export function freeTraySlot(tags: readonly Tag[]): string {
  const taken = new Set(tags.map((tag) => (tag.kind === 'remove' ? tag.traySlot : '')));
  for (let index = 0; index < 26 * SLOTS_IN_A_ROW; index++) {
    const row = String.fromCharCode(65 + Math.floor(index / SLOTS_IN_A_ROW));
    const slot = `${row}${(index % SLOTS_IN_A_ROW) + 1}`;
    if (!taken.has(slot)) return slot;
  }
  return '';
}
