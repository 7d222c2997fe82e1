import type { Renderer } from 'pixi.js';
import { makeRenderer, type RendererKind, watchContext } from './paint/renderer.ts';
import { makeStage, type Stage } from './paint/stage.ts';
import type { Scene } from './scene.ts';
import { type Camera, visibleBox } from './view/camera.ts';
import { scenePlacement } from './view/projection.ts';

/** The renderer with its canvas element and the stage on it. Survives the loss of WebGL by going on with the 2D canvas. */
export type DrawingBoard = {
  /** Draws what has changed and shows it. */
  show(scene: Scene, camera: Camera): void;
  resize(width: number, height: number, ratio: number): void;
  rendererName(): string;
  destroy(): void;
};

/** Beyond the view's edge tiles are kept drawn this far, CSS pixels, so that a pan does not open on nothing. */
const KEEP_PX = 80;

export async function makeDrawingBoard(
  host: HTMLElement,
  size: { width: number; height: number },
  ratio: number,
  onFresh: () => void,
): Promise<DrawingBoard> {
  let live = await open(host, size, ratio);
  let last = { ...size, ratio };
  let gone = false;
  const watch = () =>
    watchContext(live.renderer.canvas, {
      restored: () => {
        // What the stage holds on the graphics card is gone: draw from scratch.
        live.stage.destroy();
        live.stage = makeStage();
        onFresh();
      },
      lost: () => void fallBack(),
    });
  let unwatch = watch();
  const fallBack = async () => {
    unwatch();
    close(live);
    live = await open(host, last, last.ratio, 'canvas');
    if (gone) return close(live);
    unwatch = watch();
    live.renderer.resize(last.width, last.height, last.ratio);
    onFresh();
  };
  return {
    show(scene, camera) {
      live.stage.update(scene, visibleBox(camera, KEEP_PX));
      live.stage.place(scenePlacement(scene.projection, camera));
      live.renderer.background.color = scene.theme.canvas;
      live.renderer.render(live.stage.root);
    },
    resize(width, height, newRatio) {
      last = { width, height, ratio: newRatio };
      live.renderer.resize(width, height, newRatio);
    },
    rendererName: () => live.renderer.name,
    destroy() {
      gone = true;
      unwatch();
      close(live);
    },
  };
}

type Live = { renderer: Renderer; stage: Stage };

async function open(
  host: HTMLElement,
  size: { width: number; height: number },
  ratio: number,
  wanted?: RendererKind,
): Promise<Live> {
  const renderer = await makeRenderer({ width: size.width, height: size.height }, ratio, wanted);
  renderer.canvas.setAttribute('aria-hidden', 'true');
  host.prepend(renderer.canvas);
  return { renderer, stage: makeStage() };
}

function close({ renderer, stage }: Live): void {
  stage.destroy();
  renderer.canvas.remove();
  renderer.destroy();
}
