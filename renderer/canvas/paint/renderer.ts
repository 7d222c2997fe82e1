import 'pixi.js/unsafe-eval';
import { autoDetectRenderer, type Renderer, Ticker } from 'pixi.js';

/** Names under which drivers without a graphics card report themselves. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** True when WebGL is refused or would be computed by the processor. */
export function graphicsInSoftware(): boolean {
  const probe = document.createElement('canvas');
  const context = probe.getContext('webgl2', { failIfMajorPerformanceCaveat: true });
  if (!context) return true;
  const info = context.getExtension('WEBGL_debug_renderer_info');
  const name = info ? String(context.getParameter(info.UNMASKED_RENDERER_WEBGL)) : '';
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return SOFTWARE.test(name);
}

export type RendererKind = 'webgl' | 'canvas';

/**
 * The renderer for this machine: WebGL on a graphics card; where WebGL would run in software, or is refused, pixi's
 * 2D canvas renderer, which is several times faster there. `wanted` forces one kind after a loss.
 */
export async function makeRenderer(
  size: { width: number; height: number },
  ratio: number,
  wanted?: RendererKind,
): Promise<Renderer> {
  const renderer = await autoDetectRenderer({
    ...size,
    resolution: ratio,
    autoDensity: true,
    antialias: true,
    backgroundAlpha: 1,
    preference: (wanted ?? (graphicsInSoftware() ? 'canvas' : 'webgl')) === 'canvas' ? ['canvas'] : ['webgl', 'canvas'],
    // Events, accessibility overlays and DOM containers of pixi stay out: the canvas has its own.
    skipExtensionImports: true,
  });
  // Pixi's own clock would wake the window sixty times a second for housekeeping; frames are drawn on demand here.
  Ticker.system.autoStart = false;
  Ticker.system.stop();
  return renderer;
}

/** Watches a WebGL context: `lost` when it did not come back within two seconds, `restored` when it did. */
export function watchContext(canvas: HTMLCanvasElement, on: { lost(): void; restored(): void }): () => void {
  let timer: number | undefined;
  const onLost = () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(on.lost, 2000);
  };
  const onRestored = () => {
    window.clearTimeout(timer);
    on.restored();
  };
  canvas.addEventListener('webglcontextlost', onLost);
  canvas.addEventListener('webglcontextrestored', onRestored);
  return () => {
    window.clearTimeout(timer);
    canvas.removeEventListener('webglcontextlost', onLost);
    canvas.removeEventListener('webglcontextrestored', onRestored);
  };
}
