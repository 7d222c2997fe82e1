import { describe, expect, test } from 'vitest';
import { strokesOf } from '../../../../../../main/document/imports/drawing/strokes.ts';
import type { Drawing } from '../../../../../../main/document/imports/drawing/types.ts';
import { readDxf } from '../../../../../../main/document/imports/dxf/read-dxf.ts';
import { arcSweep, type Segment, segmentsBox } from '../../../../../../main/document/imports/segments.ts';
import { block, box, dxfText, header, insert, line, type Pair, pairsText, section } from './dxf-text.ts';

function drawingOf(text: string): Drawing {
  const read = readDxf(text);
  if (!read.ok) throw new Error(read.failure.reason);
  return read.drawing;
}

const segmentsOf = (...pairs: Pair[]): Segment[] =>
  (strokesOf(drawingOf(dxfText(section('ENTITIES', ...pairs))).shapes, 1) ?? []).map(({ segment }) => segment);

/** The only arc, with its sweep in degrees. */
function onlyArc(...pairs: Pair[]) {
  const [arc, ...more] = segmentsOf(...pairs);
  if (arc?.kind !== 'arc' || more.length > 0) throw new Error('no single arc');
  return { ...arc, degrees: (arcSweep(arc) * 180) / Math.PI };
}

const LENS: Pair[] = [
  [0, 'LWPOLYLINE'],
  [70, 1],
  [10, 0],
  [20, 0],
  [42, 1],
  [10, 10],
  [20, 0],
  [10, 10],
  [20, 5],
  [10, 0],
  [20, 5],
];

describe('entities, as the DXF reference describes them', () => {
  test('an arc runs counter-clockwise from its first to its second angle', () => {
    const arc = onlyArc([0, 'ARC'], [10, 5], [20, 5], [40, 2], [50, 350], [51, 80]);
    expect(arc.degrees).toBeCloseTo(90, 9);
    expect(arc.clockwise).toBe(false);
    expect(arc.to.y).toBeCloseTo(5 + 2 * Math.sin((80 * Math.PI) / 180), 9);
  });

  test('seen from below (extrusion down) an arc is mirrored in x', () => {
    const arc = onlyArc([0, 'ARC'], [10, 5], [20, 5], [40, 2], [50, 0], [51, 90], [230, -1]);
    expect(arc.centre).toEqual({ x: -5, y: 5 });
    expect(arc.from.x).toBeCloseTo(-7, 9);
    expect(arc.degrees).toBeCloseTo(-90, 9);
  });

  test('a bulge of 1 is half a circle to the right of the way, one of tan(22.5 degrees) a quarter', () => {
    const [half] = segmentsOf(...LENS);
    expect(half).toMatchObject({ kind: 'arc', clockwise: false });
    expect(segmentsBox([half]).minY).toBeCloseTo(-5, 9);
    expect(segmentsOf(...LENS)).toHaveLength(4);
    const quarter: Pair[] = LENS.map(([code, value]) => [code, code === 42 ? Math.tan(Math.PI / 8) : value]);
    const [arc] = segmentsOf(...quarter);
    expect(arc.kind === 'arc' && (arcSweep(arc) * 180) / Math.PI).toBeCloseTo(90, 9);
  });

  test('an old polyline with vertices; without its end mark the next entity ends it', () => {
    const vertex = (x: number, y: number, flags = 0): Pair[] => [
      [0, 'VERTEX'],
      [10, x],
      [20, y],
      [70, flags],
    ];
    const polyline: Pair[] = [
      [0, 'POLYLINE'],
      [70, 1],
      [10, 0],
      [20, 0],
      ...vertex(0, 0),
      ...vertex(4, 0),
      ...vertex(4, 3),
    ];
    const triangle = segmentsOf(...polyline, ...vertex(9, 9, 16), [0, 'SEQEND'], ...line(50, 0, 60, 0));
    expect(triangle).toHaveLength(4);
    expect(segmentsOf(...polyline, ...line(50, 0, 60, 0))).toEqual(triangle);
    expect(segmentsOf(...polyline)).toHaveLength(3);
  });

  test('an ellipse with equal axes is an arc, another one chords within 0.005 mm', () => {
    const ellipse = (ratio: number): Pair[] => [
      [0, 'ELLIPSE'],
      [10, 1],
      [20, 2],
      [11, 0],
      [21, 10],
      [40, ratio],
      [41, 0],
      [42, Math.PI],
    ];
    expect(onlyArc(...ellipse(1)).degrees).toBeCloseTo(180, 9);
    const chords = segmentsOf(...ellipse(0.5));
    expect(chords.length).toBeGreaterThan(20);
    for (const { from, to } of chords) {
      // On the ellipse: ((x - 1) / 5)^2 + ((y - 2) / 10)^2 = 1; x falls as the minor axis lies to the left of the major.
      expect(((from.x - 1) / 5) ** 2 + ((from.y - 2) / 10) ** 2).toBeCloseTo(1, 9);
      expect(Math.max(from.x, to.x)).toBeLessThanOrEqual(1 + 1e-9);
      const middle = Math.hypot((from.x + to.x - 2) / 10, (from.y + to.y - 4) / 20);
      expect((1 - middle) * 10).toBeLessThan(0.006);
    }
  });
});

