import { useEffect, useRef } from 'react';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { mountCanvas } from '../canvas/mount-canvas.ts';
import type { App } from '../state/app.ts';
import type { CanvasHandle } from '../state/canvas-model.ts';
import { canvasModelOf, sameModel } from '../state/canvas-model-of.ts';
import { useApp } from '../state/use-app.ts';
import { recallEye } from '../state/view-memory.ts';

/** Mounts the canvas and hands it a new model whenever what it draws has changed. */
export function CanvasHost() {
  const app = useApp();
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => (host.current ? mount(app, host.current) : undefined), [app]);
  return (
    <main className="canvas-host" aria-label={words.canvas}>
      <div className="surface" ref={host} />
    </main>
  );
}

function mount(app: App, host: HTMLElement): () => void {
  let gone = false;
  let handle: CanvasHandle | null = null;
  let stop = () => {};
  void mountCanvas(host, app.bench, (zoom) => app.setView({ zoom })).then((ready) => {
    if (gone) {
      ready.destroy();
      return;
    }
    handle = ready;
    app.canvas.current = ready;
    stop = feed(app, ready);
  });
  return () => {
    gone = true;
    stop();
    app.canvas.current = null;
    handle?.destroy();
  };
}

/** One update a frame at most: several changes of state between two frames are one picture. */
function feed(app: App, canvas: CanvasHandle): () => void {
  let shown = canvasModelOf(app.store.get());
  let waiting = 0;
  canvas.update(shown);
  const eye = recallEye(app.store.get());
  if (eye) canvas.lookAt(eye);
  else canvas.fit(null);
  const draw = () => {
    waiting = 0;
    const next = canvasModelOf(app.store.get());
    if (sameModel(shown, next)) return;
    shown = next;
    canvas.update(next);
  };
  const stop = app.store.subscribe(() => {
    waiting ||= requestAnimationFrame(draw);
  });
  return () => {
    stop();
    cancelAnimationFrame(waiting);
  };
}
