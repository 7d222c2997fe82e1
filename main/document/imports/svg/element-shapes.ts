import { circleShape } from '../drawing/shapes.ts';
import type { Shape } from '../drawing/types.ts';
import type { Point } from '../plane.ts';
import { userLength } from './lengths.ts';
import { arcShape, pathShapes } from './path-shapes.ts';

type Attributes = Readonly<Record<string, string>>;
export type Drawn = { readonly shapes: readonly Shape[]; readonly broken: boolean };

/** Shapes of one basic shape or path in its own axes; null for elements that draw no line. */
export function elementShapes(name: string, attributes: Attributes): Drawn | null {
  if (name === 'path') return pathShapes(attributes.d ?? '');
  const draw = Object.hasOwn(DRAWERS, name) ? DRAWERS[name] : null;
  return draw ? { shapes: draw(attributes), broken: false } : null;
}

const DRAWERS: Readonly<Record<string, (given: Attributes) => Shape[]>> = {
  line: ({ x1, y1, x2, y2 }) => [
    {
      kind: 'line',
      from: { x: userLength(x1), y: userLength(y1) },
      to: { x: userLength(x2), y: userLength(y2) },
    },
  ],
  polyline: ({ points }) => chain(pointList(points), false),
  polygon: ({ points }) => chain(pointList(points), true),
  rect: rectangle,
  circle: ({ cx, cy, r }) =>
    userLength(r) > 0 ? [circleShape({ x: userLength(cx), y: userLength(cy) }, userLength(r))] : [],
  ellipse: ({ cx, cy, rx, ry }) => {
    const [a, b] = [userLength(rx, userLength(ry)), userLength(ry, userLength(rx))];
    if (!(a > 0 && b > 0)) return [];
    const shape = circleShape({ x: userLength(cx), y: userLength(cy) }, a);
    return shape.kind === 'ellipse' ? [{ ...shape, v: { x: 0, y: b } }] : [];
  },
};

function pointList(text = ''): Point[] {
  const numbers = (text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi) ?? []).map(Number);
  return Array.from({ length: Math.floor(numbers.length / 2) }, (_, index) => ({
    x: numbers[2 * index],
    y: numbers[2 * index + 1],
  }));
}

function chain(points: readonly Point[], closed: boolean): Shape[] {
  const count = points.length - (closed ? 0 : 1);
  return Array.from({ length: Math.max(0, count) }, (_, index) => ({
    kind: 'line',
    from: points[index],
    to: points[(index + 1) % points.length],
  }));
}

/** Corners may be rounded; a missing radius is the other one, and none is larger than half the side (SVG 1.1, section 9.2). */
function rectangle(given: Attributes): Shape[] {
  const [x, y, width, height] = [given.x, given.y, given.width, given.height].map((text) => userLength(text));
  if (!(width > 0 && height > 0)) return [];
  const rx = Math.min(Math.max(0, userLength(given.rx, userLength(given.ry))), width / 2);
  const ry = Math.min(Math.max(0, userLength(given.ry, userLength(given.rx))), height / 2);
  const [right, low] = [x + width, y + height];
  const round = rx > 0 && ry > 0;
  const [cutX, cutY] = round ? [rx, ry] : [0, 0];
  const corners = [
    [x + cutX, y, right - cutX, y, right, y + cutY],
    [right, y + cutY, right, low - cutY, right - cutX, low],
    [right - cutX, low, x + cutX, low, x, low - cutY],
    [x, low - cutY, x, y + cutY, x + cutX, y],
  ];
  return corners.flatMap(([fromX, fromY, toX, toY, endX, endY]): Shape[] => {
    const to = { x: toX, y: toY };
    const side: Shape = { kind: 'line', from: { x: fromX, y: fromY }, to };
    return round ? [side, arcShape(to, [rx, ry, 0, 0, 1, endX, endY])] : [side];
  });
}
