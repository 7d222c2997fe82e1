import { turnVector } from '../../../shared-types/geometry.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** Length of an arrow's shaft before its head where the footprint hardly moves, px. */
const LEAST_PX = 26;
const HEAD_PX = 9;

/** Where a leaning nozzle blows: an arrow from each site's middle along the heading, as long as the footprint moves. */
export const nozzleLeanLayer: Layer = {
  name: 'nozzle lean',
  inputs: ({ model, projection, theme }) => [model.document.plan.sites, model.document.plan.station, projection, theme],
  marks({ model, projection, theme }) {
    const { nozzle } = model.document.plan.station;
    if (!('tiltDeg' in nozzle) || nozzle.tiltDeg <= 0) return [];
    const shiftMm = nozzle.standOffMm * Math.tan((nozzle.tiltDeg * Math.PI) / 180);
    const along = turnVector(1, 0, nozzle.headingDeg);
    const here = model.document.plan.sites.filter((site) => site.side === projection.side);
    return here.flatMap(({ area }) => {
      const from = project(projection, area);
      const to = project(projection, { x: area.x + along.x, y: area.y + along.y });
      const perMm = Math.hypot(to.x - from.x, to.y - from.y);
      const way = { x: (to.x - from.x) / perMm, y: (to.y - from.y) / perMm };
      const long = Math.max(LEAST_PX, shiftMm * perMm);
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
