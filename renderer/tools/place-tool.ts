import type { Point } from '../../shared-types/geometry.ts';
import { readNumbered } from '../../shared-types/rules/refdes.ts';
import { partEditWords, placeWords } from '../../shared-types/words/window/parts.ts';
import { addParts, takenRefdes } from '../editing/add-parts.ts';
import { nextRefdes, placedPart } from '../editing/placing.ts';
import { pulledTowards } from './placing/aim.ts';
import { rowTo } from './placing/row.ts';
import { boardMiddle, boardStep } from './screen-steps.ts';
import { type Snapped, snap } from './snapping.ts';
import {
  type Effect,
  ignore,
  type Modifiers,
  movedEnough,
  type PointerFacts,
  type Step,
  stay,
  type Tool,
  type ToolView,
} from './tool.ts';

/** `typed`: digits of the designator's number. `pulled`: the press became a pull towards pin 1. */
type State =
  | { at: 'away'; typed: string }
  | { at: 'over'; place: Point; typed: string }
  | { at: 'pressed'; screen: Point; place: Point; pulled: boolean; typed: string };
const AWAY: State = { at: 'away', typed: '' };

/** How far a row of neighbours pulls, CSS pixels. */
const ROW_PX = 6;
/** From here on a press is a pull; a hand that trembles stays below, CSS pixels. */
const PULL_PX = 9;

/**
 * Puts one part after the other where it is clicked, or where the arrows have moved it and Enter is pressed. A pull from the
 * middle turns it and marks pin 1, Shift goes on with the row, digits set the number of the designator. The part under the pointer
 * is shown as it will lie; Alt suspends snapping.
 */
export const placeTool: Tool<State> = {
  name: 'place',
  idle: AWAY,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown': {
        const to = snapped(event, view);
        const pressed: State = {
          at: 'pressed',
          screen: event.screen,
          place: to.at,
          pulled: false,
          typed: state.typed,
        };
        return stay<State>(pressed, ...shown(to, event.modifiers, view));
      }
      case 'pointerMove':
        return moved(state, event, view);
      case 'pointerUp':
        return state.at === 'pressed' ? released(state, event, view) : ignore<State>(state);
      case 'keyDown':
        return key(state, event, view);
      case 'abandon':
        return stay<State>(AWAY, { do: 'sketch', sketch: null });
    }
  },
  cursor: (_state, view) => (view.model().placing.offer ? 'crosshair' : 'not-allowed'),
};

function moved(state: State, event: PointerFacts, view: ToolView): Step<State> {
  if (state.at !== 'pressed') {
    const to = snapped(event, view);
    return stay<State>({ at: 'over', place: to.at, typed: state.typed }, ...shown(to, event.modifiers, view));
  }
  // A finger covers what it points at: it moves the part about instead.
  if (event.touch) {
    const to = snapped(event, view);
    return stay<State>({ ...state, place: to.at }, ...shown(to, event.modifiers, view));
  }
  const off = Math.hypot(event.screen.x - state.screen.x, event.screen.y - state.screen.y);
  if (event.modifiers.shift || (!state.pulled && off < PULL_PX)) return ignore<State>(state);
  const { placing, shownSide } = view.model();
  const fields = pulledTowards(placing, state.place, event.board, shownSide, event.modifiers.alt);
  const turned: Effect[] = fields ? [{ do: 'placing', fields }] : [];
  return stay<State>(
    { ...state, pulled: true },
    ...turned,
    ...shown({ at: state.place, guides: [] }, event.modifiers, view),
  );
}

function released(state: State & { at: 'pressed' }, event: PointerFacts, view: ToolView): Step<State> {
  // A finger that wandered was meant for moving the part about: it still drops it where it was lifted.
  const wandered = event.touch && movedEnough(state.screen, event);
  const place = wandered ? snapped(event, view).at : state.place;
  const put = event.modifiers.shift && !state.pulled ? putRow(place, event.modifiers, view) : put1(place, view);
  return stay<State>({ at: 'over', place, typed: '' }, ...put, ...ghost(place));
}

