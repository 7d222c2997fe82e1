import type { Point, TurnedRectangle } from '../../shared-types/geometry.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { addParts } from '../editing/add-parts.ts';
import { addCover, coverOn, freeCoverId } from '../editing/covers.ts';
import { drawBody } from '../editing/drawn-body.ts';
import type { Placing } from '../editing/placing.ts';
import type { Edit, Pick, ToolName } from '../state/canvas-model.ts';
import { drawnArea, screenTurn } from './area-gestures.ts';
import { type Effect, ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

type State = { at: 'idle' } | { at: 'pressed'; screen: Point; board: Point } | { at: 'drawing'; board: Point };
const IDLE: State = { at: 'idle' };
const NO_SKETCH: Effect = { do: 'sketch', sketch: null };

type Made = { label: string; edit: Edit; picks: Pick[]; drawn?: Placing['drawn'] };

/** A tool that draws a rectangle by two corners along the screen, and makes something of it. Shift keeps the tool. */
function rectangleTool(name: ToolName, make: (area: TurnedRectangle, view: ToolView) => Made): Tool<State> {
  const areaOf = (from: Point, event: PointerFacts, view: ToolView) =>
    drawnArea(from, event.board, screenTurn(view.toBoard), event.modifiers.alt ? 0.01 : 0.05, 0.2);
  const sketched = (from: Point, event: PointerFacts, view: ToolView): Effect => {
    const area = areaOf(from, event, view);
    return { do: 'sketch', sketch: area && { kind: 'area', area, measured: true } };
  };
  const made = (from: Point, event: PointerFacts, view: ToolView): Effect[] => {
    const area = areaOf(from, event, view);
    if (!area) return [];
    const { label, edit, picks, drawn = null } = make(area, view);
    const back: Effect[] = event.modifiers.shift ? [] : [{ do: 'useTool', tool: 'select' }];
    return [
      { do: 'apply', label, edit },
      { do: 'select', picks, mode: 'replace' },
      { do: 'placing', fields: { drawn } },
      ...back,
    ];
  };
  return {
    name,
    idle: IDLE,
    step(state, event, view) {
      switch (event.type) {
        case 'pointerDown':
          // A second click ends what a click began: two corners by clicks do what a drag does.
          if (state.at === 'drawing') return ignore(state);
          return stay<State>({ at: 'pressed', screen: event.screen, board: event.board });
        case 'pointerMove':
          if (state.at === 'drawing') return stay<State>(state, sketched(state.board, event, view));
          if (state.at !== 'pressed' || !movedEnough(state.screen, event)) return ignore(state);
          return stay<State>({ at: 'drawing', board: state.board }, sketched(state.board, event, view));
        case 'pointerUp':
          if (state.at === 'drawing') return stay<State>(IDLE, NO_SKETCH, ...made(state.board, event, view));
          return state.at === 'pressed' ? stay<State>({ at: 'drawing', board: state.board }) : ignore(state);
        case 'keyDown':
          if (event.key !== 'Escape') return ignore(state);
          if (state.at === 'idle') return stay<State>(IDLE, { do: 'useTool', tool: 'select' });
          return stay<State>(IDLE, NO_SKETCH);
        case 'abandon':
          return stay<State>(IDLE, NO_SKETCH);
      }
    },
    cursor: () => 'crosshair',
  };
}

/** Draws the body of a part: it becomes a part with the nearest package. */
export const bodyTool = rectangleTool('body', (area, view) => {
  const { document, placing, shownSide } = view.model();
  const part = drawBody(document, area, shownSide, placing);
  return {
    label: partEditWords.draw(part.refdes),
    edit: (before) => addParts(before, [part]),
    picks: [{ kind: 'part', refdes: part.refdes }],
    drawn: { refdes: part.refdes, lengthMm: area.lengthMm, widthMm: area.widthMm, turn: area.turnDeg },
  };
});

/** Draws a can, a frame or a stiffener. */
export const coverTool = rectangleTool('cover', (area, view) => {
  const { document, placing, shownSide } = view.model();
  const cover = coverOn(freeCoverId(document, placing.coverKind), placing.coverKind, shownSide, area);
  return {
    label: partEditWords.addCover(cover.id),
    edit: (before) => addCover(before, cover),
    picks: [{ kind: 'cover', id: cover.id }],
  };
});
