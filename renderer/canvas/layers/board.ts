import { photoShown } from '../../photos/shown-photos.ts';
import type { Mark } from '../drawing/marks.ts';
import { contourPixels } from '../drawing/outline.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** The laminate: flat paper in the board's outline, cutouts left open. */
export const substrateLayer: Layer = {
  name: 'substrate',
  inputs: ({ model, projection, theme }) => [
    model.document.board.outline,
    model.document.board.cutouts,
    projection,
    theme,
  ],
  marks({ model, projection, theme }) {
    const { outline, cutouts } = model.document.board;
    return [
      {
        kind: 'polygon',
        points: contourPixels(outline, projection),
        holes: cutouts.map((cutout) => contourPixels(cutout, projection)),
        fill: { colour: theme.board },
      },
    ];
  },
};

/** Edges of the board and its fiducials, over the heat map. */
export const edgeLayer: Layer = {
  name: 'edges',
  inputs: ({ model, projection, theme }) => {
    const { outline, cutouts, fiducials } = model.document.board;
    return [outline, cutouts, fiducials, projection, theme, photoShown(model)];
  },
  marks({ model, projection, theme }) {
    const { outline, cutouts, fiducials } = model.document.board;
    const edge = { colour: theme.ink, width: 1.5 };
    const marks: Mark[] = [];
    // A paper rim, so that the edge is read on a dark photo.
    if (photoShown(model)) {
      const rim = { colour: theme.paper, width: 4.5, alpha: 0.85 };
      for (const contour of [outline, ...cutouts])
        marks.push({ kind: 'polygon', points: contourPixels(contour, projection), stroke: rim });
    }
    marks.push({ kind: 'polygon', points: contourPixels(outline, projection), stroke: edge });
    for (const cutout of cutouts)
      marks.push({ kind: 'polygon', points: contourPixels(cutout, projection), stroke: { ...edge, width: 1 } });
    for (const fiducial of fiducials) {
      if (fiducial.side !== projection.side) continue;
      const { x, y } = project(projection, fiducial);
      // A usual fiducial: 1 mm of copper in a 2 mm clearing.
      const radius = Math.max(1.5, 0.5 * projection.zoom);
      marks.push({ kind: 'circle', x, y, radius, fill: { colour: theme.softInk } });
      marks.push({ kind: 'circle', x, y, radius: radius * 2, stroke: { colour: theme.softInk, width: 1 } });
    }
    return marks;
  },
};