function snapped(event: PointerFacts, view: ToolView): Snapped {
  if (event.modifiers.alt) return { at: event.board, guides: [] };
  const { document, placing, shownSide } = view.model();
  return snap(event.board, {
    gridMm: placing.gridMm,
    rows: placing.rows,
    parts: document.board.parts,
    side: shownSide,
    like: placing.offer?.name,
    reachMm: ROW_PX / view.zoom(),
  });
}

const ghost = (at: Point, guides: Snapped['guides'] = []): Effect[] => [
  { do: 'sketch', sketch: { kind: 'ghost', at, guides } },
];

/** The part as it would lie; with Shift the rest of its row. */
function shown({ at, guides }: Snapped, modifiers: Modifiers, view: ToolView): Effect[] {
  if (!modifiers.shift) return ghost(at, guides);
  const { document, placing, shownSide } = view.model();
  const parts = rowTo(placing, document, at, shownSide, modifiers.alt);
  return parts.length > 0 ? [{ do: 'sketch', sketch: { kind: 'bodies', parts, guides } }] : ghost(at, guides);
}

function put1(at: Point, view: ToolView): Effect[] {
  const { document, placing, shownSide } = view.model();
  const part = placedPart(placing, nextRefdes(placing, document), at, shownSide);
  if (!part) return [{ do: 'hint', text: partEditWords.choosePackage }];
  return [{ do: 'apply', label: partEditWords.place(part.refdes), edit: (before) => addParts(before, [part]) }];
}

function putRow(at: Point, modifiers: Modifiers, view: ToolView): Effect[] {
  const { document, placing, shownSide } = view.model();
  const parts = rowTo(placing, document, at, shownSide, modifiers.alt);
  if (parts.length === 0) return [{ do: 'hint', text: partEditWords.choosePackage }];
  const label = partEditWords.placeMany(parts.map((part) => part.refdes));
  return [{ do: 'apply', label, edit: (before) => addParts(before, parts) }];
}

function key(state: State, event: { key: string; modifiers: Modifiers }, view: ToolView): Step<State> {
  if (event.key === 'Escape')
    return stay<State>(AWAY, { do: 'sketch', sketch: null }, { do: 'useTool', tool: 'select' });
  const typed = typedNumber(state.typed, event);
  if (typed !== null) return numbered(state, typed, view);
  const from = state.at === 'away' ? boardMiddle(view) : state.place;
  if (event.key === 'Enter') return stay<State>({ at: 'over', place: from, typed: '' }, ...put1(from, view));
  const step = boardStep(event.key, event.modifiers, view.model().placing.gridMm || 0.1, view);
  if (!step) return ignore(state);
  const place = { x: tidy(from.x + step.x), y: tidy(from.y + step.y) };
  return stay<State>({ at: 'over', place, typed: state.typed }, ...ghost(place));
}

/** What is typed of a number after a key; null: the key has nothing to do with it. */
function typedNumber(before: string, { key, modifiers }: { key: string; modifiers: Modifiers }): string | null {
  if (modifiers.ctrl || modifiers.alt) return null;
  if (/^\d$/.test(key)) return (before + key).slice(-5);
  return key === 'Backspace' && before !== '' ? before.slice(0, -1) : null;
}

/** The designator with the typed number; the letters stay. */
function numbered(state: State, typed: string, view: ToolView): Step<State> {
  const { document, placing } = view.model();
  const prefix = readNumbered(nextRefdes(placing, document))?.prefix;
  if (prefix === undefined) return ignore(state);
  const refdes = `${prefix}${Number(typed) || 1}`;
  const next = nextRefdes({ ...placing, refdes }, document);
  const taken: Effect[] = takenRefdes(document).has(refdes)
    ? [{ do: 'hint', text: placeWords.taken(refdes, next) }]
    : [];
  return stay<State>({ ...state, typed }, { do: 'placing', fields: { refdes } }, ...taken);
}

const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 || 0;
