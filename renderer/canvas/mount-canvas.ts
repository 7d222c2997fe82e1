import { insidePolygon, type Point } from '../../shared-types/geometry.ts';
import { canvasWords } from '../../shared-types/words/canvas.ts';
import type { CanvasHandle, CanvasModel, MountCanvas, Pick, Workbench } from '../state/canvas-model.ts';
import type { Sketch } from '../tools/tool.ts';
import { toolHost } from '../tools/tool-host.ts';
import { type DrawingBoard, makeDrawingBoard } from './drawing-board.ts';
import { type Furniture, makeFurniture } from './furniture/furniture.ts';
import { type Lens, makeLens } from './furniture/lens.ts';
import { shownMap, temperatureAt } from './heat/shown-field.ts';
import { listen } from './input.ts';
import { loadFonts } from './paint/lettering.ts';
import { runEffects } from './run-effects.ts';
import type { Scene } from './scene.ts';
import { themeOf } from './theme.ts';
import { pickOnScreen, type Shown, toolViewOf } from './tool-view.ts';
import { type Camera, clampZoom, fitBox, panBy, toBoard, toScreen, zoomAt } from './view/camera.ts';
import type { Projection } from './view/projection.ts';
import { boardBox, firstCamera, followModel, followView, nextProjection, outlineOf, sees } from './view/view-state.ts';

/** A zoom counts as at rest after this long without another step, ms. */
const ZOOM_REST_MS = 90;
/** A drawing that took no longer than this is made anew on every step of a zoom, ms. */
const QUICK_MS = 7;

/** Everything that changes while the canvas lives. */
type Live = {
  model: CanvasModel;
  camera: Camera;
  projection: Projection | null;
  hover: Pick | null;
  sketch: Sketch | null;
  /** The sketch is on the drawing itself, not only in a lens. */
  sketchDrawn: boolean;
  zoomRestsAt: number;
  lastDrawMs: number;
};

export const mountCanvas: MountCanvas = async (host, workbench, onView) => {
  const surface = makeSurface(host);
  await loadFonts();
  const live = startingState(workbench, surface);
  let frame = 0;
  const wake = () => {
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      draw();
    });
  };
  const board = await makeDrawingBoard(surface, live.camera, window.devicePixelRatio, () => {
    live.projection = null;
    wake();
  });
  const furniture = makeFurniture(surface);
  const lens = makeLens(surface);
  const draw = () => {
    const settled = drawFrame(live, board, furniture);
    if (!settled) wake();
  };
  const setCamera = (camera: Camera) => {
    const zoomed = camera.zoom !== live.camera.zoom;
    live.camera = camera;
    if (zoomed) live.zoomRestsAt = performance.now() + (live.lastDrawMs > QUICK_MS ? ZOOM_REST_MS : 0);
    wake();
    if (zoomed) onView(camera.zoom);
  };
  const tools = connectTools(live, workbench, { furniture, lens, setCamera, wake });
  const stopListening = listenTo(surface, live, workbench, tools, wake);
  const stopSizing = followSize(surface, live, board, () => {
    draw();
    onView(live.camera.zoom);
  });
  draw();
  onView(live.camera.zoom);
  return handleOf({ surface, live, board, furniture, tools, setCamera, wake }, () => {
    cancelAnimationFrame(frame);
    frame = -1;
    stopListening();
    stopSizing();
  });
};

function makeSurface(host: HTMLElement): HTMLElement {
  const surface = document.createElement('div');
  surface.className = 'hm-canvas';
  surface.tabIndex = 0;
  surface.setAttribute('role', 'application');
  surface.setAttribute('aria-label', canvasWords.label);
  host.append(surface);
  return surface;
}

function startingState(workbench: Workbench, surface: HTMLElement): Live {
  const model = workbench.model();
  return {
    model,
    camera: firstCamera(model, Math.max(1, surface.clientWidth), Math.max(1, surface.clientHeight)),
    projection: null,
    hover: null,
    sketch: null,
    sketchDrawn: false,
    zoomRestsAt: 0,
    lastDrawMs: 0,
  };
}

/** Draws one frame; false: a zoom is still under way and another frame must follow. */
function drawFrame(live: Live, board: DrawingBoard, furniture: Furniture): boolean {
  const { model, camera, hover, sketch } = live;
  const settled = performance.now() >= live.zoomRestsAt;
  const projection = nextProjection(live.projection, camera, model, window.devicePixelRatio, settled);
  const scene: Scene = { model, projection, theme: themeOf(model.theme), hover, sketch };
  const start = performance.now();
  board.show(scene, camera);
  if (projection !== live.projection) live.lastDrawMs = performance.now() - start;
  live.projection = projection;
  furniture.update(model, camera.zoom);
  return settled;
}

/** The lie of the board as the eye has it now, also in the middle of a zoom: what pointers are measured against. */
const shownNow = ({ model, camera, projection }: Live): Shown => ({
  model,
  camera,
  projection: nextProjection(projection, camera, model, window.devicePixelRatio, true),
});