/** Weights 1, sqrt(2) / 2, 1 make a quadratic a quarter of a circle. Piegl and Tiller, The NURBS Book, section 7.3 (from memory). */
const QUARTER: Pair[] = [
  [0, 'SPLINE'],
  [70, 4],
  [71, 2],
  ...[0, 0, 0, 1, 1, 1].map((knot): Pair => [40, knot]),
  ...[1, Math.SQRT1_2, 1].map((weight): Pair => [41, weight]),
  ...[
    [10, 0],
    [10, 10],
    [0, 10],
  ].flatMap(([x, y]): Pair[] => [
    [10, x],
    [20, y],
  ]),
];

describe('splines', () => {
  test('weights count: a rational quadratic is a quarter of a circle', () => {
    const chords = segmentsOf(...QUARTER);
    for (const { from, to } of chords) {
      expect(Math.hypot(from.x, from.y)).toBeCloseTo(10, 9);
      expect(10 - Math.hypot((from.x + to.x) / 2, (from.y + to.y) / 2)).toBeLessThan(0.0051);
    }
    expect(chords[0].from).toEqual({ x: 10, y: 0 });
    expect(chords.at(-1)?.to.x).toBeCloseTo(0, 9);
  });

  test('a spline without knots or weights still goes from its first to its last control point', () => {
    const chords = segmentsOf(...QUARTER.filter(([code]) => code !== 40 && code !== 41));
    // The middle of the plain quadratic: (P0 + 2 P1 + P2) / 4.
    const nearest = Math.min(...chords.map(({ to }) => Math.hypot(to.x - 7.5, to.y - 7.5)));
    expect(nearest).toBeLessThan(1e-9);
  });

  test('a spline given by points alone passes them', () => {
    const points = [
      [0, 0],
      [10, 5],
      [20, 0],
      [30, 5],
    ];
    const chords = segmentsOf(
      [0, 'SPLINE'],
      [71, 3],
      ...points.flatMap(([x, y]): Pair[] => [
        [11, x],
        [21, y],
      ]),
    );
    for (const [x, y] of points.slice(1)) {
      expect(Math.min(...chords.map(({ to }) => Math.hypot(to.x - x, to.y - y)))).toBeLessThan(1e-9);
    }
  });
});

