import type { Mark, Stroke } from '../drawing/marks.ts';
import { leanArrows } from '../picking/lean-tip.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

const HEAD_PX = 9;

/** Where a leaning nozzle blows: an arrow from each site's middle along the heading; its head can be dragged. */
export const nozzleLeanLayer: Layer = {
  name: 'nozzle lean',
  inputs: ({ model, projection, theme }) => [model.document.plan.sites, model.document.plan.station, projection, theme],
  marks({ model, projection, theme }) {
    const shown = { document: model.document, shownSide: projection.side };
    return leanArrows(shown, projection.zoom).flatMap(({ middle, tip }) => {
      const from = project(projection, middle);
      const to = project(projection, tip);
      const long = Math.hypot(to.x - from.x, to.y - from.y);
      const way = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
      const ink: Stroke = { colour: theme.ink, width: 2 };
      return [...arrow(from, way, long, { colour: theme.paper, width: 5 }), ...arrow(from, way, long, ink)];
    });
  },
};

function arrow(from: { x: number; y: number }, way: { x: number; y: number }, long: number, stroke: Stroke): Mark[] {
  const at = (along: number, across: number) => [
    from.x + way.x * along - way.y * across,
    from.y + way.y * along + way.x * across,
  ];
  const tip = at(long, 0);
  return [
    { kind: 'line', points: [...at(0, 0), ...tip], stroke },
    { kind: 'line', points: [...at(long - HEAD_PX, HEAD_PX / 2), ...tip, ...at(long - HEAD_PX, -HEAD_PX / 2)], stroke },
  ];
}
