import type { Point } from '../../shared-types/geometry.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { addParts } from '../editing/add-parts.ts';
import { nextRefdes, placedPart } from '../editing/placing.ts';
import { boardMiddle, boardStep } from './screen-steps.ts';
import { type Snapped, snap } from './snapping.ts';
import { type Effect, ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

type State = { at: 'away' } | { at: 'over'; place: Point } | { at: 'pressed'; screen: Point; place: Point };
const AWAY: State = { at: 'away' };

/** How far a row of neighbours pulls, CSS pixels. */
const ROW_PX = 6;

/**
 * Puts one part after the other where it is clicked, or where the arrows have moved it and Enter is pressed. The part
 * under the pointer is shown as it will lie; Alt suspends snapping.
 */
export const placeTool: Tool<State> = {
  name: 'place',
  idle: AWAY,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown': {
        const { at } = snapped(event, view);
        return stay<State>({ at: 'pressed', screen: event.screen, place: at }, ...shown(snapped(event, view)));
      }
      case 'pointerMove': {
        const to = snapped(event, view);
        const next: State = state.at === 'pressed' ? { ...state, place: to.at } : { at: 'over', place: to.at };
        return stay<State>(next, ...shown(to));
      }
      case 'pointerUp': {
        if (state.at !== 'pressed') return ignore(state);
        // A finger that wandered was meant for moving the part about: it still drops it where it was lifted.
        const place = movedEnough(state.screen, event) ? snapped(event, view).at : state.place;
        return stay<State>({ at: 'over', place }, ...placed(place, view), ...shown({ at: place, guides: [] }));
      }
      case 'keyDown':
        return key(state, event, view);
      case 'abandon':
        return stay<State>(AWAY, { do: 'sketch', sketch: null });
    }
  },
  cursor: (_state, view) => (view.model().placing.offer ? 'crosshair' : 'not-allowed'),
};

function snapped(event: PointerFacts, view: ToolView): Snapped {
  if (event.modifiers.alt) return { at: event.board, guides: [] };
  const { document, placing, shownSide } = view.model();
  return snap(event.board, {
    gridMm: placing.gridMm,
    rows: placing.rows,
    parts: document.board.parts,
    side: shownSide,
    reachMm: ROW_PX / view.zoom(),
  });
}

const shown = ({ at, guides }: Snapped): Effect[] => [{ do: 'sketch', sketch: { kind: 'ghost', at, guides } }];

function placed(at: Point, view: ToolView): Effect[] {
  const { document, placing, shownSide } = view.model();
  const part = placedPart(placing, nextRefdes(placing, document), at, shownSide);
  if (!part) return [{ do: 'hint', text: partEditWords.choosePackage }];
  return [{ do: 'apply', label: partEditWords.place(part.refdes), edit: (before) => addParts(before, [part]) }];
}

function key(
  state: State,
  event: { key: string; modifiers: { shift: boolean; ctrl: boolean; alt: boolean } },
  view: ToolView,
) {
  if (event.key === 'Escape')
    return stay<State>(AWAY, { do: 'sketch', sketch: null }, { do: 'useTool', tool: 'select' });
  const from = state.at === 'away' ? boardMiddle(view) : state.place;
  if (event.key === 'Enter') return stay<State>({ at: 'over', place: from }, ...placed(from, view));
  const step = boardStep(event.key, event.modifiers, view.model().placing.gridMm || 0.1, view);
  if (!step) return ignore(state);
  const place = { x: tidy(from.x + step.x), y: tidy(from.y + step.y) };
  return stay<State>({ at: 'over', place }, ...shown({ at: place, guides: [] }));
}

const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 || 0;
