import type { PartRow } from '../state/part-rows.ts';
import type { ShownState } from '../widgets/StateMark.tsx';

/**
 * The state drawn for a part; null while there are no figures. A part that may reflow where it lies is past its joint
 * limit by intent: that is no warning, so it reads as 'will reflow', here as on the board and on paper.
 */
export function shownState({ exposure, action }: Pick<PartRow, 'exposure' | 'action'>): ShownState | null {
  if (!exposure) return null;
  if (action?.action === 'leave-will-reflow' && exposure.state === 'over') return 'reflow';
  if (exposure.state !== 'clear') return exposure.state;
  return exposure.reflow === 'none' ? 'clear' : 'reflow';
}
