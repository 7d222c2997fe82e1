import type { Site } from '../../../shared-types/plan.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { boxOfPixels, crispArea } from '../drawing/outline.ts';
import { closed, dashes, measured } from '../drawing/strokes.ts';
import type { Scene } from '../scene.ts';
import type { Layer } from './layer.ts';

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
