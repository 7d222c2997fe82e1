import type { Site } from '../../../shared-types/plan.ts';
import { canvasWords } from '../../../shared-types/words/canvas.ts';
import { type Mark, type Stroke, textWidth } from '../drawing/marks.ts';
import { boxOfPixels, crispArea } from '../drawing/outline.ts';
import { closed, dashes, measured, withGaps } from '../drawing/strokes.ts';
import type { Scene } from '../scene.ts';
import { RING_DISTANCES_MM, ringsAround } from '../sites/rings.ts';
import { projectAll } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** Distances from the rework areas' edges, on both sides of the board: heat does not stop at the laminate. */
export const ringLayer: Layer = {
  name: 'rings',
  inputs: ({ model, projection, theme }) => [model.document.plan.sites, model.layers.rings, projection, theme],
  marks({ model, projection, theme }) {
    const { sites } = model.document.plan;
    if (!model.layers.rings || sites.length === 0) return [];
    const stroke: Stroke = { colour: theme.softInk, width: 1 };
    const areas = sites.map((site) => site.area);
    const marks = RING_DISTANCES_MM.flatMap((distance) => {
      const rings = ringsAround(areas, distance, Math.max(0.005, 0.2 / projection.zoom));
      const lines = rings.map((ring) => projectAll(projection, ring));
      return ringMarks(lines, canvasWords.ringLabel(distance), stroke);
    });
    return [...marks.filter((mark) => mark.kind === 'line'), ...marks.filter((mark) => mark.kind === 'text')];
  },
};

/** Dashed lines, one of them with the distance in a gap at its lower right. */
function ringMarks(rings: readonly number[][], text: string, stroke: Stroke): Mark[] {
  if (rings.length === 0) return [];
  const half = textWidth(text) / 2 + 4;
  const labelled = rings.reduce((best, ring) => (lowestRight(ring).score > lowestRight(best).score ? ring : best));
  return rings.flatMap((ring): Mark[] => {
    const line = measured(ring);
    const at = ring === labelled && line.length > half * 8 ? lowestRight(ring) : null;
    const pieces = at ? withGaps(line, gapsRound(at.along, half, line.length)) : [ring];
    const marks: Mark[] = pieces.flatMap((piece) =>
      dashes(piece, 6, 4).map((points): Mark => ({ kind: 'line', points, stroke })),
    );
    if (at) marks.push({ kind: 'text', x: at.x, y: at.y, text, face: 'soft-halo', align: 'centre' });
    return marks;
  });
}

/** A gap round a place on a closed line: over its seam it takes from both ends. */
function gapsRound(at: number, half: number, total: number): [number, number][] {
  const [from, to] = [at - half, at + half];
  if (from < 0)
    return [
      [0, to],
      [total + from, total],
    ];
  return to > total
    ? [
        [0, to - total],
        [from, total],
      ]
    : [[from, to]];
}

/** The place of a ring farthest to the lower right on screen, where its number stands. */
function lowestRight(ring: readonly number[]): { score: number; x: number; y: number; along: number } {
  let best = { score: -Infinity, x: 0, y: 0, along: 0 };
  let along = 0;
  for (let i = 0; i < ring.length; i += 2) {
    if (i > 0) along += Math.hypot(ring[i] - ring[i - 2], ring[i + 1] - ring[i - 1]);
    const score = ring[i] + ring[i + 1] * 1.05;
    if (score > best.score) best = { score, x: ring[i], y: ring[i + 1], along };
  }
  return best;
}

/** Rework areas: strong corners and a hairline; seen through the board, hairline only, dashed. */
export const siteLayer: Layer = {
  name: 'sites',
  inputs: ({ model, projection, theme }) => [model.document.plan.sites, model.selectedSiteId, projection, theme],
  marks(scene) {
    const { model } = scene;
    return model.document.plan.sites.flatMap((site) => siteMarks(site, site.id === model.selectedSiteId, scene));
  },
};

function siteMarks(site: Site, selected: boolean, { projection, theme }: Scene): Mark[] {
  const colour = selected ? theme.accent : theme.ink;
  const points = crispArea(site.area, projection, 1);
  const hairline: Stroke = { colour, width: 1 };
  const marks: Mark[] = [];
  if (site.side !== projection.side) {
    for (const dash of dashes(closed(points), 3, 4)) marks.push({ kind: 'line', points: dash, stroke: hairline });
  } else {
    marks.push({ kind: 'polygon', points, stroke: hairline });
    for (const corner of corners(points)) marks.push({ kind: 'line', points: corner, stroke: { colour, width: 3 } });
  }
  const box = boxOfPixels(points);
  if (site.name !== site.target || site.side !== projection.side)
    marks.push({ kind: 'text', x: box.minX, y: box.minY - 11, text: site.name, face: 'halo', align: 'left' });
  return marks;
}

/** Angle pieces at the four corners, a fifth of the shorter edge long, at most 14 px. */
function corners(points: readonly number[]): number[][] {
  const at = (index: number) => ({ x: points[2 * (index % 4)], y: points[2 * (index % 4) + 1] });
  const edges = [0, 1].map((i) => Math.hypot(at(i + 1).x - at(i).x, at(i + 1).y - at(i).y));
  const arm = Math.min(14, Math.min(...edges) / 3);
  return [0, 1, 2, 3].map((index) => {
    const tip = at(index);
    const end = (to: { x: number; y: number }) => measured([tip.x, tip.y, to.x, to.y]).at(arm);
    const first = end(at(index + 3));
    const second = end(at(index + 1));
    return [first.x, first.y, tip.x, tip.y, second.x, second.y];
  });
}
