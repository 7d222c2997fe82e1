import type { Point } from '../../shared-types/geometry.ts';
import { ignore, stay, type Tool } from './tool.ts';

type State = { at: 'idle' } | { at: 'panning'; last: Point };
const IDLE: State = { at: 'idle' };

/** Moves the drawing under the pointer. */
export const handTool: Tool<State> = {
  name: 'hand',
  idle: IDLE,
  step(state, event) {
    switch (event.type) {
      case 'pointerDown':
        return stay<State>({ at: 'panning', last: event.screen });
      case 'pointerMove':
        if (state.at !== 'panning') return ignore(state);
        return stay<State>(
          { at: 'panning', last: event.screen },
          { do: 'pan', dx: event.screen.x - state.last.x, dy: event.screen.y - state.last.y },
        );
      case 'keyDown':
        return event.key === 'Escape' ? stay<State>(IDLE, { do: 'useTool', tool: 'select' }) : ignore(state);
      default:
        return stay<State>(IDLE);
    }
  },
  cursor: (state) => (state.at === 'panning' ? 'grabbing' : 'grab'),
};
