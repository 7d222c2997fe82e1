import type { Point } from '../../../shared-types/geometry.ts';
import { canvasWords } from '../../../shared-types/words/canvas.ts';
import { overlap, type PixelBox, textBox } from '../drawing/boxes.ts';
import { type Mark, type Stroke, textWidth } from '../drawing/marks.ts';
import { dashes, measured, withGaps } from '../drawing/strokes.ts';
import { RING_DISTANCES_MM, ringsAround } from '../sites/rings.ts';
import { projectAll } from '../view/projection.ts';
import { isothermInputs, isothermNumbers } from './isotherms.ts';
import type { Layer } from './layer.ts';
import { lettered } from './lettered.ts';

/** Distances from the rework areas' edges, on both sides of the board: heat does not stop at the laminate. */
export const ringLayer: Layer = {
  name: 'rings',
  inputs: (scene) => [
    ...isothermInputs(scene),
    scene.model.document.plan.sites,
    scene.model.layers.rings,
    scene.model.lengthUnit,
  ],
  marks(scene) {
    const { model, projection, theme } = scene;
    const areas = model.document.plan.sites.map((site) => site.area);
    if (!model.layers.rings || areas.length === 0) return [];
    const stroke: Stroke = { colour: theme.softInk, width: 1 };
    const taken = [...lettered(scene), ...isothermNumbers(scene)];
    const marks = RING_DISTANCES_MM.flatMap((distance) => {
      const rings = ringsAround(areas, distance, Math.max(0.005, 0.2 / projection.zoom));
      const lines = rings.map((ring) => projectAll(projection, ring));
      return ringMarks(lines, canvasWords.ringLabel(distance, model.lengthUnit), stroke, taken);
    });
    return [...marks.filter((mark) => mark.kind === 'line'), ...marks.filter((mark) => mark.kind === 'text')];
  },
};

/** Dashed lines, one of them with the distance in a gap. */
function ringMarks(rings: readonly number[][], text: string, stroke: Stroke, taken: PixelBox[]): Mark[] {
  const half = textWidth(text) / 2 + 4;
  const place = numberPlace(
    rings.filter((ring) => measured(ring).length > half * 8),
    text,
    taken,
  );
  if (place) taken.push(textBox(place, text));
  const marks = rings.flatMap((ring): Mark[] => {
    const line = measured(ring);
    const pieces = place?.ring === ring ? withGaps(line, gapsRound(place.along, half, line.length)) : [ring];
    return pieces.flatMap((piece) => dashes(piece, 6, 4).map((points): Mark => ({ kind: 'line', points, stroke })));
  });
  if (place) marks.push({ kind: 'text', x: place.x, y: place.y, text, face: 'soft-halo', align: 'centre' });
  return marks;
}

type NumberPlace = Point & { ring: readonly number[]; along: number };

/** Lower right first, where the numbers of all rings then stand in a row; another corner when that one is taken. */
function numberPlace(
  rings: readonly (readonly number[])[],
  text: string,
  taken: readonly PixelBox[],
): NumberPlace | null {
  const corners = [
    [1, 1.05],
    [-1, 1.05],
    [1, -1.05],
    [-1, -1.05],
  ].flatMap(([x, y]) => farthest(rings, x, y) ?? []);
  const free = corners.find((at) => !taken.some((box) => overlap(box, textBox(at, text))));
  return free ?? corners[0] ?? null;
}

/** The place of the rings that lies farthest in a direction on screen. */
function farthest(rings: readonly (readonly number[])[], dx: number, dy: number): NumberPlace | null {
  let best: NumberPlace | null = null;
  let most = -Infinity;
  for (const ring of rings) {
    let along = 0;
    for (let i = 0; i < ring.length; i += 2) {
      if (i > 0) along += Math.hypot(ring[i] - ring[i - 2], ring[i + 1] - ring[i - 1]);
      const score = ring[i] * dx + ring[i + 1] * dy;
      if (score <= most) continue;
      most = score;
      best = { x: ring[i], y: ring[i + 1], ring, along };
    }
  }
  return best;
}

/** A gap round a place on a closed line: over its seam it takes from both ends. */
function gapsRound(at: number, half: number, total: number): [number, number][] {
  const from = at - half;
  const to = at + half;
  const wrapped: [number, number][] = [];
  if (from < 0) wrapped.push([0, to], [total + from, total]);
  else if (to > total) wrapped.push([0, to - total], [from, total]);
  else wrapped.push([from, to]);
  return wrapped;
}
