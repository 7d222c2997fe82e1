import { expect } from 'vitest';
import { runEffects } from '../../../../renderer/canvas/run-effects.ts';
import { toolViewOf } from '../../../../renderer/canvas/tool-view.ts';
import { type Camera, panBy, toBoard, toScreen, zoomAt } from '../../../../renderer/canvas/view/camera.ts';
import { projectionOf } from '../../../../renderer/canvas/view/projection.ts';
import type { CanvasModel, Edit, Pick, Workbench } from '../../../../renderer/state/canvas-model.ts';
import type { Modifiers, Sketch } from '../../../../renderer/tools/tool.ts';
import { toolHost } from '../../../../renderer/tools/tool-host.ts';
import type { Point } from '../../../../shared-types/geometry.ts';
import { camera as cameraAt } from '../canvas/sample.ts';

/** A window with nothing on the screen: the real tools, picking and camera, driven by verbs. Places are board mm. */
export function drive(start: CanvasModel, view: Partial<Camera> = {}) {
  let model = start;
  let camera = cameraAt({ side: start.shownSide, turnDeg: start.viewTurnDeg, ...view });
  let sketch: Sketch | null = null;
  let base: CanvasModel | null = null;
  let held: Modifiers = { shift: false, ctrl: false, alt: false };
  let touch = false;
  /** One entry for every undo step. */
  const history: string[] = [];
  const label = { now: '' };
  const hints: string[] = [];

  const workbench: Workbench = {
    model: () => model,
    begin(text) {
      if (base) throw new Error('a gesture is already open');
      base = model;
      label.now = text;
    },
    preview(edit: Edit) {
      if (!base) throw new Error('preview without begin');
      model = { ...model, document: edit(base.document) };
    },
    commit() {
      if (!base) throw new Error('commit without begin');
      base = null;
      history.push(label.now);
    },
    cancel() {
      if (!base) throw new Error('cancel without begin');
      model = { ...model, document: base.document };
      base = null;
    },
    apply(text, edit) {
      history.push(text);
      model = { ...model, document: edit(model.document) };
    },
    select(picks, mode) {
      model = selected(model, picks, mode);
    },
    useTool(tool) {
      model = { ...model, tool };
    },
    setOutline(fields) {
      model = { ...model, outline: { ...model.outline, ...fields } };
    },
    choosePair(pairId) {
      model = { ...model, pairId };
    },
    setPlacing(fields) {
      model = { ...model, placing: { ...model.placing, ...fields } };
    },
    hint: (text) => void hints.push(text),
    hover: () => {},
    openMenu: () => {},
  };
  const tools = toolHost(
    toolViewOf(() => ({ model, camera, projection: projectionOf(camera, { x: 0, y: 0 }, 1) }), workbench),
    (effects) =>
      runEffects(effects, workbench, {
        pan: (dx, dy) => {
          camera = panBy(camera, dx, dy);
        },
        zoomAt: (at, factor) => {
          camera = zoomAt(camera, at, factor);
        },
        sketch: (next) => {
          sketch = next;
        },
      }),
  );
  const input = (screen: Point, button: number, pointerId: number) => ({
    pointerId,
    button,
    screen,
    board: toBoard(camera, screen),
    modifiers: held,
    touch,
  });
  const driver = {
    /** Keys held from now on. */
    hold(modifiers: Partial<Modifiers>) {
      held = { shift: false, ctrl: false, alt: false, ...modifiers };
      return driver;
    },
    byTouch() {
      touch = true;
      return driver;
    },
    pointerDown: (at: Point, button = 0, pointerId = 1) =>
      driver.pointerDownAt(toScreen(camera, at), button, pointerId),
    pointerMove: (at: Point, pointerId = 1) => driver.pointerMoveAt(toScreen(camera, at), pointerId),
    pointerUp: (at: Point, pointerId = 1) => driver.pointerUpAt(toScreen(camera, at), pointerId),
    pointerDownAt(screen: Point, button = 0, pointerId = 1) {
      tools.pointerDown(input(screen, button, pointerId));
      return driver;
    },
    pointerMoveAt(screen: Point, pointerId = 1) {
      tools.pointerMove(input(screen, 0, pointerId));
      return driver;
    },
    pointerUpAt(screen: Point, pointerId = 1) {
      tools.pointerUp(input(screen, 0, pointerId));
      return driver;
    },
    pointerLost(pointerId = 1) {
      tools.pointerLost(pointerId);
      return driver;
    },
    click: (at: Point) => driver.pointerDown(at).pointerUp(at),
    drag: (from: Point, to: Point) =>
      driver
        .pointerDown(from)
        .pointerMove({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })
        .pointerMove(to)
        .pointerUp(to),
    wheel(screen: Point, dx: number, dy: number) {
      tools.wheel({ screen, dx, dy, mode: 0, ctrl: held.ctrl, shift: held.shift });
      return driver;
    },
    keyDown: (key: string) => tools.keyDown(key, held),
    space(down: boolean) {
      tools.space(down);
      return driver;
    },
    use(tool: CanvasModel['tool']) {
      model = { ...model, tool };
      tools.modelChanged();
      return driver;
    },
    cursorAt: (at: Point) => tools.cursor(toScreen(camera, at)),
    busy: () => tools.busy(),
    model: () => model,
    camera: () => camera,
    sketch: () => sketch,
    history: () => history,
    hints: () => hints,
    site: (id = 'site-1') => model.document.plan.sites.find((site) => site.id === id),
    expectCameraToBe(centre: Point, zoom: number) {
      expect(camera.centre.x).toBeCloseTo(centre.x, 6);
      expect(camera.centre.y).toBeCloseTo(centre.y, 6);
      expect(camera.zoom).toBeCloseTo(zoom, 6);
      return driver;
    },
    expectSelected(...refdes: string[]) {
      expect([...model.selection].sort()).toEqual([...refdes].sort());
      return driver;
    },
    expectSteps(...labels: string[]) {
      expect(history).toEqual(labels);
      expect(base).toBeNull();
      return driver;
    },
  };
  return driver;
}

/** Selection as the window keeps it: parts add up, a site or a thermocouple is one at a time. */
function selected(model: CanvasModel, picks: readonly Pick[], mode: 'replace' | 'add' | 'toggle'): CanvasModel {
  const selection = new Set(mode === 'replace' ? [] : model.selection);
  let { selectedSiteId, selectedWatchId, selectedCoverId } = model;
  if (mode === 'replace') selectedSiteId = selectedWatchId = selectedCoverId = null;
  for (const pick of picks) {
    if (pick.kind === 'part' && mode === 'toggle' && selection.delete(pick.refdes)) continue;
    if (pick.kind === 'part') selection.add(pick.refdes);
    if (pick.kind === 'site') selectedSiteId = pick.siteId;
    if (pick.kind === 'watch') selectedWatchId = pick.tagId;
    if (pick.kind === 'cover') selectedCoverId = pick.id;
  }
  return { ...model, selection, selectedSiteId, selectedWatchId, selectedCoverId };
}
