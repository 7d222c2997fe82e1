import { derivativeAt } from '../../../shared-types/rules/plane-maps.ts';
import { photoWords } from '../../../shared-types/words/window/photo.ts';
import { placeOf } from '../../photos/place-of.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';
import type { Sketch } from '../../tools/tool.ts';
import { cssColour, themeOf } from '../theme.ts';
import { type Camera, linearOf } from '../view/camera.ts';

const SIZE_PX = 152;
const AWAY_PX = 28;
/** Screen pixels for a pixel of the picture, and at least so many times the drawing. */
const PIXEL_PX = 3;
const LEAST_TIMES = 3;

export type Lens = { show(sketch: Sketch | null, model: CanvasModel, camera: Camera): void; destroy(): void };

/** A magnifier beside the pointer: the photo under it as it lies, with a cross at the point that would be taken. */
export function makeLens(host: HTMLElement): Lens {
  const canvas = document.createElement('canvas');
  canvas.className = 'hm-canvas-lens';
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', photoWords.lens);
  canvas.hidden = true;
  host.append(canvas);
  return {
    show(sketch, model, camera) {
      const lens = sketch?.kind === 'lens' || sketch?.kind === 'pair' ? sketch.lens : null;
      canvas.hidden = !lens || !draw(canvas, lens, model, camera);
      if (!lens || canvas.hidden) return;
      const { x, y } = lens.screen;
      const left = x + AWAY_PX + SIZE_PX > camera.width ? x - AWAY_PX - SIZE_PX : x + AWAY_PX;
      const top = y - AWAY_PX - SIZE_PX < 0 ? y + AWAY_PX : y - AWAY_PX - SIZE_PX;
      canvas.style.transform = `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
    },
    destroy: () => canvas.remove(),
  };
}

type Spot = NonNullable<Extract<Sketch, { kind: 'lens' }>['lens']>;

/** False: the picture is not there. */
function draw(canvas: HTMLCanvasElement, { photoId, at }: Spot, model: CanvasModel, camera: Camera): boolean {
  const photo = model.document.board.photos.find((one) => one.id === photoId);
  const levels = photo && model.pictures.get(photo.working.sha256);
  const context = canvas.getContext('2d');
  if (!photo || !levels || levels === 'missing' || !context) return false;
  const ratio = window.devicePixelRatio;
  const side = Math.round(SIZE_PX * ratio);
  if (canvas.width !== side) canvas.width = canvas.height = side;
  const [picture] = levels;
  const perPixel = photo.widthPx / picture.width;
  const { a, b, c, d } = linearOf(camera);
  const slopes = derivativeAt(placeOf(photo, model.document.board).toBoard, at);
  const [xx, xy, yx, yy] = slopes.map((value) => value * perPixel);
  const seen = [a * xx + c * yx, b * xx + d * yx, a * xy + c * yy, b * xy + d * yy];
  const size = Math.sqrt(Math.abs(seen[0] * seen[3] - seen[1] * seen[2]));
  const times = Math.max(LEAST_TIMES, PIXEL_PX / size) * ratio;
  const theme = themeOf(model.theme);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = cssColour(theme.canvas);
  context.fillRect(0, 0, side, side);
  context.setTransform(seen[0] * times, seen[1] * times, seen[2] * times, seen[3] * times, side / 2, side / 2);
  context.imageSmoothingEnabled = true;
  context.drawImage(picture, -at.x / perPixel, -at.y / perPixel);
  context.setTransform(1, 0, 0, 1, 0, 0);
  drawCross(context, side, ratio, [cssColour(theme.paper), cssColour(theme.accent)]);
  return true;
}

function drawCross(context: CanvasRenderingContext2D, side: number, ratio: number, colours: [string, string]): void {
  const middle = side / 2;
  colours.forEach((colour, index) => {
    context.strokeStyle = colour;
    context.lineWidth = (index === 0 ? 4 : 1.5) * ratio;
    context.beginPath();
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ]) {
      context.moveTo(middle + dx * 5 * ratio, middle + dy * 5 * ratio);
      context.lineTo(middle + dx * 22 * ratio, middle + dy * 22 * ratio);
    }
    context.stroke();
  });
}
