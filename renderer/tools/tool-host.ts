import type { Point } from '../../shared-types/geometry.ts';
import type { ToolName } from '../state/canvas-model.ts';
import { bodyTool, coverTool } from './drawn-tools.ts';
import { handTool } from './hand-tool.ts';
import { matchTool } from './match-tool.ts';
import { type Navigation, type NavigationEvent, navigate, RESTING, type WheelTurn, wheelEffect } from './navigation.ts';
import { outlineTool } from './outline-tool.ts';
import { pin1Tool } from './pin1-tool.ts';
import { placeTool } from './place-tool.ts';
import { selectTool } from './select-tool.ts';
import { siteTool } from './site-tool.ts';
import type { Effect, Modifiers, PointerFacts, Tool, ToolEvent, ToolView } from './tool.ts';
import { watchTool } from './watch-tool.ts';

/** A pointer event as the canvas hands it in. */
export type PointerInput = PointerFacts & { pointerId: number; button: number };

/** Leads events to the navigation first and then to the tool in use, and hands out their effects. */
export type ToolHost = {
  pointerDown(event: PointerInput): void;
  pointerMove(event: PointerInput): void;
  pointerUp(event: PointerInput): void;
  /** The pointer was lost: what was begun is undone. */
  pointerLost(pointerId: number): void;
  /** True when the key was used here. */
  keyDown(key: string, modifiers: Modifiers): boolean;
  space(held: boolean): void;
  /** Zooms or pans in every tool, as the settings say. */
  wheel(turn: WheelTurn): void;
  /** Call when the model has changed: another tool drops the gesture of the last one. */
  modelChanged(): void;
  /** True while a gesture lasts. */
  busy(): boolean;
  cursor(screen: Point | null): string;
};

export function toolHost(view: ToolView, run: (effects: readonly Effect[]) => void): ToolHost {
  let navigation: Navigation = RESTING;
  const machines: Record<ToolName, Machine> = {
    select: machineOf(selectTool),
    hand: machineOf(handTool),
    site: machineOf(siteTool),
    watch: machineOf(watchTool),
    match: machineOf(matchTool),
    outline: machineOf(outlineTool),
    place: machineOf(placeTool),
    body: machineOf(bodyTool),
    pin1: machineOf(pin1Tool),
    cover: machineOf(coverTool),
  };
  let current = view.model().tool;
  /** The pointer whose gesture the tool is following. */
  let held: number | null = null;

  const tell = (event: ToolEvent): boolean => {
    const { effects, handled } = machines[current].step(event, view);
    run(effects);
    return handled;
  };
  const drop = () => {
    held = null;
    tell({ type: 'abandon' });
  };
  const navigated = (event: NavigationEvent): boolean => {
    const step = navigate(navigation, event);
    navigation = step.state;
    if (step.abandon) drop();
    run(step.effects);
    return step.taken;
  };
  const followTool = () => {
    const wanted = view.model().tool;
    if (wanted === current) return;
    drop();
    current = wanted;
  };
  return {
    pointerDown(event) {
      followTool();
      const { pointerId, button, touch, screen } = event;
      if (navigated({ type: 'down', pointerId, button, touch, screen }) || button !== 0 || held !== null) return;
      held = pointerId;
      tell({ ...event, type: 'pointerDown' });
    },
    pointerMove(event) {
      const taken = navigated({ type: 'move', pointerId: event.pointerId, screen: event.screen });
      if (!taken && (held === null || held === event.pointerId)) tell({ ...event, type: 'pointerMove' });
    },
    pointerUp(event) {
      const taken = navigated({ type: 'up', pointerId: event.pointerId });
      if (taken || held !== event.pointerId) return;
      held = null;
      tell({ ...event, type: 'pointerUp' });
    },
    pointerLost(pointerId) {
      navigated({ type: 'up', pointerId });
      if (held === pointerId) drop();
    },
    keyDown(key, modifiers) {
      followTool();
      return tell({ type: 'keyDown', key, modifiers });
    },
    space: (isHeld) => void navigated({ type: 'space', held: isHeld }),
    wheel: (turn) => run([wheelEffect(turn, view.model().wheelDoes)]),
    modelChanged: followTool,
    busy: () => held !== null || navigation.pan !== null || navigation.fingers.size > 1,
    cursor(screen) {
      if (navigation.pan) return 'grabbing';
      return navigation.space ? 'grab' : machines[current].cursor(view, screen);
    },
  };
}

type Machine = {
  step(event: ToolEvent, view: ToolView): { effects: Effect[]; handled: boolean };
  cursor(view: ToolView, screen: Point | null): string;
};

/** A tool with its state put away, so that tools of different states stand side by side. */
function machineOf<State>(tool: Tool<State>): Machine {
  let state = tool.idle;
  return {
    step(event, view) {
      const { state: next, effects, handled } = tool.step(state, event, view);
      state = next;
      return { effects, handled };
    },
    cursor: (view, screen) => tool.cursor(state, view, screen),
  };
}
