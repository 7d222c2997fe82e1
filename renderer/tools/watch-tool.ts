import { canvasWords } from '../../shared-types/words/canvas.ts';
import { addWatchPoint } from '../editing/watch-points.ts';
import { ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

type State = { at: 'idle' } | { at: 'pressed'; screen: { x: number; y: number } };
const IDLE: State = { at: 'idle' };

/** Puts thermocouples where it is clicked. */
export const watchTool: Tool<State> = {
  name: 'watch',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return stay<State>({ at: 'pressed', screen: event.screen });
      case 'pointerUp':
        if (state.at !== 'pressed' || movedEnough(state.screen, event)) return stay<State>(IDLE);
        return stay<State>(IDLE, placeAt(event, view));
      case 'keyDown':
        if (event.key !== 'Escape') return ignore(state);
        return state.at === 'pressed' ? stay<State>(IDLE) : stay<State>(IDLE, { do: 'useTool', tool: 'select' });
      case 'abandon':
        return stay<State>(IDLE);
      default:
        return ignore(state);
    }
  },
  cursor: () => 'crosshair',
};

function placeAt(event: PointerFacts, view: ToolView) {
  const pick = view.pick(event.screen, event.touch);
  const at = { x: Math.round(event.board.x * 100) / 100, y: Math.round(event.board.y * 100) / 100 };
  const refdes = pick?.kind === 'part' ? pick.refdes : null;
  const side = view.model().shownSide;
  return {
    do: 'apply' as const,
    label: canvasWords.gestures.addWatchPoint,
    edit: (document: Parameters<typeof addWatchPoint>[0]) => addWatchPoint(document, at, side, refdes),
    thenSelect: 'watch' as const,
  };
}
