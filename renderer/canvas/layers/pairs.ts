import { mapPoint } from '../../../shared-types/rules/plane-maps.ts';
import { placeOf, suspectsOf } from '../../photos/place-of.ts';
import { matchedPhoto } from '../../tools/match-points.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import type { Scene } from '../scene.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

const CROSS_PX = 7;
const RING_PX = 6;

/**
 * Match pairs of the photo that is being worked on: a ring on the photo's point, a cross on the drawing's, and what is left between them.
 * A pair that does not go with the others carries a second ring and a mark.
 */
export const pairLayer: Layer = {
  name: 'pairs',
  inputs: ({ model, sketch, projection, theme }) => [
    model.photoId,
    model.pairId,
    model.document.board.photos,
    model.document.board.outline,
    sketch?.kind === 'pair' ? sketch : null,
    projection,
    theme,
  ],
  marks: (scene) => [...pairMarks(scene), ...sketchMarks(scene)],
};

function pairMarks({ model, projection, theme }: Scene): Mark[] {
  const photo = matchedPhoto(model);
  if (!photo) return [];
  const { board } = model.document;
  const { toBoard } = placeOf(photo, board);
  const suspects = new Set(suspectsOf(photo, board).map(({ index }) => index));
  const marks: Mark[] = [];
  photo.pairs.forEach((pair, index) => {
    const chosen = pair.id === model.pairId;
    const on = project(projection, pair.board);
    const from = project(projection, mapPoint(toBoard, pair.photo));
    const stroke: Stroke = { colour: theme.accent, width: chosen ? 2.5 : 1.5 };
    const ground: Stroke = { colour: theme.paper, width: stroke.width + 3, alpha: 0.85 };
    const rings = suspects.has(index) ? [RING_PX, RING_PX + 4] : [RING_PX];
    for (const pen of [ground, stroke]) {
      for (const radius of rings) marks.push({ kind: 'circle', ...from, radius, stroke: pen });
      marks.push(...cross(on, pen), { kind: 'line', points: [from.x, from.y, on.x, on.y], stroke: pen });
    }
    const text = `${index + 1}${suspects.has(index) ? ' !' : ''}`;
    marks.push({
      kind: 'text',
      x: on.x + CROSS_PX + 4,
      y: on.y - CROSS_PX - 3,
      text,
      face: 'accent-halo',
      align: 'left',
    });
  });
  return marks;
}

const cross = ({ x, y }: { x: number; y: number }, stroke: Stroke): Mark[] => [
  { kind: 'line', points: [x - CROSS_PX, y, x + CROSS_PX, y], stroke },
  { kind: 'line', points: [x, y - CROSS_PX, x, y + CROSS_PX], stroke },
];

/** The pair that is being made or dragged. */
function sketchMarks({ sketch, projection, theme }: Scene): Mark[] {
  if (sketch?.kind !== 'pair') return [];
  const stroke: Stroke = { colour: theme.accent, width: 1.5 };
  const ground: Stroke = { colour: theme.paper, width: 4.5, alpha: 0.85 };
  const from = project(projection, sketch.from);
  const to = sketch.to && project(projection, sketch.to);
  return [ground, stroke].flatMap((pen): Mark[] => [
    { kind: 'circle', ...from, radius: RING_PX, stroke: pen },
    ...(to ? [...cross(to, pen), { kind: 'line' as const, points: [from.x, from.y, to.x, to.y], stroke: pen }] : []),
    ...(to && sketch.snapped
      ? [{ kind: 'rectangle' as const, x: to.x - 9, y: to.y - 9, width: 18, height: 18, stroke: pen }]
      : []),
  ]);
}
