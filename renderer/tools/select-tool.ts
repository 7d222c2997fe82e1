import type { Cover } from '../../shared-types/board.ts';
import type { Point, TurnedRectangle } from '../../shared-types/geometry.ts';
import { canvasWords } from '../../shared-types/words/canvas.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { coverArea } from '../canvas/layers/covers.ts';
import type { Grip } from '../canvas/picking/grips.ts';
import { type LeanArrow, leanArrowAt } from '../canvas/picking/lean-tip.ts';
import { coverById } from '../editing/covers.ts';
import type { Pick } from '../state/canvas-model.ts';
import { type Carry, carried, carriedTo, carryFrom, dropped } from './carry-parts.ts';
import { type Drag, dragCursor, dragEffects, gripCursor, nudge } from './select-drags.ts';
import {
  type Effect,
  ignore,
  movedEnough,
  type PointerFacts,
  type Step,
  selectMode,
  stay,
  type Tool,
  type ToolView,
} from './tool.ts';

type State =
  | { at: 'idle' }
  | { at: 'pressed'; screen: Point; board: Point; pick: Pick | null; grip: Grip | null; lean: LeanArrow | null }
  | { at: 'marquee'; from: Point }
  | { at: 'panning'; last: Point }
  | { at: 'dragging'; drag: Drag }
  | { at: 'carrying'; carry: Carry };
const IDLE: State = { at: 'idle' };

/**
 * Clicks select (Shift adds, Ctrl toggles), drags over bare board draw a marquee, drags on a rework area or a
 * thermocouple move it, its handles size and turn it, the head of a leaning nozzle's arrow turns its heading. In the stage Board parts and covers are dragged too; in the
 * others a drag on a part draws a marquee, so that nothing moves by accident. A finger on bare board moves the drawing instead.
 */
export const selectTool: Tool<State> = {
  name: 'select',
  idle: IDLE,
  step(state, event, view) {
    switch (event.type) {
      case 'pointerDown':
        return stay<State>(pressed(event, view));
      case 'pointerMove':
        return moved(state, event, view);
      case 'pointerUp':
        return released(state, event, view);
      case 'keyDown':
        return key(state, event, view);
      case 'abandon':
        return stay<State>(IDLE, ...undone(state));
    }
  },
  cursor(state, view, screen) {
    if (state.at === 'dragging') return dragCursor(state.drag);
    if (state.at === 'carrying') return 'move';
    if (state.at === 'panning') return 'grabbing';
    if (state.at !== 'idle' || !screen) return 'default';
    const grip = view.grip(screen, false);
    if (grip) return gripCursor(grip, view);
    const pick = view.pick(screen, false);
    if (pick?.kind === 'watch') return 'move';
    if (!view.model().boardOpen && leanArrowAt(view.model(), view.zoom(), view.toBoard(screen), false)) return 'grab';
    if (pick?.kind === 'site') return 'move';
    if (view.model().boardOpen && isSelected(pick, view)) return 'move';
    return pick ? 'pointer' : 'default';
  },
};

function pressed(event: PointerFacts, view: ToolView): State {
  return {
    at: 'pressed',
    screen: event.screen,
    board: event.board,
    pick: view.pick(event.screen, event.touch),
    grip: view.grip(event.screen, event.touch),
    lean: view.model().boardOpen ? null : leanArrowAt(view.model(), view.zoom(), event.board, event.touch),
  };
}

function moved(state: State, event: PointerFacts, view: ToolView): Step<State> {
  switch (state.at) {
    case 'idle':
      return ignore(state);
    case 'pressed':
      return movedEnough(state.screen, event) ? dragStarted(state, event, view) : ignore<State>(state);
    case 'marquee':
      return stay<State>(state, { do: 'sketch', sketch: { kind: 'marquee', from: state.from, to: event.screen } });
    case 'panning':
      return stay<State>(
        { at: 'panning', last: event.screen },
        { do: 'pan', dx: event.screen.x - state.last.x, dy: event.screen.y - state.last.y },
      );
    case 'dragging':
      return stay<State>(state, ...dragEffects(state.drag, event, view));
    case 'carrying':
      return stay<State>(state, ...carried(state.carry, event, view));
  }
}

function dragStarted(state: State & { at: 'pressed' }, event: PointerFacts, view: ToolView): Step<State> {
  const carry = carryFrom(state, event, view);
  if (carry) {
    const { refdes } = carry;
    const picks = refdes.map((one): Pick => ({ kind: 'part', refdes: one }));
    return stay<State>(
      { at: 'carrying', carry },
      { do: 'select', picks, mode: 'replace' },
      ...carried(carry, event, view),
    );
  }
  const drag = dragFrom(state, view);
  if (drag) {
    const select: Effect[] =
      drag.kind === 'heading'
        ? []
        : drag.kind === 'watch'
          ? [{ do: 'select', picks: [{ kind: 'watch', tagId: drag.tagId }], mode: 'replace' }]
          : drag.target.kind === 'cover'
            ? [{ do: 'select', picks: [{ kind: 'cover', id: drag.target.id }], mode: 'replace' }]
            : [];
    const begin: Effect = { do: 'begin', label: drag.label };
    return stay<State>({ at: 'dragging', drag }, ...select, begin, ...dragEffects(drag, event, view));
  }
  if (event.touch) return moved({ at: 'panning', last: state.screen }, event, view);
  return moved({ at: 'marquee', from: state.screen }, event, view);
}

