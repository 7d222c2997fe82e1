import type { Part } from '../../../shared-types/board.ts';
import type { Point, TurnedRectangle } from '../../../shared-types/geometry.ts';
import { METRIC, measuresIn } from '../../../shared-types/words/measures.ts';
import { nextRefdes, placedPart } from '../../editing/placing.ts';
import type { CarriedParts, Sketch } from '../../tools/tool.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { areaPixels, boxOfPixels } from '../drawing/outline.ts';
import { dashes } from '../drawing/strokes.ts';
import type { Scene } from '../scene.ts';
import { projectAll } from '../view/projection.ts';
import { bodyPx, bodyShape, isEndPin, pin1Corner } from './part-shape.ts';
import { emptyPosition } from './parts.ts';

type Placed = Extract<Sketch, { kind: 'ghost' | 'bodies' }>;

/** Beside parts that are dragged (they are a sheet of their own): the lines they snapped to, and a single one's name. */
export function onTheWay({ parts, by, guides }: CarriedParts, scene: Scene): Mark[] {
  const [first] = parts;
  const name = parts.length === 1 ? nameOf({ ...first, x: first.x + by.x, y: first.y + by.y }, scene) : [];
  return [...name, ...guideMarks(guides, scene)];
}

/** Parts that are not there yet: thin accent bodies, empty positions dotted, the lines they snapped to dashed. */
export function placedMarks(sketch: Placed, scene: Scene): Mark[] {
  const { projection, theme } = scene;
  const parts = sketch.kind === 'bodies' ? sketch.parts : ghost(sketch.at, scene);
  const stroke: Stroke = { colour: theme.accent, width: 1.5 };
  // No thin fill: on the 2D canvas the lettering of a sheet becomes as thin as its last fill.
  const marks: Mark[] = parts.length === 1 ? nameOf(parts[0], scene) : [];
  marks.push(...guideMarks(sketch.guides, scene));
  for (const part of parts)
    if (part.fitted) marks.push({ ...bodyShape(part, projection, 1.5), stroke });
    else marks.push(...emptyPosition(part, scene, stroke));
  return marks;
}

function ghost(at: Point, { model }: Scene): Part[] {
  const part = placedPart(model.placing, nextRefdes(model.placing, model.document), at, model.shownSide);
  return part ? [part] : [];
}

/** The designator beside the body: which part it will be. */
function nameOf(part: Part, { projection }: Scene): Mark[] {
  const area = { ...part, lengthMm: part.package.lengthMm, widthMm: part.package.widthMm, turnDeg: part.turn };
  const box = boxOfPixels(areaPixels(area, projection));
  const pin = part.pin1 && bodyPx(part, projection).short > 8 && (isEndPin(part) || pin1Corner(part) !== null);
  const y = box.maxY + (pin ? 11 : 10);
  return [{ kind: 'text', x: (box.minX + box.maxX) / 2, y, text: part.refdes, face: 'accent-halo', align: 'centre' }];
}

function guideMarks(guides: readonly (readonly [Point, Point])[], { projection, theme }: Scene): Mark[] {
  return guides.flatMap((ends) =>
    dashes(projectAll(projection, ends), 4, 3).map(
      (points): Mark => ({ kind: 'line', points, stroke: { colour: theme.accent, width: 1 } }),
    ),
  );
}

/** Both sides of a drawn area, written under it. */
export function sizeMarks(area: TurnedRectangle, { model, projection }: Scene): Mark[] {
  const box = boxOfPixels(areaPixels(area, projection));
  const measures = model.lengthUnit === 'mil' ? measuresIn('C', 'mil') : METRIC;
  const figure = (mm: number) => (model.lengthUnit === 'mil' ? measures.length(mm) : mm.toFixed(2));
  const text = `${figure(area.lengthMm)} x ${figure(area.widthMm)}`;
  return [{ kind: 'text', x: (box.minX + box.maxX) / 2, y: box.maxY + 12, text, face: 'accent-halo', align: 'centre' }];
}
