import { type Affine, join, moveBy, SAME, scaleBy, turnBy } from '../drawing/affine.ts';

const MAX_LENGTH = 10_000;

/** The `transform` attribute as one map (SVG 1.1, section 7.6); what is no transform counts as none. */
export function parseTransform(text: string | undefined): Affine {
  if (!text || text.length > MAX_LENGTH) return SAME;
  let matrix = SAME;
  for (const [, name, list] of text.matchAll(/(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^)]*)\)/g)) {
    const numbers = list
      .split(/[\s,]+/)
      .filter((word) => word !== '')
      .map(Number);
    if (numbers.every(Number.isFinite)) matrix = join(matrix, oneTransform(name, numbers));
  }
  return matrix;
}

function oneTransform(name: string, [a = 0, b, c, d, e, f]: readonly number[]): Affine {
  const slope = Math.tan((a * Math.PI) / 180);
  switch (name) {
    case 'matrix':
      return [a, b ?? 0, c ?? 0, d ?? 0, e ?? 0, f ?? 0];
    case 'translate':
      return moveBy(a, b ?? 0);
    case 'scale':
      return scaleBy(a, b ?? a);
    case 'rotate':
      return join(join(moveBy(b ?? 0, c ?? 0), turnBy(a)), moveBy(-(b ?? 0), -(c ?? 0)));
    case 'skewX':
      return [1, 0, slope, 1, 0, 0];
    default:
      return [1, slope, 0, 1, 0, 0];
  }
}
