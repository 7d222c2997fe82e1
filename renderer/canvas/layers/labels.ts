import type { Part } from '../../../shared-types/board.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import { photoShown } from '../../photos/shown-photos.ts';
import { LINE_PX, type Mark, textWidth } from '../drawing/marks.ts';
import { carriedAmong, heatShown, type Scene, tagsByPart } from '../scene.ts';
import { GLYPH_PX } from '../sites/glyph-places.ts';
import { type Projection, project } from '../view/projection.ts';
import type { TiledLayer } from './layer.ts';
import { classMark } from './parts.ts';

/** Where a designator stands: its middle, and its turn clockwise on screen. */
export type LabelPlace = Point & { turnDeg: number };

/** Half sizes of a body on screen along its two axes, and the direction of its length, radians clockwise. */
function seenBody(part: Part, projection: Projection) {
  const length = part.package.lengthMm * projection.zoom;
  const width = part.package.widthMm * projection.zoom;
  const angle = (part.turn * Math.PI) / 180;
  const ahead = project(projection, { x: part.x + Math.cos(angle), y: part.y + Math.sin(angle) });
  const at = project(projection, part);
  return { at, length, width, angle: Math.atan2(ahead.y - at.y, ahead.x - at.x) };
}

/** Between -90 (kept) and 90 (turned over): lettering reads from the foot or from the right. */
function upright(angle: number): number {
  let degrees = (angle * 180) / Math.PI;
  while (degrees >= 89.999) degrees -= 180;
  while (degrees < -90.001) degrees += 180;
  return Math.abs(degrees) < 1e-6 ? 0 : degrees;
}

/** The place of a designator inside its body; null: it would not fit. Lying text is preferred to standing text. */
export function labelPlace(part: Part, projection: Projection): LabelPlace | null {
  const wide = textWidth(part.refdes) + 4;
  const { at, length, width, angle } = seenBody(part, projection);
  if (ROOF.test(part.class)) return roofPlace(part, projection);
  const inset = part.package.shape === 'round' ? 0.75 : 1;
  const ways = [
    { turnDeg: upright(angle), fits: length * inset >= wide && width * inset >= LINE_PX - 2 },
    { turnDeg: upright(angle + Math.PI / 2), fits: width * inset >= wide && length * inset >= LINE_PX - 2 },
  ].filter((way) => way.fits);
  if (ways.length === 0) return null;
  ways.sort((a, b) => Math.abs(a.turnDeg) - Math.abs(b.turnDeg));
  return { ...at, turnDeg: ways[0].turnDeg };
}

/** Bodies that stand over other parts: their designator keeps to a corner. */
const ROOF = /^(metal-can|module-on-connector)$/;

function roofPlace(part: Part, projection: Projection): LabelPlace | null {
  const { at } = seenBody(part, projection);
  const { width, height } = seenSpan(part, projection);
  const wide = textWidth(part.refdes);
  if (width < wide + 12 || height < 2 * LINE_PX) return null;
  return { x: at.x - width / 2 + wide / 2 + 5, y: at.y - height / 2 + 10, turnDeg: 0 };
}

/** Room from which a body carries the mark of its class in its lower left corner. */
const CLASS_MARK_PX = 46;

export const labelLayer: TiledLayer = {
  name: 'labels',
  inputs: (scene, parts) => {
    const { model, projection, theme } = scene;
    return [
      ...[model.document.board.parts, model.document.plan.tags, projection, theme],
      ...[model.layers.labels, heatShown(model), photoShown(model), carriedAmong(scene, parts)],
    ];
  },
  marks(scene, parts) {
    if (!scene.model.layers.labels) return [];
    const tagged = tagsByPart(scene.model.document.plan.tags);
    const carried = carriedAmong(scene, parts);
    return parts.flatMap((part) => (carried?.has(part.refdes) ? [] : labelMarks(part, tagged.has(part.refdes), scene)));
  },
};

/** Where the designator is written: under the glyph of a tagged part; null: not at this zoom. */
export function designatorPlace(part: Part, tagged: boolean, projection: Projection): LabelPlace | null {
  const place = labelPlace(part, projection);
  if (!place || !tagged) return place;
  const { length, width } = seenBody(part, projection);
  return underGlyph(place, Math.min(length, width));
}

function labelMarks(part: Part, tagged: boolean, { model, projection }: Scene): Mark[] {
  const place = labelPlace(part, projection);
  if (!place) return [];
  const { length, width } = seenBody(part, projection);
  const room = Math.min(length, width);
  const marks: Mark[] = [];
  const face = !part.fitted ? 'soft' : heatShown(model) || photoShown(model) ? 'halo' : 'ink';
  const written = designatorPlace(part, tagged, projection);
  if (written) marks.push({ kind: 'text', ...written, text: part.refdes, face, align: 'centre' });
  const mark = classMark(part);
  if (mark && room >= CLASS_MARK_PX && !ROOF.test(part.class) && part.package.shape !== 'round' && place.turnDeg === 0)
    marks.push({
      kind: 'text',
      x: place.x - seenWidth(part, projection) / 2 + 5,
      y: place.y + seenHeight(part, projection) / 2 - 10,
      text: mark,
      face: photoShown(model) ? 'soft-halo' : 'soft',
      align: 'left',
    });
  return marks;
}

/** A tagged part keeps its middle free for the glyph: the designator goes under it, or waits for a closer look. */
function underGlyph(place: LabelPlace, room: number): LabelPlace | null {
  if (room < GLYPH_PX + 2 * LINE_PX) return null;
  const radians = (place.turnDeg * Math.PI) / 180;
  const off = GLYPH_PX / 2 + 9;
  return { ...place, x: place.x - off * Math.sin(radians), y: place.y + off * Math.cos(radians) };
}

const seenWidth = (part: Part, projection: Projection): number => seenSpan(part, projection).width;
const seenHeight = (part: Part, projection: Projection): number => seenSpan(part, projection).height;

/** Size of an upright body on screen. */
function seenSpan(part: Part, projection: Projection): { width: number; height: number } {
  const { length, width, angle } = seenBody(part, projection);
  const standing = Math.abs(Math.sin(angle)) > 0.7;
  return standing ? { width, height: length } : { width: length, height: width };
}
