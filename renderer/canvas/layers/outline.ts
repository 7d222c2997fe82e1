import { edgesOf, middleOf } from '../../../shared-types/contour/edges.ts';
import { type Contour, type Corner, flattenContour, type Point } from '../../../shared-types/geometry.ts';
import { contourFaultSentence, outlineWords } from '../../../shared-types/words/window/outline.ts';
import { edgeFigures } from '../../editing/contour/corners.ts';
import { contourOf } from '../../editing/outline.ts';
import { fieldsOf, fieldValue, pencilOf, shapeOf } from '../../tools/outline/draft.ts';
import { bendGrip } from '../../tools/outline/drags.ts';
import { showsCorners } from '../../tools/outline/hits.ts';
import type { SnapKind } from '../../tools/outline/outline-state.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { contourPixels } from '../drawing/outline.ts';
import { closed, dashes } from '../drawing/strokes.ts';
import type { Scene } from '../scene.ts';
import { project, projectAll } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** Drawing and changing the outline: grips, the shape under way with its measures, what the pencil snapped to, crossings. */
export const outlineLayer: Layer = {
  name: 'outline',
  inputs: ({ model, projection, theme }) => [
    model.tool === 'outline' ? model.outline : null,
    model.document.board.outline,
    model.document.board.cutouts,
    model.lengthUnit,
    projection,
    theme,
  ],
  marks(scene) {
    const { tool, outline } = scene.model;
    if (tool !== 'outline') return [];
    return [...(outline.mode === 'change' ? gripMarks(scene) : draftMarks(scene)), ...refusalMarks(scene)];
  },
};

const GRIP_PX = 9;

function gripMarks({ model, projection, theme }: Scene): Mark[] {
  const { board } = model.document;
  const { picked } = model.outline;
  const accent: Stroke = { colour: theme.accent, width: 1.5 };
  const marks: Mark[] = [];
  const chosen = picked && contourOf(board, picked.id);
  if (picked && chosen) {
    const whole: Stroke = { colour: theme.accent, width: picked.part === 'whole' ? 3 : 1.5 };
    marks.push({ kind: 'polygon', points: contourPixels(chosen, projection), stroke: whole });
    if (picked.part === 'edge')
      marks.push({
        kind: 'line',
        points: edgePixels(chosen, picked.index, projection),
        stroke: { ...accent, width: 4 },
      });
    for (const edge of edgesOf(chosen)) {
      const span = Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y) * projection.zoom;
      if (span < 36) continue;
      const at = project(projection, bendGrip(chosen, edge.index));
      marks.push({ kind: 'circle', ...at, radius: 4, fill: { colour: theme.paper }, stroke: accent });
    }
    marks.push(...measureMarks(chosen, { model, projection }));
  }
  for (const id of ['outline' as const, ...board.cutouts.keys()]) {
    if (!showsCorners(board, id, picked)) continue;
    for (const [index, corner] of (contourOf(board, id) ?? []).entries()) {
      const at = project(projection, corner);
      const on = picked?.id === id && picked.part === 'corner' && picked.index === index;
      const half = (on ? GRIP_PX + 4 : GRIP_PX) / 2;
      const box = { x: Math.round(at.x - half), y: Math.round(at.y - half), width: 2 * half, height: 2 * half };
      marks.push({ kind: 'rectangle', ...box, fill: { colour: on ? theme.accent : theme.paper }, stroke: accent });
    }
  }
  return marks;
}

function edgePixels(contour: Contour, index: number, projection: Scene['projection']): number[] {
  const next = contour[(index + 1) % contour.length];
  const chords = flattenContour([contour[index], { x: next.x, y: next.y }], 0.1 / projection.zoom);
  const end = chords.findIndex((point) => point.x === next.x && point.y === next.y);
  return projectAll(projection, end < 0 ? chords : chords.slice(0, end + 1));
}

/** Lengths of a contour's edges and radii of its arcs beside them, where there is room. */
function measureMarks(contour: Contour, { model, projection }: Pick<Scene, 'model' | 'projection'>): Mark[] {
  if (contour.length > 60) return [];
  const middle = project(projection, centreOfCorners(contour));
  return edgesOf(contour).flatMap((edge): Mark[] => {
    const { lengthMm, radiusMm } = edgeFigures(contour, edge.index);
    const text = outlineWords.edgeMeasure(lengthMm, radiusMm, model.lengthUnit);
    if (lengthMm * projection.zoom < 7 * text.length + 8) return [];
    return [beside(project(projection, middleOf(edge)), middle, text, 'halo')];
  });
}

const centreOfCorners = (corners: readonly Corner[]): Point => ({
  x: corners.reduce((sum, corner) => sum + corner.x, 0) / corners.length,
  y: corners.reduce((sum, corner) => sum + corner.y, 0) / corners.length,
});

/** Lettering off a place on screen, away from the middle of the shape. */
function beside(at: Point, middle: Point, text: string, face: 'halo' | 'accent-halo'): Mark {
  const off = Math.hypot(at.x - middle.x, at.y - middle.y) || 1;
  const way = { x: (at.x - middle.x) / off, y: (at.y - middle.y) / off };
  const align = way.x > 0.5 ? 'left' : way.x < -0.5 ? 'right' : 'centre';
  return { kind: 'text', x: at.x + way.x * 10, y: at.y + way.y * 14, text, face, align };
}