/** What tools' effects reach. */
type Reached = { furniture: Furniture; lens: Lens; setCamera: (camera: Camera) => void; wake: () => void };

function connectTools(live: Live, workbench: Workbench, { furniture, lens, setCamera, wake }: Reached) {
  const view = toolViewOf(() => shownNow(live), workbench);
  return toolHost(view, (effects) =>
    runEffects(effects, workbench, {
      pan: (dx, dy) => setCamera(panBy(live.camera, dx, dy)),
      zoomAt: (at, factor) => setCamera(zoomAt(live.camera, at, factor)),
      sketch: (sketch) => {
        live.sketch = sketch;
        furniture.marquee(sketch);
        lens.show(sketch, live.model, live.camera);
        // A lens alone changes nothing on the drawing.
        if (sketch?.kind !== 'lens' || live.sketchDrawn) wake();
        live.sketchDrawn = sketch !== null && sketch.kind !== 'lens';
      },
    }),
  );
}

function listenTo(
  surface: HTMLElement,
  live: Live,
  workbench: Workbench,
  tools: ReturnType<typeof toolHost>,
  wake: () => void,
): () => void {
  return listen(surface, {
    tools,
    toBoard: (screen) => toBoard(live.camera, screen),
    hovered(screen, touch) {
      const pick = screen && !touch ? pickOnScreen(shownNow(live), screen, false) : null;
      if (JSON.stringify(pick) !== JSON.stringify(live.hover)) wake();
      live.hover = pick;
      const at = screen && toBoard(live.camera, screen);
      const over = at && insidePolygon(at, outlineOf(live.model.document.board.outline)) ? at : null;
      workbench.hover(over, over && temperatureShown(live.model, over), pick);
    },
    openMenu: (screen, page) => workbench.openMenu(pickOnScreen(shownNow(live), screen, false), page),
    settled(screen) {
      surface.style.cursor = tools.cursor(screen);
    },
  });
}

function temperatureShown(model: CanvasModel, at: Point): number | null {
  const map = shownMap(model);
  return map && temperatureAt(map.fields[model.shownSide], map.grid, at);
}

/** Follows the host's size and the pixel ratio of the screen. */
function followSize(surface: HTMLElement, live: Live, board: DrawingBoard, draw: () => void): () => void {
  const resize = () => {
    const width = Math.max(1, surface.clientWidth);
    const height = Math.max(1, surface.clientHeight);
    const first = live.camera.width <= 1 || live.camera.height <= 1;
    live.camera = first ? firstCamera(live.model, width, height) : followView(live.camera, live.model, width, height);
    board.resize(width, height, window.devicePixelRatio);
    draw();
  };
  const observer = new ResizeObserver(resize);
  observer.observe(surface);
  let media = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
  const ratioChanged = () => {
    media.removeEventListener('change', ratioChanged);
    media = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
    media.addEventListener('change', ratioChanged);
    resize();
  };
  media.addEventListener('change', ratioChanged);
  return () => {
    observer.disconnect();
    media.removeEventListener('change', ratioChanged);
  };
}

type Parts = {
  surface: HTMLElement;
  live: Live;
  board: DrawingBoard;
  furniture: Furniture;
  tools: ReturnType<typeof toolHost>;
  setCamera: (camera: Camera) => void;
  wake: () => void;
};

function handleOf({ surface, live, board, furniture, tools, setCamera, wake }: Parts, stop: () => void): CanvasHandle {
  surface.dataset.theme = live.model.theme;
  return {
    update(model) {
      const before = live.model.document.board;
      const after = model.document.board;
      // Another board, not an edit of this one: an edit leaves either the outline or the parts as they were.
      const otherBoard = before.outline !== after.outline && before.parts !== after.parts;
      live.model = model;
      setCamera(
        otherBoard ? fitBox(followModel(live.camera, model), boardBox(model)) : followModel(live.camera, model),
      );
      surface.dataset.theme = model.theme;
      tools.modelChanged();
      wake();
    },
    fit: (box) => setCamera(fitBox(live.camera, box ?? boardBox(live.model))),
    zoomBy: (factor) => setCamera(zoomAt(live.camera, { x: live.camera.width / 2, y: live.camera.height / 2 }, factor)),
    eye: () =>
      sees(live.camera, boardBox(live.model)) ? null : { centre: live.camera.centre, zoom: live.camera.zoom },
    lookAt: ({ centre, zoom }) => setCamera({ ...live.camera, centre, zoom: clampZoom(zoom) }),
    focus: () => surface.focus({ preventScroll: true }),
    zoom: () => live.camera.zoom,
    toScreen: (at) => toScreen(live.camera, at),
    rendererName: () => board.rendererName(),
    destroy() {
      stop();
      board.destroy();
      furniture.destroy();
      surface.remove();
    },
  };
}
