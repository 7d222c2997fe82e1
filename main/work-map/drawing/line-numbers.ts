import { grownBox, INK, type PageBox, type PagePoint } from '../paper.ts';
import { type Ink, textBox } from './ink.ts';
import type { LabelField } from './label-field.ts';

/** A stretch of a contour that can be seen, with the words to put on it. */
export type NumberedLine = { points: readonly PagePoint[]; text: string; strong: boolean };

const SIZE = 10;
const SPACING = 240;
const SHORTEST = 26;
const STEP = 4;
/** The same number is not written twice closer than this. */
const APART = 60;

type Spot = { at: PagePoint; slope: number; along: number };

/** Places numbers into lines: upright, in a gap of the line, where the line runs level and nothing else stands. */
export function numberLines(ink: Ink, field: LabelField, lines: readonly NumberedLine[]): void {
  const placed: { text: string; at: PagePoint }[] = [];
  const repeats = (text: string, at: PagePoint) =>
    placed.some((one) => one.text === text && Math.hypot(one.at.x - at.x, one.at.y - at.y) < APART);
  for (const line of lines) {
    const face = line.strong ? 'monoStrong' : 'mono';
    const width = ink.type.width(line.text, face, SIZE);
    for (const stretch of stretches(spotsAlong(line.points))) {
      const ranked = [...stretch].sort((a, b) => cost(a, stretch) - cost(b, stretch));
      for (const spot of ranked) {
        const left = spot.at.x - width / 2;
        const box = textBox(left, spot.at.y + 0.35 * SIZE, width, SIZE);
        if (!field.isFree(grownBox(box, 1)) || repeats(line.text, spot.at)) continue;
        field.take(box);
        placed.push({ text: line.text, at: spot.at });
        knockOut(ink, box);
        ink.text(left, spot.at.y + 0.35 * SIZE, line.text, { face, size: SIZE });
        break;
      }
    }
  }
}

function knockOut(ink: Ink, box: PageBox): void {
  const tight = { x0: box.x0 - 1.5, x1: box.x1 + 1.5, y0: box.y0 + 2.4, y1: box.y1 - 2 };
  ink.box(tight, null, INK.white);
}

function spotsAlong(points: readonly PagePoint[]): Spot[] {
  const spots: Spot[] = [];
  let along = 0;
  let next = 0;
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1];
    const to = points[index];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const slope = Math.abs(to.y - from.y) / length;
    while (next <= along + length) {
      const share = (next - along) / length;
      spots.push({
        at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
        slope,
        along: next,
      });
      next += STEP;
    }
    along += length;
  }
  return along < SHORTEST ? [] : spots;
}

/** Long lines get a number every so often; each stretch one. */
function stretches(spots: readonly Spot[]): Spot[][] {
  if (spots.length === 0) return [];
  const count = Math.max(1, Math.round((spots.length * STEP) / SPACING));
  const size = Math.ceil(spots.length / count);
  return Array.from({ length: count }, (_, index) => spots.slice(index * size, (index + 1) * size)).filter(
    (stretch) => stretch.length > 0,
  );
}

function cost(spot: Spot, stretch: readonly Spot[]): number {
  const middle = (stretch[0].along + stretch[stretch.length - 1].along) / 2;
  const half = Math.max(1, (stretch[stretch.length - 1].along - stretch[0].along) / 2);
  return spot.slope + (0.6 * Math.abs(spot.along - middle)) / half;
}

/** The stretches of a closed ring that lie where `seen` says so; a ring seen whole stays one stretch. */
export function seenStretches(ring: readonly PagePoint[], seen: (point: PagePoint) => boolean): PagePoint[][] {
  const result: PagePoint[][] = [];
  let open: PagePoint[] | null = null;
  for (const point of ring) {
    if (!seen(point)) {
      open = null;
      continue;
    }
    if (open) open.push(point);
    else {
      open = [point];
      result.push(open);
    }
  }
  const [first] = result;
  const last = result[result.length - 1];
  if (result.length > 1 && seen(ring[0]) && seen(ring[ring.length - 1])) {
    result.pop();
    result[0] = [...last, ...first];
  }
  return result;
}