function draftMarks(scene: Scene): Mark[] {
  const { model, projection, theme } = scene;
  const { outline, lengthUnit } = model;
  const accent: Stroke = { colour: theme.accent, width: 2 };
  const shape = shapeOf(outline, lengthUnit);
  const marks: Mark[] = [];
  if (shape?.closed) {
    const points = contourPixels(shape.contour, projection);
    marks.push({ kind: 'polygon', points, fill: { colour: theme.accent, alpha: 0.1 }, stroke: accent });
  } else if (shape) {
    for (let index = 0; index + 1 < shape.contour.length; index++)
      marks.push({ kind: 'line', points: edgePixels(shape.contour, index, projection), stroke: accent });
    if (shape.contour.length > 2) {
      const ends = [shape.contour[shape.contour.length - 1], shape.contour[0]];
      for (const dash of dashes(projectAll(projection, ends), 3, 5))
        marks.push({ kind: 'line', points: dash, stroke: { colour: theme.accent, width: 1 } });
    }
  }
  for (const point of outline.draft.points) {
    const at = project(projection, point);
    marks.push({ kind: 'circle', ...at, radius: 4, fill: { colour: theme.paper }, stroke: accent });
  }
  return [...marks, ...pencilMarks(scene)];
}

/** The pencil, what it snapped to, and the figures beside it; the field at hand is marked, a typed one too. */
function pencilMarks({ model, projection, theme }: Scene): Mark[] {
  const { outline, lengthUnit } = model;
  const { draft } = outline;
  const place =
    pencilOf(outline, lengthUnit) ??
    draft.points.at(-1) ??
    (Object.keys(draft.typed).length > 0 ? { x: 0, y: 0 } : null);
  if (!place) return [];
  const at = project(projection, draft.arcEnd ? (draft.pencil ?? draft.arcEnd) : place);
  const marks: Mark[] = snapMarks(draft.snap, at, { colour: theme.accent, width: 1.5 });
  const fields = fieldsOf(outline);
  fields.forEach((field, index) => {
    const typed = draft.typed[field];
    const value = fieldValue(outline, field, lengthUnit);
    const text = outlineWords.fieldLine(field, typed ?? null, value, lengthUnit);
    const atHand = index === draft.field % fields.length;
    const x = Math.round(at.x + 16);
    const y = Math.round(at.y + 18 + 16 * index);
    marks.push({ kind: 'text', x, y, text, face: atHand ? 'accent-halo' : 'halo', align: 'left' });
  });
  if (draft.snap !== 'free' && draft.snap !== 'grid')
    marks.push({
      kind: 'text',
      x: at.x + 16,
      y: at.y - 14,
      text: outlineWords.snaps[draft.snap],
      face: 'soft-halo',
      align: 'left',
    });
  return marks;
}

/** A sign of its own for each kind of snap. */
function snapMarks(kind: SnapKind, { x, y }: Point, stroke: Stroke): Mark[] {
  const line = (...points: number[]): Mark => ({ kind: 'line', points, stroke });
  const cross = [line(x - 7, y, x + 7, y), line(x, y - 7, x, y + 7)];
  switch (kind) {
    case 'corner':
      return [{ kind: 'rectangle', x: x - 6, y: y - 6, width: 12, height: 12, stroke }];
    case 'middle':
      return [{ kind: 'polygon', points: [x, y - 7, x + 7, y + 5, x - 7, y + 5], stroke }];
    case 'centre':
      return [{ kind: 'circle', x, y, radius: 6, stroke }, ...cross];
    case 'edge':
      return [line(x - 6, y - 6, x + 6, y + 6), line(x - 6, y + 6, x + 6, y - 6)];
    case 'level':
      return [...cross, { kind: 'circle', x, y, radius: 2, stroke }];
    case 'angle':
      return [line(x - 8, y + 5, x + 8, y + 5), line(x - 8, y + 5, x + 6, y - 6)];
    default:
      return cross;
  }
}

/** The shape that is refused, dashed, the place where it crosses in a ring, and why in words. */
function refusalMarks({ model, projection, theme }: Scene): Mark[] {
  const { refused, wanted } = model.outline;
  if (!refused) return [];
  const ink: Stroke = { colour: theme.ink, width: 2 };
  const marks: Mark[] = [];
  if (wanted)
    for (const dash of dashes(closed(contourPixels(wanted, projection)), 6, 4))
      marks.push({ kind: 'line', points: dash, stroke: { colour: theme.accent, width: 1.5 } });
  const { x, y } = project(projection, refused.at);
  marks.push({ kind: 'circle', x, y, radius: 9, stroke: ink });
  for (const side of [1, -1])
    marks.push({ kind: 'line', points: [x - 13, y - 13 * side, x + 13, y + 13 * side], stroke: ink });
  const text = contourFaultSentence(refused, model.lengthUnit);
  // Towards the middle of the board, where there is room.
  const middle = project(projection, centreOfCorners(model.document.board.outline));
  marks.push({ kind: 'text', x, y: y - 24, text, face: 'halo-bold', align: x < middle.x ? 'left' : 'right' });
  return marks;
}
