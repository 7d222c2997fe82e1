import type { Cover } from '../../../shared-types/board.ts';
import type { TurnedRectangle } from '../../../shared-types/geometry.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { areaShape, crispArea } from '../drawing/outline.ts';
import { closed, measured } from '../drawing/strokes.ts';
import type { Scene } from '../scene.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

export const coverArea = (cover: Cover): TurnedRectangle => ({
  x: cover.x,
  y: cover.y,
  lengthMm: cover.lengthMm,
  widthMm: cover.widthMm,
  turnDeg: cover.turn,
});

/** Cans, frames and stiffeners: an edge with teeth pointing inwards, so that the parts under them stay readable. */
export const coverLayer: Layer = {
  name: 'covers',
  inputs: ({ model, projection, theme }) => [model.document.board.covers, projection, theme],
  marks(scene) {
    const { model, projection } = scene;
    return model.document.board.covers
      .filter((cover) => cover.side === projection.side)
      .flatMap((cover) => coverMarks(cover, scene));
  },
};

const TOOTH_PX = { can: 4, frame: 3, stiffener: 7 };
const TOOTH_APART_PX = 7;

function coverMarks(cover: Cover, { projection, theme }: Scene): Mark[] {
  const area = coverArea(cover);
  const stroke: Stroke = { colour: theme.softInk, width: 1.5 };
  const marks: Mark[] = [{ ...areaShape(area, projection, 2), stroke }];
  const ring = measured(closed(crispArea(area, projection, 2)));
  const centre = project(projection, area);
  const tooth = Math.min(TOOTH_PX[cover.kind], (Math.min(cover.lengthMm, cover.widthMm) * projection.zoom) / 4);
  const count = Math.floor(ring.length / TOOTH_APART_PX);
  for (let i = 0; i < count && count < 4000; i++) {
    const at = ring.at(((i + 0.5) / count) * ring.length);
    const inward = Math.sign((centre.x - at.x) * at.dy - (centre.y - at.y) * at.dx) || 1;
    const points = [at.x, at.y, at.x + inward * at.dy * tooth, at.y - inward * at.dx * tooth];
    marks.push({ kind: 'line', points, stroke: { ...stroke, width: 1 } });
  }
  return marks;
}
