import { parse } from '@tracespace/parser';
import { type PathSegment, plot, type Shape } from '@tracespace/plotter';
import { type At, chainBoxes, corners, middleOf, type Rect, rectOf } from './truth.ts';

/** A Gerber layer as a general-purpose parser and plotter sees it, with the references that stand beside its pads. */
export interface TrueLayer {
  readonly pads: readonly {
    readonly refdes: string | null;
    readonly pin: string | null;
    readonly at: At;
    readonly box: Rect;
  }[];
  readonly chains: readonly Rect[];
}

const ARC_STEPS = 64;

function pathPoints(segments: readonly PathSegment[]): At[] {
  return segments.flatMap((segment): At[] => {
    const ends = [segment.start, segment.end].map(([x, y]) => ({ x, y }));
    if (segment.type === 'line') return ends;
    const [from, to] = [segment.start[2], segment.end[2]];
    const along = Array.from({ length: ARC_STEPS + 1 }, (_, step) => from + ((to - from) * step) / ARC_STEPS);
    const [x, y] = segment.center;
    return along.map((angle) => ({ x: x + segment.radius * Math.cos(angle), y: y + segment.radius * Math.sin(angle) }));
  });
}

function shapeBox(shape: Shape): Rect {
  switch (shape.type) {
    case 'circle':
      return { minX: shape.cx - shape.r, minY: shape.cy - shape.r, maxX: shape.cx + shape.r, maxY: shape.cy + shape.r };
    case 'rectangle':
      return { minX: shape.x, minY: shape.y, maxX: shape.x + shape.xSize, maxY: shape.y + shape.ySize };
    case 'polygon':
      return rectOf(shape.points.map(([x, y]) => ({ x, y })));
    case 'outline':
      return rectOf(pathPoints(shape.segments));
    default:
      return rectOf(shape.shapes.filter(({ erase }) => !erase).flatMap((one) => corners(shapeBox(one))));
  }
}

interface Mark {
  readonly refdes: string | null;
  readonly pin: string | null;
}

/** References and pins in the order in which pads are made (flashes and regions apart), by a pattern over the commands alone. */
function marksOf(text: string): { flashes: Mark[]; regions: Mark[] } {
  const flashes: Mark[] = [];
  const regions: Mark[] = [];
  let mark: Mark = { refdes: null, pin: null };
  let region = false;
  let operation = '';
  for (const [whole, extended, plain] of text.matchAll(/%([^%]*)%|([^*%]+)\*/g)) {
    const words = (extended ?? plain ?? '').trim();
    const attribute = /^(?:G04\s*#@!\s*)?(T[OD])(\.[PCN])?(?:,?([^*]*))?/.exec(words);
    if (attribute && (extended !== undefined || /^G04\s*#@!/.test(words))) {
      const [, kind, name, value = ''] = attribute;
      const [refdes, pin] = value.split(',');
      if (kind === 'TO' && name === '.P') mark = { refdes, pin };
      else if (kind === 'TO' && name === '.C') mark = { refdes, pin: null };
      else if (kind === 'TD' && (name === undefined || name !== '.N')) mark = { refdes: null, pin: null };
      continue;
    }
    if (extended !== undefined || /^G0?4/.test(words)) continue;
    if (/G36/.test(words)) region = true;
    if (/G37/.test(words)) region = false;
    const [, code] = /D0?([123])$/.exec(words) ?? [];
    const moves = /[XYIJ]/.test(words);
    if (code) operation = code;
    if (!code && !moves) continue;
    if (operation === '3') flashes.push(mark);
    if (region && operation === '2' && whole) regions.push(mark);
  }
  return { flashes, regions };
}

const PAD_MM = 12;

/** Pads and chains of lines of one layer. Throws where the pattern and the plotter do not count alike. */
export function trueLayer(text: string): TrueLayer {
  // That parser takes a macro whose primitives run over several lines for an empty one.
  const image = plot(parse(text.replace(/%AM[^%]*%/g, (macro) => macro.replace(/[\r\n]/g, ''))));
  const mm = image.units === 'in' ? 25.4 : 1;
  const scaled = (box: Rect): Rect => ({
    minX: box.minX * mm,
    minY: box.minY * mm,
    maxX: box.maxX * mm,
    maxY: box.maxY * mm,
  });
  const shapes = image.children.flatMap((node) => (node.type === 'imageShape' ? [scaled(shapeBox(node.shape))] : []));
  const contours = image.children.flatMap((node) =>
    node.type === 'imageRegion' ? [scaled(rectOf(pathPoints(node.segments)))] : [],
  );
  const { flashes, regions } = marksOf(text);
  if (flashes.length !== shapes.length)
    throw new Error(`${flashes.length} flashes by the pattern, ${shapes.length} by the plotter`);
  const named = regions.length === contours.length;
  const pads = [
    ...shapes.map((box, index) => ({ ...flashes[index], box, at: middleOf(box) })),
    ...contours.map((box, index) => ({
      ...(named ? regions[index] : { refdes: null, pin: null }),
      box,
      at: middleOf(box),
    })),
  ].filter(({ box }) => box.maxX - box.minX < PAD_MM && box.maxY - box.minY < PAD_MM);
  const empty = pads.find(({ at }) => !Number.isFinite(at.x + at.y));
  if (empty) throw new Error(`a pad of ${empty.refdes} has no shape`);
  const lines = image.children.flatMap((node) =>
    node.type === 'imagePath' || node.type === 'imageRegion' ? node.segments : [],
  );
  const chains = chainBoxes(
    lines.map((segment) => {
      const ends = [segment.start, segment.end].map(([x, y]) => ({ x: x * mm, y: y * mm })) as [At, At];
      return { ends, box: scaled(rectOf(pathPoints([segment]))) };
    }),
  );
  return { pads, chains };
}
