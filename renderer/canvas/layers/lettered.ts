import { boxAround, type PixelBox, textBox } from '../drawing/boxes.ts';
import { type Scene, tagsByPart } from '../scene.ts';
import { designatorPlace } from './labels.ts';
import { sameInputs } from './layer.ts';
import { shownGlyphs } from './tags.ts';

let last: { inputs: readonly unknown[]; boxes: readonly PixelBox[] } | null = null;

/** Boxes that designators and glyphs take up: the numbers of isotherms and rings keep clear of them. */
export function lettered({ model, projection }: Scene): readonly PixelBox[] {
  const { board, plan } = model.document;
  const inputs = [board.parts, plan.tags, model.layers.labels, projection];
  if (last && sameInputs(last.inputs, inputs)) return last.boxes;
  const boxes = shownGlyphs(plan.tags, board.parts, projection).map(({ at }) => boxAround(at, 30, 30));
  const tagged = tagsByPart(plan.tags);
  if (model.layers.labels)
    for (const part of board.parts) {
      const place = part.side === projection.side ? designatorPlace(part, tagged.has(part.refdes), projection) : null;
      if (place) boxes.push(textBox(place, part.refdes, (place.turnDeg * Math.PI) / 180));
    }
  last = { inputs, boxes };
  return boxes;
}
