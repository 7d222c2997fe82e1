import { bodyOf, type Part } from '../../../shared-types/board.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { areaPixels, areaShape, boxOfPixels, grown } from '../drawing/outline.ts';
import { grippedArea, gripsOf } from '../picking/grips.ts';
import { carriedOf, partsByName, type Scene } from '../scene.ts';
import { project } from '../view/projection.ts';
import { coverArea } from './covers.ts';
import { labelPlace } from './labels.ts';
import type { Layer } from './layer.ts';
import { onTheWay, placedMarks, sizeMarks } from './sketches.ts';

/** What is picked: selected parts in the accent, 2 px. */
export const selectionLayer: Layer = {
  name: 'selection',
  inputs: (scene) => [
    scene.model.selection,
    scene.model.selectedCoverId,
    scene.model.document.board.covers,
    scene.model.document.board.parts,
    scene.projection,
    scene.theme,
    carriedOf(scene)?.names,
  ],
  marks(scene) {
    const { model, projection, theme } = scene;
    const parts = partsByName(model.document.board.parts);
    const chosen = [...model.selection].flatMap((refdes) => parts.get(refdes) ?? []);
    const carried = carriedOf(scene)?.names;
    const shown = chosen.filter((part) => part.side === projection.side && !carried?.has(part.refdes));
    const stroke = { colour: theme.accent, width: 2 };
    const marks = [...coverOutline(scene, stroke), ...shown.map((part) => outline(part, 3, stroke, scene))];
    return shown.length > 12 ? marks : [...marks, ...shown.flatMap((part) => outsideLabel(part, 'accent-halo', scene))];
  },
};

function coverOutline({ model, projection }: Scene, stroke: Stroke): Mark[] {
  const cover = model.document.board.covers.find((one) => one.id === model.selectedCoverId);
  if (!cover || cover.side !== projection.side) return [];
  return [{ ...areaShape(grown(coverArea(cover), projection, 3), projection, 2), stroke }];
}

/** What lies under the pointer: a thin accent line and its name. */
export const hoverLayer: Layer = {
  name: 'hover',
  inputs: ({ model, hover, projection, theme }) => [
    hover?.kind === 'part' || hover?.kind === 'cover' ? JSON.stringify(hover) : null,
    model.document.board,
    model.selection,
    projection,
    theme,
  ],
  marks(scene) {
    const { model, hover, projection, theme } = scene;
    const stroke: Stroke = { colour: theme.accent, width: 1 };
    if (hover?.kind === 'cover') {
      const cover = model.document.board.covers.find((one) => one.id === hover.id);
      return cover ? [{ ...areaShape(grown(coverArea(cover), projection, 2), projection, 1), stroke }] : [];
    }
    const part = hover?.kind === 'part' ? partsByName(model.document.board.parts).get(hover.refdes) : undefined;
    if (!part || part.side !== projection.side || model.selection.has(part.refdes)) return [];
    return [outline(part, 2, stroke, scene), ...outsideLabel(part, 'halo', scene)];
  },
};

function outline(part: Part, byPx: number, stroke: Stroke, { projection }: Scene): Mark {
  if (part.package.shape === 'round') {
    const radius = Math.max(4, (part.package.lengthMm * projection.zoom) / 2) + byPx;
    return { kind: 'circle', ...project(projection, part), radius, stroke };
  }
  return { ...areaShape(grown(bodyOf(part), projection, byPx, 8 + 2 * byPx), projection, stroke.width), stroke };
}

/** The designator under the body when there is no room for it inside. */
function outsideLabel(part: Part, face: 'halo' | 'accent-halo', { model, projection }: Scene): Mark[] {
  if (model.layers.labels && labelPlace(part, projection)) return [];
  const box = boxOfPixels(areaPixels(grown(bodyOf(part), projection, 3, 10), projection));
  return [{ kind: 'text', x: (box.minX + box.maxX) / 2, y: box.maxY + 10, text: part.refdes, face, align: 'centre' }];
}

/** Handles of the selected rework area, and what a gesture draws while it lasts. */
export const gestureLayer: Layer = {
  name: 'gesture',
  inputs: ({ model, sketch, projection, theme }) => [
    model.document.plan.sites,
    model.selectedSiteId,
    model.selectedCoverId,
    model.document.board.covers,
    model.boardOpen,
    model.placing,
    model.shownSide,
    model.tool,
    sketch,
    projection,
    theme,
  ],
  marks: (scene) => [...gripMarks(scene), ...sketchMarks(scene)],
};

function gripMarks({ model, projection, theme }: Scene): Mark[] {
  const area = grippedArea(model);
  if (!area || model.tool !== 'select') return [];
  const fill = { colour: theme.paper };
  const stroke: Stroke = { colour: theme.accent, width: 1.5 };
  const marks: Mark[] = [];
  for (const { grip, at } of gripsOf(area, (point) => project(projection, point))) {
    const x = Math.round(at.x);
    const y = Math.round(at.y);
    if (grip.kind === 'turn') marks.push({ kind: 'circle', x, y, radius: 5, fill, stroke });
    else marks.push({ kind: 'rectangle', x: x - 4, y: y - 4, width: 8, height: 8, fill, stroke });
  }
  return marks;
}

function sketchMarks(scene: Scene): Mark[] {
  const { sketch, projection, theme } = scene;
  if (sketch?.kind === 'carried') return onTheWay(sketch, scene);
  if (sketch?.kind === 'ghost' || sketch?.kind === 'bodies') return placedMarks(sketch, scene);
  if (sketch?.kind !== 'area') return [];
  const stroke: Stroke = { colour: theme.accent, width: 1.5 };
  const shape = areaShape(sketch.area, projection, 1.5);
  // A thin fill would make the lettering of the sheet as thin on the 2D canvas.
  if (sketch.measured) return [{ ...shape, stroke }, ...sizeMarks(sketch.area, scene)];
  return [{ ...shape, fill: { colour: theme.accent, alpha: 0.1 }, stroke }];
}
