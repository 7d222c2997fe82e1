import { bodyOf, ownToBoard, type Part } from '../../../shared-types/board.ts';
import type { PartState } from '../../../shared-types/evaluation.ts';
import { rectangleCorners } from '../../../shared-types/geometry.ts';
import { INK, type PageBox, type PagePoint } from '../paper.ts';
import type { Ink } from './ink.ts';
import type { View } from './view.ts';

/** How a part is outlined: the three states, the wave of joints that melt, dots for an empty position. */
export type OutlineKind = PartState | 'reflow' | 'empty';

export type PartShape = { polygon: PagePoint[]; round: { centre: PagePoint; radius: number } | null; box: PageBox };

/** A part's body on the page. */
export function shapeOf(part: Part, view: View): PartShape {
  const centre = view.toPage(part);
  const round = part.package.shape === 'round';
  const perMm = view.scale * (72 / 25.4);
  const radius = (Math.max(part.package.lengthMm, part.package.widthMm) / 2) * perMm;
  const polygon = round ? circlePoints(centre, radius) : rectangleCorners(bodyOf(part)).map(view.toPage);
  const xs = polygon.map((point) => point.x);
  const ys = polygon.map((point) => point.y);
  const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
  return { polygon, round: round ? { centre, radius } : null, box };
}

const circlePoints = (centre: PagePoint, radius: number): PagePoint[] =>
  Array.from({ length: 36 }, (_, i) => ({
    x: centre.x + radius * Math.cos((i * Math.PI) / 18),
    y: centre.y + radius * Math.sin((i * Math.PI) / 18),
  }));

/** The polygon moved outwards by `by` points (convex polygons; corners mitred). */
export function outset(polygon: readonly PagePoint[], by: number): PagePoint[] {
  const centre = {
    x: polygon.reduce((sum, p) => sum + p.x, 0) / polygon.length,
    y: polygon.reduce((sum, p) => sum + p.y, 0) / polygon.length,
  };
  return polygon.map((point, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length];
    const after = polygon[(index + 1) % polygon.length];
    const first = normalAway(before, point, centre);
    const second = normalAway(point, after, centre);
    const both = { x: first.x + second.x, y: first.y + second.y };
    const scale = (2 * by) / Math.max(0.2, both.x * both.x + both.y * both.y);
    return { x: point.x + both.x * scale, y: point.y + both.y * scale };
  });
}

function normalAway(from: PagePoint, to: PagePoint, centre: PagePoint): PagePoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const normal = { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
  const outwards = (from.x - centre.x) * normal.x + (from.y - centre.y) * normal.y >= 0;
  return outwards ? normal : { x: -normal.x, y: -normal.y };
}

/** The same on a round body: whole waves round it. */
function roundWave({ centre, radius }: { centre: PagePoint; radius: number }): PagePoint[] {
  const waves = Math.max(6, Math.round((2 * Math.PI * radius) / 3));
  const height = radius < 6 ? 0.5 : 0.8;
  return Array.from({ length: waves * 6 }, (_, step) => {
    const angle = (2 * Math.PI * step) / (waves * 6);
    const reach = radius + height * Math.sin(waves * angle);
    return { x: centre.x + reach * Math.cos(angle), y: centre.y + reach * Math.sin(angle) };
  });
}

const shortestEdge = (polygon: readonly PagePoint[]): number =>
  Math.min(
    ...polygon.map((from, index) => {
      const to = polygon[(index + 1) % polygon.length];
      return Math.hypot(to.x - from.x, to.y - from.y);
    }),
  );

/** A closed wave along a polygon: whole waves per edge, so that the corners meet; finer on small bodies. */
export function wave(polygon: readonly PagePoint[]): PagePoint[] {
  const small = shortestEdge(polygon) < 12;
  const length = small ? 2.4 : 3.4;
  const height = small ? 0.5 : 0.8;
  const points: PagePoint[] = [];
  polygon.forEach((from, index) => {
    const to = polygon[(index + 1) % polygon.length];
    const edge = Math.hypot(to.x - from.x, to.y - from.y);
    const waves = Math.max(1, Math.round(edge / length));
    const steps = waves * 6;
    for (let step = 0; step < steps; step++) {
      const share = step / steps;
      const away = height * Math.sin(2 * Math.PI * waves * share);
      points.push({
        x: from.x + (to.x - from.x) * share + (edge ? ((to.y - from.y) / edge) * away : 0),
        y: from.y + (to.y - from.y) * share - (edge ? ((to.x - from.x) / edge) * away : 0),
      });
    }
  });
  return points;
}

/** Draws a body, filled where a fill is given, with the outline of its state. Tall bodies carry a heavier edge. */
export function drawPart(
  ink: Ink,
  part: Part,
  shape: PartShape,
  kind: OutlineKind,
  faint = false,
  fill?: string,
): void {
  const tall = (part.package.heightMm ?? 0) >= 5;
  const colour = faint ? INK.faint : INK.part;
  if (kind === 'empty') ink.polygon(shape.polygon, { width: 0.6, colour: INK.faint, dash: [0.7, 1.4] });
  else if (kind === 'over') {
    ink.polygon(outset(shape.polygon, 2), { width: 0.9 }, fill);
    ink.polygon(shape.polygon, { width: 0.9 });
  } else if (kind === 'unsure') ink.polygon(shape.polygon, { width: 1, dash: [2.6, 1.6] }, fill);
  else if (kind === 'reflow')
    ink.polygon(shape.round ? roundWave(shape.round) : wave(shape.polygon), { width: 0.6 }, fill);
  else ink.polygon(shape.polygon, { width: tall ? 1.1 : 0.55, colour }, fill);
}

/** Pin 1 as a small filled triangle in its corner, where it is known and there is room for it. */
export function drawPinOne(ink: Ink, part: Part, view: View): void {
  if (!part.pin1 || Math.min(part.package.lengthMm, part.package.widthMm) * view.scale < 4) return;
  const inward = 0.82;
  const at = view.toPage(ownToBoard(part, { x: part.pin1.x * inward, y: part.pin1.y * inward }));
  ink.circle(at, 1.1, null, INK.black);
}
