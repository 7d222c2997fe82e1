import type { Point } from '../../shared-types/geometry.ts';
import { canvasWords } from '../../shared-types/words/canvas.ts';
import { addSiteAt, addSiteOn } from '../editing/sites.ts';
import { drawnArea, screenTurn } from './area-gestures.ts';
import { type Effect, ignore, movedEnough, type PointerFacts, stay, type Tool, type ToolView } from './tool.ts';

type State = { at: 'idle' } | { at: 'pressed'; screen: Point; board: Point } | { at: 'drawing'; board: Point };
const IDLE: State = { at: 'idle' };
const NO_SKETCH: Effect = { do: 'sketch', sketch: null };

/** Marks rework sites: a click on a part takes its body, a drag draws the area. Shift keeps the tool for the next one. */
export const siteTool: Tool<State> = {
  name: 'site',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return stay<State>({ at: 'pressed', screen: event.screen, board: event.board });
      case 'pointerMove':
        if (state.at === 'drawing') return stay<State>(state, sketchOf(state.board, event, view));
        if (state.at !== 'pressed' || !movedEnough(state.screen, event)) return ignore(state);
        return stay<State>({ at: 'drawing', board: state.board }, sketchOf(state.board, event, view));
      case 'pointerUp':
        if (state.at === 'drawing') return stay<State>(IDLE, NO_SKETCH, ...siteDrawn(state.board, event, view));
        return stay<State>(IDLE, ...(state.at === 'pressed' ? siteClicked(event, view) : []));
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

function sketchOf(from: Point, event: PointerFacts, view: ToolView): Effect {
  const area = drawnArea(from, event.board, screenTurn(view.toBoard));
  return { do: 'sketch', sketch: area && { kind: 'area', area } };
}

const backToSelect = (event: PointerFacts): Effect[] =>
  event.modifiers.shift ? [] : [{ do: 'useTool', tool: 'select' }];

function siteDrawn(from: Point, event: PointerFacts, view: ToolView): Effect[] {
  const area = drawnArea(from, event.board, screenTurn(view.toBoard));
  if (!area) return [];
  const side = view.model().shownSide;
  return [
    {
      do: 'apply',
      label: canvasWords.gestures.addSite,
      edit: (document) => addSiteAt(document, area, null, side),
      thenSelect: 'site',
    },
    ...backToSelect(event),
  ];
}

function siteClicked(event: PointerFacts, view: ToolView): Effect[] {
  const pick = view.pick(event.screen, event.touch);
  if (pick?.kind === 'site') return [{ do: 'select', picks: [pick], mode: 'replace' }, ...backToSelect(event)];
  if (pick?.kind !== 'part') return [];
  const { refdes } = pick;
  const existing = view.model().document.plan.sites.find((site) => site.target === refdes);
  if (existing)
    return [{ do: 'select', picks: [{ kind: 'site', siteId: existing.id }], mode: 'replace' }, ...backToSelect(event)];
  return [
    {
      do: 'apply',
      label: canvasWords.gestures.addSite,
      edit: (document) => addSiteOn(document, refdes),
      thenSelect: 'site',
    },
    ...backToSelect(event),
  ];
}
