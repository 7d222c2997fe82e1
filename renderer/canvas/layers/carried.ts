import type { Part } from '../../../shared-types/board.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import type { Scene } from '../scene.ts';
import { labelLayer } from './labels.ts';
import { bodyShape } from './part-shape.ts';
import { partsLayer } from './parts.ts';

/** Dragged parts as they look, in the accent, at the places that they come from. */
export function carriedMarks(parts: readonly Part[], scene: Scene): Mark[] {
  // They are lifted off: no map is seen through them.
  const still: Scene = { ...scene, model: { ...scene.model, assessment: null }, sketch: null };
  const stroke: Stroke = { colour: scene.theme.accent, width: 1.5 };
  const edges = parts.map((part): Mark => ({ ...bodyShape(part, scene.projection, 1.5), stroke }));
  // A single one has its name beside it.
  const names = parts.length > 1 ? labelLayer.marks(still, parts) : [];
  return [...partsLayer.marks(still, parts).filter(isThick), ...edges, ...names];
}

/** A thin fill would make the lettering of the sheet as thin on the 2D canvas. */
const isThick = (mark: Mark): boolean => !('fill' in mark && mark.fill && (mark.fill.alpha ?? 1) < 1);
