import type { Point } from '../../shared-types/geometry.ts';
import { nearestPin1 } from '../../shared-types/rules/pin1.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { boardToOwn } from '../editing/part-poses.ts';
import { setPin1 } from '../editing/parts.ts';
import { ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

type State = { at: 'idle' } | { at: 'pressed'; screen: Point };
const IDLE: State = { at: 'idle' };

/** Marks pin 1 at the corner or end of a part that is nearest to the click. Esc ends it. */
export const pin1Tool: Tool<State> = {
  name: 'pin1',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return stay<State>({ at: 'pressed', screen: event.screen });
      case 'pointerUp':
        if (state.at !== 'pressed' || movedEnough(state.screen, event)) return stay<State>(IDLE);
        return stay<State>(IDLE, ...marked(event, view));
      case 'keyDown':
        return event.key === 'Escape' ? stay<State>(IDLE, { do: 'useTool', tool: 'select' }) : ignore(state);
      case 'abandon':
        return stay<State>(IDLE);
      default:
        return ignore(state);
    }
  },
  cursor: () => 'crosshair',
};

function marked(event: PointerFacts, view: ToolView) {
  const pick = view.pick(event.screen, event.touch);
  const refdes = pick?.kind === 'part' ? pick.refdes : view.partAt(event.board);
  if (refdes === null) return [];
  return [
    {
      do: 'apply' as const,
      label: partEditWords.pin1([refdes]),
      edit: (before: Parameters<typeof setPin1>[0]) =>
        setPin1(before, [refdes], (part) => nearestPin1(part, boardToOwn(part, event.board))),
    },
  ];
}
