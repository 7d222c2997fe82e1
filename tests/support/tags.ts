import type { Tag } from '../../shared-types/tags.ts';

/** A part that comes off, to tray slot A1, and goes back. */
export const off = (refdes: string): Tag => ({
  id: `off-${refdes}`,
  kind: 'remove',
  refdes,
  order: null,
  note: '',
  goesBack: true,
  traySlot: 'A1',
});