describe('blocks', () => {
  const blocks = section('BLOCKS', ...block('B', [0, 'CIRCLE'], [10, 1], [20, 0], [40, 1], ...line(0, 0, 2, 0)));
  const inserted = (...pairs: Pair[]): Segment[] =>
    (strokesOf(drawingOf(dxfText(blocks, section('ENTITIES', ...insert('B', ...pairs)))).shapes, 1) ?? []).map(
      ({ segment }) => segment,
    );

  test('scaled, turned, moved', () => {
    const [circle, straight] = inserted([10, 100], [20, 50], [41, 2], [42, 2], [50, 90]);
    expect(circle.kind === 'arc' && circle.centre.x).toBeCloseTo(100, 9);
    expect(circle.kind === 'arc' && circle.centre.y).toBeCloseTo(52, 9);
    expect(straight.to.y).toBeCloseTo(54, 9);
  });

  test('scaled unevenly a circle is an ellipse: chords in its box', () => {
    const chords = inserted([10, 0], [20, 0], [41, 3], [42, 1]);
    expect(chords.every(({ kind }) => kind === 'line')).toBe(true);
    const { minX, maxX, maxY } = segmentsBox(chords);
    expect([minX, maxX]).toEqual([expect.closeTo(0, 2), expect.closeTo(6, 2)]);
    expect(maxY).toBeCloseTo(1, 2);
  });

  test('repeated in columns and rows', () => {
    const ends = inserted([10, 0], [20, 0], [70, 3], [71, 2], [44, 10], [45, 20]).filter(({ kind }) => kind === 'line');
    expect(ends.map(({ to }) => `${to.x} ${to.y}`)).toEqual(['2 0', '2 20', '12 0', '12 20', '22 0', '22 20']);
  });

  test('a block that holds itself, at once or by way of another, is told with its line', () => {
    const text = dxfText(
      section('BLOCKS', ...block('A', ...insert('B')), ...block('B', ...insert('A'))),
      section('ENTITIES', ...insert('A')),
    );
    expect(readDxf(text)).toMatchObject({ ok: false, failure: { reason: 'holdsItself' } });
  });
});

test('layers that are off or frozen, invisible entities and those on paper are left out', () => {
  const layer = (name: string, colour: number, flags: number): Pair[] => [
    [0, 'LAYER'],
    [2, name],
    [70, flags],
    [62, colour],
  ];
  const text = dxfText(
    section(
      'TABLES',
      [0, 'TABLE'],
      [2, 'LAYER'],
      ...layer('Off', -7, 0),
      ...layer('Cold', 7, 1),
      ...layer('On', 7, 0),
      [0, 'ENDTAB'],
    ),
    section(
      'ENTITIES',
      ...line(0, 0, 1, 0, 'Off'),
      ...line(0, 0, 2, 0, 'Cold'),
      ...line(0, 0, 3, 0, 'On'),
      ...line(0, 0, 4, 0),
      [60, 1],
      ...line(0, 0, 5, 0),
      [67, 1],
    ),
  );
  expect(drawingOf(text).shapes.map(({ layer: name }) => name)).toEqual(['On']);
});

test('units as $INSUNITS says, none where it says none', () => {
  const units = [0, 1, 4, 5, 9, 13].map((code) => drawingOf(dxfText(header(code), section('ENTITIES'))).mmPerUnit);
  expect(units).toEqual([null, 25.4, 1, 10, 0.0254, 0.001]);
});

test('a text cut within a figure loses the entity it cut, and says so', () => {
  const text = pairsText(section('ENTITIES', ...box(0, 0, 50, 40)).slice(0, -1));
  const cut = drawingOf(text.slice(0, -2));
  expect(cut.cutShort).toBe(true);
  expect(cut.shapes).toHaveLength(3);
});

test('a line that is no group code is told', () => {
  const text = dxfText(section('ENTITIES', ...box(0, 0, 50, 40))).replace('\n21\n', '\n21\nx\n');
  expect(readDxf(text)).toMatchObject({ ok: false, failure: { reason: 'badGroupCode', line: expect.any(Number) } });
});
