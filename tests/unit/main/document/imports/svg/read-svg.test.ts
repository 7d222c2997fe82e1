import fc from 'fast-check';
import { strToU8 } from 'fflate';
import svgpath from 'svgpath';
import { describe, expect, test } from 'vitest';
import { strokesOf } from '../../../../../../main/document/imports/drawing/strokes.ts';
import type { Drawing } from '../../../../../../main/document/imports/drawing/types.ts';
import { type Segment, segmentMiddle, segmentsBox } from '../../../../../../main/document/imports/segments.ts';
import { looksLikeSvg, readSvg } from '../../../../../../main/document/imports/svg/read-svg.ts';

function drawingOf(content: string, attributes = 'width="100mm" height="80mm" viewBox="0 0 100 80"'): Drawing {
  const read = readSvg(
    strToU8(`<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${content}</svg>`),
  );
  if (!read.ok) throw new Error(`${read.failure.reason} in line ${read.failure.line}`);
  return read.drawing;
}

const segmentsOf = (content: string): Segment[] =>
  (strokesOf(drawingOf(content).shapes, 1) ?? []).map(({ segment }) => segment);
const boxOf = (content: string) => segmentsBox(segmentsOf(content));

describe('paths', () => {
  test('every command, absolute and relative, ends where the specification puts it (y turned up)', () => {
    const [last] = segmentsOf(
      '<path d="M1 2 l3 0 H10 v5 C10 9 12 9 12 7 s2-2 2 0 Q16 11 18 7 t4 0 A2 2 0 0 1 26 7 z"/>',
    ).slice(-1);
    expect(last.from).toEqual({ x: 26, y: -7 });
    expect(last.to).toEqual({ x: 1, y: -2 });
  });

  test('arcs stay arcs: the pie of the SVG 1.1 specification, section 8.3.8', () => {
    const segments = segmentsOf('<path d="M300,200 h-150 a150,150 0 1,0 150,-150 z"/>');
    expect(segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line']);
    const [, arc] = segments;
    if (arc.kind !== 'arc') throw new Error('no arc');
    expect(arc.centre.x).toBeCloseTo(300, 9);
    expect(arc.centre.y).toBeCloseTo(-200, 9);
    // Sweep flag 0 runs counter-clockwise on the page, over three quarters of the circle.
    expect(arc.clockwise).toBe(false);
    const { minX, maxX, minY, maxY } = segmentsBox(segments);
    expect([minX, maxX, minY, maxY].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([150, 450, -350, -50]);
  });

  test('radii that do not reach grow until they do (SVG 1.1, section F.6.6)', () => {
    const [arc] = segmentsOf('<path d="M0 0 A1 1 0 0 1 10 0"/>');
    expect(arc.kind === 'arc' && Math.hypot(arc.from.x - arc.centre.x, arc.from.y - arc.centre.y)).toBeCloseTo(5, 9);
  });

  test('what follows a mistake is not drawn, and told', () => {
    const drawing = drawingOf('<path d="M0 0 L10 0 L10 oops"/>');
    expect(drawing.passedOver.get('path-mistake')).toBe(1);
    expect(drawing.shapes).toHaveLength(1);
  });
});

/** A general-purpose library maps the path itself; here every shape of it is mapped. */
test('transforms, nested, as the path library applies them', () => {
  const number = fc.integer({ min: -40, max: 40 }).map((value) => value / 8 || 1);
  const turn = fc.oneof(
    fc.tuple(number, number).map(([x, y]) => `translate(${x},${y})`),
    number.map((s) => `scale(${s})`),
    fc.tuple(number, number).map(([x, y]) => `scale(${x} ${y})`),
    fc.tuple(number, number, number).map(([a, x, y]) => `rotate(${a * 9}, ${x}, ${y})`),
    number.map((a) => `skewX(${a * 8})`),
    number.map((a) => `skewY(${a * 8})`),
    fc.array(number, { minLength: 6, maxLength: 6 }).map((list) => `matrix(${list.join(' ')})`),
  );
  const path = 'M1 2 L9 3 C12 3 13 9 9 9 A4 2 30 0 1 3 8 Q0 8 1 2 Z';
  fc.assert(
    fc.property(turn, turn, turn, (outer, middle, inner) => {
      const ours = drawingOf(`<g transform="${outer}"><g><path transform="${middle} ${inner}" d="${path}"/></g></g>`);
      const theirs = drawingOf(`<path d="${svgpath(path).transform(`${outer} ${middle} ${inner}`)}"/>`);
      const middles = ({ shapes }: Drawing) =>
        shapes.map((one) => {
          const segments = (strokesOf([one], 1) ?? []).map(({ segment }) => segment);
          return segments.length === 1 ? segmentMiddle(segments[0]) : segmentsBox(segments);
        });
      const [a, b] = [middles(ours), middles(theirs)].map((list) =>
        list.flatMap((one) => Object.values(one) as number[]),
      );
      expect(a.length).toBe(b.length);
      for (const [index, value] of a.entries())
        expect(Math.abs(value - b[index])).toBeLessThan(0.02 + Math.abs(value) * 1e-4);
    }),
    { numRuns: 300, seed: 5 },
  );
});

describe('basic shapes', () => {
  test('a rectangle with one radius has four quarter arcs; radii end at half the side', () => {
    const segments = segmentsOf('<rect x="10" y="20" width="40" height="30" rx="5"/>');
    expect(segments.filter(({ kind }) => kind === 'arc')).toHaveLength(4);
    expect(boxOf('<rect x="10" y="20" width="40" height="30" rx="5"/>')).toEqual({
      minX: 10,
      maxX: 50,
      minY: -50,
      maxY: -20,
    });
    const round = segmentsOf('<rect width="10" height="10" rx="99"/>').filter(({ kind }) => kind === 'arc');
    expect(round.every((arc) => arc.kind === 'arc' && Math.hypot(arc.centre.x - 5, arc.centre.y + 5) < 1e-9)).toBe(
      true,
    );
  });

  test('circle, ellipse, line, polyline, polygon', () => {
    expect(boxOf('<circle cx="5" cy="6" r="2"/>')).toEqual({ minX: 3, maxX: 7, minY: -8, maxY: -4 });
    expect(boxOf('<ellipse cx="5" cy="6" rx="4" ry="2"/>').maxX).toBeCloseTo(9, 2);
    expect(segmentsOf('<line x1="0" y1="0" x2="3mm" y2="0"/>')[0].to.x).toBeCloseTo((3 * 96) / 25.4, 9);
    expect(segmentsOf('<polyline points="0,0 10,0 10-5"/>')).toHaveLength(2);
    expect(segmentsOf('<polygon points="0 0 10 0 10 5"/>')).toHaveLength(3);
  });

  test('definitions, hidden things, copies and texts are not drawn', () => {
    const drawing = drawingOf(
      '<defs><circle r="9"/></defs><g style="fill:none; display:none"><circle r="8"/></g><circle r="7" visibility="hidden"/><use href="#a"/><text>a</text><circle r="6"/>',
    );
    expect(drawing.shapes).toHaveLength(1);
    expect([...drawing.passedOver]).toEqual([
      ['use', 1],
      ['text', 1],
    ]);
  });
});

describe('what a unit measures (CSS Values 3, section 6.2)', () => {
  test.each([
    ['width="80mm" height="40mm" viewBox="0 0 800 400"', 0.1],
    ['width="2in" viewBox="0 0 2000 1000"', 0.0254],
    ['width="8cm" height="80mm" viewBox="0 0 100 160"', 0.5],
    ['width="72pt" height="72pt"', 25.4 / 96],
    ['width="800" height="400" viewBox="0 0 80 40"', null],
    ['width="800px" height="400px"', null],
    ['viewBox="0 0 80 40"', null],
  ])('%s', (attributes, mm) => {
    const { mmPerUnit } = drawingOf('', attributes);
    if (mm === null) expect(mmPerUnit).toBeNull();
    else expect(mmPerUnit).toBeCloseTo(mm, 12);
  });

  test('an svg within another has a frame of its own', () => {
    const drawing = drawingOf(
      '<svg x="10" y="20" width="20" height="10" viewBox="0 0 200 100"><circle cx="100" cy="50" r="50"/></svg>',
    );
    expect(segmentsBox((strokesOf(drawing.shapes, 1) ?? []).map(({ segment }) => segment))).toEqual({
      minX: 15,
      maxX: 25,
      minY: -30,
      maxY: -20,
    });
  });
});

test('an SVG is told by its first element', () => {
  expect(
    looksLikeSvg(strToU8('<?xml version="1.0"?>\n<!-- a <b> -->\n<!DOCTYPE svg PUBLIC "x" "y">\n<svg width="1"/>')),
  ).toBe(true);
  expect(looksLikeSvg(strToU8('<html><svg/></html>'))).toBe(false);
  expect(looksLikeSvg(strToU8('Ref,X\n<svg>'))).toBe(false);
});
