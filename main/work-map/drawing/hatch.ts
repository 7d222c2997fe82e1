import type { TagGlyph } from '../../../shared-types/rules/tag-glyphs.ts';
import type { PageBox, PagePoint } from '../paper.ts';
import type { Ink } from './ink.ts';

export type Hatch = TagGlyph['hatch'];
type Segment = [PagePoint, PagePoint];

/** Parallel lines across a box: `angle` in degrees from the x axis, `pitch` apart; phase fixed to the page, so that neighbours match. */
function parallels(box: PageBox, angle: number, pitch: number): Segment[] {
  const along = { x: Math.cos((angle * Math.PI) / 180), y: Math.sin((angle * Math.PI) / 180) };
  const across = { x: -along.y, y: along.x };
  const centre = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 };
  const half = Math.hypot(box.x1 - box.x0, box.y1 - box.y0) / 2;
  const middle = centre.x * across.x + centre.y * across.y;
  const lines: Segment[] = [];
  for (let step = Math.ceil((middle - half) / pitch); step * pitch <= middle + half; step++) {
    const offset = step * pitch - middle;
    const foot = { x: centre.x + offset * across.x, y: centre.y + offset * across.y };
    lines.push([
      { x: foot.x - half * along.x, y: foot.y - half * along.y },
      { x: foot.x + half * along.x, y: foot.y + half * along.y },
    ]);
  }
  return lines;
}

const ANGLES: Record<Exclude<Hatch, 'dots' | 'none'>, readonly number[]> = {
  diagonal: [-45],
  horizontal: [0],
  vertical: [90],
  cross: [-45, 45],
};

/** Fills the inside of the polygons (even-odd) with a hatch: clip plus lines, as tiling patterns show seams in print. */
export function hatchPolygons(
  ink: Ink,
  polygons: readonly (readonly PagePoint[])[],
  hatch: Hatch,
  options: { colour: string; pitch?: number; width?: number },
): void {
  if (hatch === 'none' || polygons.length === 0) return;
  const { colour, pitch = 2.4, width = 0.5 } = options;
  const all = polygons[0];
  const box = {
    x0: Math.min(...all.map((p) => p.x)),
    x1: Math.max(...all.map((p) => p.x)),
    y0: Math.min(...all.map((p) => p.y)),
    y1: Math.max(...all.map((p) => p.y)),
  };
  ink.clipped(polygons, () => {
    if (hatch === 'dots') dots(ink, box, colour, pitch * 1.15);
    else
      for (const angle of ANGLES[hatch])
        for (const [from, to] of parallels(box, angle, pitch)) ink.segment(from, to, { width, colour });
  });
}

function dots(ink: Ink, box: PageBox, colour: string, pitch: number): void {
  for (let row = Math.floor(box.y0 / pitch); row * pitch <= box.y1; row++)
    for (let column = Math.floor(box.x0 / pitch); column * pitch <= box.x1; column++)
      ink.circle({ x: (column + (row % 2 ? 0.5 : 0)) * pitch, y: row * pitch }, 0.2 * pitch, null, colour);
}