/** What a press would drag: a handle first, then a thermocouple, the head of a nozzle's arrow, a rework area. */
function dragFrom(state: State & { at: 'pressed' }, view: ToolView): Drag | null {
  const { plan } = view.model().document;
  const siteOf = (id: string | null) => plan.sites.find((site) => site.id === id);
  if (state.grip) {
    const site = siteOf(view.model().selectedSiteId);
    if (site)
      return areaDrag({ kind: 'site', id: site.id }, site.name, { ...site.area }, state.board, state.grip, null);
    const cover = coverById(view.model().document, view.model().selectedCoverId);
    if (cover) return coverDrag(cover, state.board, state.grip);
  }
  if (state.pick?.kind !== 'watch' && state.lean)
    return { kind: 'heading', label: canvasWords.gestures.turnHeading, middle: state.lean.middle };
  if (state.pick?.kind === 'watch') {
    const { tagId } = state.pick;
    const tag = plan.tags.find((one) => one.id === tagId);
    if (tag?.kind === 'watchPoint')
      return {
        kind: 'watch',
        tagId,
        label: canvasWords.gestures.moveWatchPoint(tag.name),
        from: state.board,
        start: { x: tag.x, y: tag.y },
      };
  }
  if (state.pick?.kind === 'site') {
    const site = siteOf(state.pick.siteId);
    const part = view.model().document.board.parts.find((one) => one.refdes === site?.target);
    if (site)
      return areaDrag({ kind: 'site', id: site.id }, site.name, { ...site.area }, state.board, null, part ?? null);
  }
  if (state.pick?.kind === 'cover' && view.model().boardOpen) {
    const cover = coverById(view.model().document, state.pick.id);
    if (cover) return coverDrag(cover, state.board, null);
  }
  return null;
}

const coverDrag = (cover: Cover, from: Point, grip: Grip | null): Drag => ({
  kind: 'area',
  target: { kind: 'cover', id: cover.id },
  label: partEditWords.cover(cover.id),
  start: coverArea(cover),
  from,
  grip,
  magnet: null,
});

function areaDrag(
  target: { kind: 'site'; id: string },
  name: string,
  start: TurnedRectangle,
  from: Point,
  grip: Grip | null,
  magnet: Point | null,
): Drag {
  return {
    kind: 'area',
    target,
    label: areaLabel(name, grip),
    start,
    from,
    grip,
    magnet: magnet && { x: magnet.x, y: magnet.y },
  };
}

function areaLabel(name: string, grip: Grip | null): string {
  const { gestures } = canvasWords;
  if (!grip) return gestures.moveArea(name);
  return grip.kind === 'turn' ? gestures.turnArea(name) : gestures.resizeArea(name);
}

function released(state: State, event: PointerFacts, view: ToolView): Step<State> {
  const mode = selectMode(event.modifiers);
  switch (state.at) {
    case 'pressed':
      if (state.grip) return stay<State>(IDLE);
      if (!state.pick && mode !== 'replace') return stay<State>(IDLE);
      return stay<State>(IDLE, { do: 'select', picks: clicked(state.pick, event, view), mode });
    case 'marquee':
      return stay<State>(
        IDLE,
        { do: 'sketch', sketch: null },
        { do: 'select', picks: view.partsWithin(state.from, event.screen), mode },
      );
    case 'dragging':
      return stay<State>(IDLE, ...dragEffects(state.drag, event, view), { do: 'commit' });
    case 'carrying':
      return stay<State>(IDLE, ...dropped(state.carry, carriedTo(state.carry, event, view).by));
    default:
      return stay<State>(IDLE);
  }
}

/** A click into the area of a site that is selected already means the part in it. */
function clicked(pick: Pick | null, event: PointerFacts, view: ToolView): Pick[] {
  if (pick?.kind === 'site' && pick.siteId === view.model().selectedSiteId) {
    const refdes = view.partAt(event.board);
    return [refdes === null ? pick : { kind: 'part', refdes }];
  }
  return pick ? [pick] : [];
}

function undone(state: State): Effect[] {
  if (state.at === 'dragging') return [{ do: 'cancel' }];
  return state.at === 'marquee' || state.at === 'carrying' ? [{ do: 'sketch', sketch: null }] : [];
}

function key(
  state: State,
  event: { key: string; modifiers: { shift: boolean; ctrl: boolean; alt: boolean } },
  view: ToolView,
): Step<State> {
  if (event.key === 'Escape') {
    const { selection, selectedSiteId, selectedWatchId, selectedCoverId } = view.model();
    const picked = selection.size > 0 || selectedSiteId || selectedWatchId || selectedCoverId;
    const nothing = state.at === 'idle' && !picked;
    if (nothing) return ignore(state);
    const clear: Effect[] = state.at === 'idle' ? [{ do: 'select', picks: [], mode: 'replace' }] : [];
    return stay<State>(IDLE, ...undone(state), ...clear);
  }
  if (state.at !== 'idle') return ignore(state);
  const effect = nudge(event.key, event.modifiers, view);
  return effect ? stay<State>(IDLE, effect) : ignore(state);
}

const isSelected = (pick: Pick | null, view: ToolView): boolean =>
  (pick?.kind === 'part' && view.model().selection.has(pick.refdes)) || pick?.kind === 'cover';
