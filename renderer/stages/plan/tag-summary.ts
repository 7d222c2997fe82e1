import { shieldById } from '../../../shared-types/library/shields.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';

/** What a tag says beyond its letter, in a few words. */
export function tagSummary(tag: Tag): string {
  if (tag.kind === 'remove') return [tag.traySlot, tag.goesBack ? '' : words.notBack].filter(Boolean).join(', ');
  if (tag.kind === 'shield') return shieldById(tag.shield)?.name ?? tag.shield;
  if (tag.kind === 'relocate') return tag.toRefdes ? `→ ${tag.toRefdes}` : words.noPosition;
  if (tag.kind === 'reprogram') return words.ways[tag.way];
  if (tag.kind === 'replace') return [tag.comesOff, tag.goesOn].filter(Boolean).join(' → ');
  return tag.name;
}
