import { ownToBoard, type Part } from '../../../shared-types/board.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import { photoShown } from '../../photos/shown-photos.ts';
import type { Fill, Mark, Stroke } from '../drawing/marks.ts';
import { closed, dashes } from '../drawing/strokes.ts';
import { carriedAmong, heatShown, type Scene } from '../scene.ts';
import { projectAll } from '../view/projection.ts';
import type { TiledLayer } from './layer.ts';
import { bodyPx, bodyShape, isEndPin, isTall } from './part-shape.ts';

/** Paper of the bodies over the heat map: thin enough that the colours are read through it. */
const BODY_ALPHA_OVER_HEAT = 0.22;
/** Over a photo the body in it is what is looked at. */
const BODY_ALPHA_OVER_PHOTO = 0.08;
/** Below this size on screen an edge would fill the body: it becomes a speck of ink. */
const SPECK_PX = 3;

const POLARISED = /^(electrolytic|polymer|tantalum|supercapacitor|diode|led|coin-cell|lithium-cell|battery)/;
const CHIP = /^(chip-|ntc|fuse)/;

/** Bodies of the parts of the shown side. */
export const partsLayer: TiledLayer = {
  name: 'parts',
  inputs: (scene, parts) => {
    const { model, projection, theme } = scene;
    return [
      ...[model.document.board.parts, projection, theme, heatShown(model), photoShown(model)],
      carriedAmong(scene, parts),
    ];
  },
  marks(scene, parts) {
    const fills: Mark[] = [];
    const edges: Mark[] = [];
    const details: Mark[] = [];
    const carried = carriedAmong(scene, parts);
    for (const part of parts) {
      if (carried?.has(part.refdes)) details.push(leftBehind(part, scene));
      else if (!part.fitted) details.push(...emptyPosition(part, scene));
      else if (bodyPx(part, scene.projection).short < SPECK_PX) fills.push(speck(part, scene));
      else {
        const stroke = edgeOf(part, scene);
        const shape = bodyShape(part, scene.projection, stroke.width);
        fills.push({ ...shape, fill: bodyFill(scene) });
        edges.push({ ...shape, stroke });
        details.push(...endMarks(part, scene));
      }
    }
    const grounds = photoShown(scene.model) ? edges.map((edge) => onPhoto(edge, scene)) : [];
    return [...fills, ...grounds, ...edges.sort(thinFirst), ...details];
  },
};

/** Where a dragged part comes from. */
const leftBehind = (part: Part, { projection, theme }: Scene): Mark => ({
  ...bodyShape(part, projection, 1),
  stroke: { colour: theme.softInk, width: 1, alpha: 0.35 },
});

/** A paper rim under an edge, so that ink is read on a dark photo. */
const onPhoto = (edge: Mark, { theme }: Scene): Mark => ({
  ...(edge as Extract<Mark, { kind: 'rectangle' }>),
  stroke: { colour: theme.paper, width: strokeWidth(edge) + 2.5, alpha: 0.85 },
});

/** Same strokes side by side, so that they are painted in one go. */
const thinFirst = (a: Mark, b: Mark): number => strokeWidth(a) - strokeWidth(b);
const strokeWidth = (mark: Mark): number => ('stroke' in mark && mark.stroke ? mark.stroke.width : 0);

function bodyFill({ model, theme }: Scene): Fill {
  if (photoShown(model)) return { colour: theme.paper, alpha: BODY_ALPHA_OVER_PHOTO };
  return { colour: theme.paper, alpha: heatShown(model) ? BODY_ALPHA_OVER_HEAT : 1 };
}

function edgeOf(part: Part, { theme, projection }: Scene): Stroke {
  const { long } = bodyPx(part, projection);
  return { colour: theme.ink, width: isTall(part) && long > 12 ? 2 : 1, alpha: long < 9 ? 0.7 : 1 };
}

function speck(part: Part, { theme, projection }: Scene): Mark {
  const fill = { colour: theme.ink, alpha: 0.6 };
  return { ...bodyShape(part, projection, 2), fill };
}

/** An empty position: a dotted edge, nothing inside. */
export function emptyPosition(
  part: Part,
  { theme, projection }: Scene,
  stroke: Stroke = { colour: theme.softInk, width: 1 },
): Mark[] {
  const shape = bodyShape(part, projection, 1);
  if (bodyPx(part, projection).long < 7) return [{ ...shape, stroke: { ...stroke, alpha: 0.45 } }];
  return dashes(closed(edgePoints(shape)), 1.5, 2.5).map((points) => ({ kind: 'line', points, stroke }));
}

function edgePoints(shape: ReturnType<typeof bodyShape>): number[] {
  if (shape.kind === 'polygon') return shape.points;
  if (shape.kind === 'rectangle') {
    const { x, y, width, height } = shape;
    return [x, y, x + width, y, x + width, y + height, x, y + height];
  }
  const count = Math.max(12, Math.round(shape.radius));
  return Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count).flatMap((angle) => [
    shape.x + shape.radius * Math.cos(angle),
    shape.y + shape.radius * Math.sin(angle),
  ]);
}

/** Terminals of chips, and the band at the end of pin 1 of polarised two-pin parts. */
function endMarks(part: Part, { theme, projection }: Scene): Mark[] {
  const { long, short } = bodyPx(part, projection);
  if (long < 15 || short < 7) return [];
  const stroke: Stroke = { colour: theme.softInk, width: 1 };
  if (CHIP.test(part.class))
    return [-0.28, 0.28].map((share) => ({ kind: 'line', points: across(part, share, projection), stroke }));
  if (!POLARISED.test(part.class) || !isEndPin(part) || !part.pin1) return [];
  const lengthwise = Math.abs(part.pin1.x) / part.package.lengthMm >= Math.abs(part.pin1.y) / part.package.widthMm;
  if (!lengthwise) return [];
  const band = Math.sign(part.pin1.x) * 0.32;
  return [{ kind: 'line', points: across(part, band, projection), stroke: { colour: theme.ink, width: 2 } }];
}

/** A line across the body at a share of its length from the centre. */
function across(part: Part, share: number, projection: Scene['projection']): number[] {
  const half = part.package.shape === 'round' ? Math.sqrt(Math.max(0, 0.25 - share * share)) : 0.5;
  const at = (y: number) => ownToBoard(part, { x: share * part.package.lengthMm, y: y * part.package.widthMm });
  return projectAll(projection, [at(-half), at(half)]);
}

/** A small word for the class of a part, in the lower left of bodies that have room for it. */
export function classMark(part: Part): string {
  const { mark } = classById(part.class);
  return mark === '?' ? '' : mark;
}
