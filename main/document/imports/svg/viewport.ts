import { type Affine, join, moveBy, SAME, scaleBy } from '../drawing/affine.ts';
import { type Length, lengthMm, MM_PER_PIXEL, parseLength, userLength } from './lengths.ts';

type Attributes = Readonly<Record<string, string>>;

interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function viewBoxOf(text: string | undefined): ViewBox | null {
  const numbers = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x, y, width, height] = numbers;
  const sound = numbers.length === 4 && numbers.every(Number.isFinite) && width > 0 && height > 0;
  return sound ? { x, y, width, height } : null;
}

/**
 * What one user unit of the outermost element measures: said when width or height carry a unit of real size, with the
 * view box or by the pixel of 1/96 inch. Both directions count alike unless the drawing may be stretched.
 */
export function rootUnit(given: Attributes): {
  readonly mmPerUnit: number | null;
  readonly said: string;
  readonly matrix: Affine;
} {
  const box = viewBoxOf(given.viewBox);
  const [width, height] = [parseLength(given.width), parseLength(given.height)];
  const said = [width, height].find((length) => lengthMm(length) !== null)?.unit ?? '';
  if (box === null) return { mmPerUnit: said ? MM_PER_PIXEL : null, said, matrix: SAME };
  const across = ratio(width, box.width);
  const down = ratio(height, box.height);
  if (across === null && down === null) return { mmPerUnit: null, said: '', matrix: SAME };
  const stretched = /^\s*none/.test(given.preserveAspectRatio ?? '');
  if (stretched && across !== null && down !== null) {
    return { mmPerUnit: across, said, matrix: scaleBy(1, down / across) };
  }
  return { mmPerUnit: Math.min(across ?? Infinity, down ?? Infinity), said, matrix: SAME };
}

function ratio(length: Length | null, units: number): number | null {
  const mm = lengthMm(length);
  return mm !== null && mm > 0 ? mm / units : null;
}

/** The map of an `svg` element within another. */
export function innerViewport(given: Attributes): Affine {
  const move = moveBy(userLength(given.x), userLength(given.y));
  const box = viewBoxOf(given.viewBox);
  if (box === null) return move;
  const [width, height] = [userLength(given.width, box.width), userLength(given.height, box.height)];
  const [across, down] = [width / box.width, height / box.height];
  const stretched = /^\s*none/.test(given.preserveAspectRatio ?? '');
  const [sx, sy] = stretched ? [across, down] : [Math.min(across, down), Math.min(across, down)];
  // xMidYMid, the usual place of the smaller drawing in the larger frame.
  const middle = moveBy((width - box.width * sx) / 2, (height - box.height * sy) / 2);
  return join(join(join(move, middle), scaleBy(sx, sy)), moveBy(-box.x, -box.y));
}
