import type { PartRow } from '../state/part-rows.ts';
import type { ShownState } from '../widgets/StateMark.tsx';

/** The state drawn for a part: over and unsure win, then reflow; null while there are no figures. */
export function shownState({ exposure }: Pick<PartRow, 'exposure'>): ShownState | null {
  if (!exposure) return null;
  if (exposure.state !== 'clear') return exposure.state;
  return exposure.reflow === 'none' ? 'clear' : 'reflow';
}
