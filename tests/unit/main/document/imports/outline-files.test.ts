import fc from 'fast-check';
import { strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { type GivenFile, type ImportChoices, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { arcOfEdge } from '../../../../../shared-types/geometry.ts';
import { importReportLines } from '../../../../../shared-types/words/imports.ts';
import { problemSentence } from '../../../../../shared-types/words/problems.ts';
import { passesOf } from '../../../../support/yardstick.ts';
import { block, box, dxfText, header, insert, line, type Pair, pairsText, section } from './dxf/dxf-text.ts';
import { inventedFiles } from './invented-board.ts';

const text = (name: string, content: string): GivenFile => ({ name, bytes: strToU8(content) });
const dxf = (...sections: Pair[][]): GivenFile => text('plate.dxf', dxfText(...sections));
const svg = (content: string, attributes = 'width="90mm" height="70mm" viewBox="0 0 90 70"'): GivenFile =>
  text('plate.svg', `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${content}</svg>`);

function boardOf(files: GivenFile[], choices?: ImportChoices) {
  const result = importBoard(files, choices);
  if (!result.ok) throw new Error(problemSentence(result.problem));
  const { board, report } = result.value;
  for (const sentence of importReportLines(report)) expect(sentence).not.toMatch(/undefined|NaN|null|\[object/);
  const size = [report.outline.lengthMm, report.outline.widthMm].map((value) => Math.round(value * 1e4) / 1e4);
  return { board, report, size, codes: report.notes.map(({ code }) => code) };
}

/** A 60 x 40 plate with a slot of round ends and a hole, in a frame, each on its layer. */
const PLATE: Pair[] = [
  ...box(0, 0, 420, 297, 'Frame'),
  ...box(100, 100, 60, 40, 'Outline'),
  [0, 'LWPOLYLINE'],
  [8, 'Outline'],
  [70, 1],
  [10, 110],
  [20, 110],
  [10, 120],
  [20, 110],
  [42, 1],
  [10, 120],
  [20, 114],
  [10, 110],
  [20, 114],
  [42, 1],
  [0, 'CIRCLE'],
  [8, 'Holes'],
  [10, 150],
  [20, 130],
  [40, 1.5],
];

const TABLE =
  'Ref,Val,Package,PosX,PosY,Rot,Side\nR1,1k,R_0402,104,104,0,top\nR2,1k,R_0402,156,104,0,top\nR3,1k,R_0402,130,136,90,bottom\nU1,x,SOIC-8,140,120,0,top\n';

describe('an outline alone makes a board without parts', () => {
  test('DXF: the layer with a telling name is taken, its slot and the hole are cut out, arcs stay arcs', () => {
    const { board, size, report, codes } = boardOf([dxf(header(4), section('ENTITIES', ...PLATE))]);
    expect(size).toEqual([60, 40]);
    expect(board.parts).toEqual([]);
    expect(board.name).toBe('plate');
    expect(board.cutouts).toHaveLength(2);
    const bends = board.cutouts.flatMap((contour) =>
      contour.flatMap((corner, index) =>
        corner.bulge ? [arcOfEdge(corner, contour[(index + 1) % contour.length]).radius] : [],
      ),
    );
    expect(bends.map((radius) => Math.round(radius * 1e6) / 1e6)).toEqual([2, 2, 1.5, 1.5]);
    expect(report.outline.others.map(({ lengthMm }) => Math.round(lengthMm))).toContain(420);
    expect(codes).toEqual(expect.arrayContaining(['drawing-unit-said', 'drawing-layer']));
  });

  test('the frame instead, by its rank', () => {
    const file = dxf(header(4), section('ENTITIES', ...PLATE));
    const frame = boardOf([file]).report.outline.others.find(({ lengthMm }) => Math.round(lengthMm) === 420);
    expect(boardOf([file], { outline: frame?.rank }).size).toEqual([420, 297]);
  });

  test('SVG: rounded corners stay arcs; a millimetre is a millimetre', () => {
    const { board, size } = boardOf([
      svg('<g transform="translate(10 10)"><rect width="60" height="40" rx="3"/><circle cx="30" cy="20" r="4"/></g>'),
    ]);
    expect(size).toEqual([60, 40]);
    expect(board.outline.filter(({ bulge }) => bulge)).toHaveLength(4);
    expect(board.cutouts).toHaveLength(1);
  });

  test('a Gerber profile alone does too, and says what is missing', () => {
    const { board, codes } = boardOf(inventedFiles().slice(1, 2));
    expect(board.parts).toEqual([]);
    expect(board.outline.length).toBeGreaterThanOrEqual(3);
    expect(codes).toContain('outline-alone');
  });

  test('an outline drawn as the two edges of a pen is no board with one great hole', () => {
    const rings = section(
      'ENTITIES',
      ...box(0, 0, 60.2, 40.2),
      ...box(0.1, 0.1, 60, 40),
      ...box(20, 20, 8, 8),
      ...box(20.1, 20.1, 7.8, 7.8),
    );
    const { board, size, codes } = boardOf([dxf(header(4), rings)]);
    expect(size).toEqual([60.2, 40.2]);
    expect(board.cutouts.map((corners) => Math.max(...corners.map(({ x }) => x)))).toEqual([28]);
    expect(codes).toContain('outline-double');
  });
});

describe('units', () => {
  const plate = (width: number, height: number, insunits = 0): GivenFile =>
    dxf(header(insunits), section('ENTITIES', ...box(0, 0, width, height)));

  test.each([
    ['mm, unsaid', 60, 40, 0, 'drawing-unit-by-size'],
    ['inch, unsaid', 60 / 25.4, 40 / 25.4, 0, 'drawing-unit-by-size'],
    ['mil, unsaid', 60_000 / 25.4, 40_000 / 25.4, 0, 'drawing-unit-by-size'],
    ['inch, said', 60 / 25.4, 40 / 25.4, 1, 'drawing-unit-said'],
    ['metres, said of millimetres', 60, 40, 6, 'drawing-unit-refused'],
  ])('%s', (_, width, height, insunits, code) => {
    const { size, codes } = boardOf([plate(width, height, insunits)]);
    expect(size).toEqual([60, 40]);
    expect(codes).toContain(code);
  });

  test('chosen: the same numbers are mil', () => {
    const { size, codes } = boardOf([plate(600, 400)], { unit: 'mil' });
    expect(size).toEqual([15.24, 10.16]);
    expect(codes.filter((code) => code.startsWith('drawing-unit'))).toEqual([]);
  });

  test('the parts tell: 60 x 40 in numbers of pixels or mm, whichever goes round them', () => {
    const drawn = svg('<rect x="100" y="-140" width="60" height="40"/>', 'viewBox="0 0 300 300"');
    const { size, codes, report } = boardOf([drawn, text('parts.csv', TABLE)]);
    expect(size).toEqual([60, 40]);
    expect(codes).toContain('drawing-unit-by-parts');
    expect(report.outline.sharePercent).toBe(100);
    expect(boardOf([drawn]).codes).toContain('drawing-unit-pixels');
  });
});

test('with placements: the smallest loop that holds them, in the places both files share', () => {
  const unnamed = PLATE.map(([code, value]): Pair => [code, code === 8 ? '0' : value]);
  const { board, size, report } = boardOf([dxf(section('ENTITIES', ...unnamed)), text('parts.csv', TABLE)]);
  expect(size).toEqual([60, 40]);
  expect(report.outline).toMatchObject({ why: 'smallest', sharePercent: 100 });
  expect(board.parts.find(({ refdes }) => refdes === 'R1')).toMatchObject({ x: 4, y: 4 });
});

/** One problem in one sentence, in bounded time: far less than what grows with the square of its input would take. */
function problemOf(file: GivenFile) {
  let result: ReturnType<typeof importBoard> | undefined;
  const passes = passesOf(() => {
    result = importBoard([file]);
  });
  expect(passes, file.name).toBeLessThan(1000);
  if (!result || result.ok) throw new Error('expected a problem');
  const sentence = problemSentence(result.problem);
  expect(sentence).not.toMatch(/undefined|NaN|null/);
  return sentence;
}

describe('hostile drawings end soon, as one problem', () => {
  const nest = (depth: number): Pair[] =>
    Array.from({ length: depth }, (_, level): Pair[] =>
      block(`B${level}`, ...Array.from({ length: 10 }, () => insert(`B${level + 1}`)).flat()),
    ).flat();

  test.each([
    [
      'a million lines',
      pairsText(section('ENTITIES')).slice(0, -9) + pairsText(line(0, 0, 9, 9)).repeat(1_000_000),
      /more than any outline needs/,
    ],
    [
      'blocks of blocks, 10 to the ninth',
      dxfText(section('BLOCKS', ...nest(9), ...block('B9', ...box(0, 0, 9, 9))), section('ENTITIES', ...insert('B0'))),
      /more than any outline needs/,
    ],
    [
      'as many of nothing',
      dxfText(section('BLOCKS', ...nest(9)), section('ENTITIES', ...insert('B0'))),
      /more than any outline needs/,
    ],
    [
      'a block repeated 30,000 x 30,000 times',
      dxfText(section('BLOCKS', ...block('A')), section('ENTITIES', ...insert('A', [70, 30_000], [71, 30_000]))),
      /more than any outline needs/,
    ],
    [
      'a block that holds itself',
      dxfText(section('BLOCKS', ...block('A', ...insert('A'))), section('ENTITIES', ...insert('A'))),
      /holds itself/,
    ],
    [
      'a polyline of five million figures',
      pairsText(section('ENTITIES', [0, 'LWPOLYLINE'])).slice(0, -9) + '10\n1\n20\n2\n'.repeat(2_500_000),
      /more than any outline needs/,
    ],
    [
      'a drawing cut short before anything closed',
      pairsText(section('ENTITIES', ...box(0, 0, 60, 40))).slice(0, 40),
      /no closed outline/,
    ],
    [
      'a group code of letters',
      dxfText(section('ENTITIES', [0, 'LINE'])).replace('LINE', 'LINE\nabc\nd'),
      /group code/,
    ],
  ])(
    'DXF: %s',
    (_, content, sentence) => {
      expect(problemOf(text('hostile.dxf', content))).toMatch(sentence);
    },
    40_000,
  );

  test('DXF in its binary form is told', () => {
    expect(problemOf(text('b.dxf', `${'Auto'}${'CAD'} Binary DXF\r\n\x1a\0\0\0SECTION`))).toMatch(/binary DXF/);
  });

  const entities = Array.from(
    { length: 9 },
    (_, level) => `<!ENTITY e${level + 1} "&e${level};&e${level};&e${level};">`,
  ).join('');
  test.each([
    [
      'entities of entities',
      `<!DOCTYPE svg [<!ENTITY e0 "a">${entities}]><svg><text>&e9;</text></svg>`,
      /entities of its own/,
    ],
    ['groups 100,000 deep', `<svg>${'<g>'.repeat(100_000)}`, /nested too deep/],
    ['a million circles', `<svg>${'<circle r="1"/>'.repeat(1_000_000)}</svg>`, /more than any outline needs/],
    [
      'a path of 20 megabytes',
      `<svg><path d="M0 0${' l1 1'.repeat(4_000_000)}"/></svg>`,
      /more than any outline needs/,
    ],
    ['a path of commas', `<svg><path d="M0 0${','.repeat(7_000_000)}"/></svg>`, /no closed outline/],
    [
      'one transform without an end',
      `<svg><g transform="${'scale(2)'.repeat(500_000)}"><rect width="9" height="9"/></g></svg>`,
      /./,
    ],
    ['cut short', '<svg width="9mm"><rect width="9" hei', /cut short/],
    [
      'sizes beyond all numbers',
      '<svg><g transform="scale(1e300)"><rect width="1e300" height="9"/></g></svg>',
      /no closed outline/,
    ],
  ])(
    'SVG: %s',
    (name, content, sentence) => {
      const file = text('hostile.svg', content);
      // Too many transforms count as none: then there is a board.
      if (name.startsWith('one transform')) expect(boardOf([file]).size).toHaveLength(2);
      else expect(problemOf(file)).toMatch(sentence);
    },
    40_000,
  );
});

describe('no cut and no exchanged byte makes the import throw', () => {
  const files = [
    dxf(
      header(4),
      section('BLOCKS', ...block('A', ...box(0, 0, 5, 5))),
      section('ENTITIES', ...PLATE, ...insert('A', [10, 110], [20, 105])),
    ),
    svg('<g transform="rotate(3)"><path d="M0 0h60v40a3 3 0 0 1-60 0z"/><ellipse rx="3" ry="2"/></g>'),
  ];

  test('cut short', () => {
    for (const file of files) {
      for (let length = 0; length < file.bytes.length; length += 3)
        importBoard([{ ...file, bytes: file.bytes.slice(0, length) }]);
    }
  });

  test('bytes exchanged', () => {
    const edits = fc.array(fc.tuple(fc.nat(4000), fc.nat(255)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.constantFrom(...files), edits, (file, changes) => {
        const bytes = file.bytes.slice();
        for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
        importBoard([{ ...file, bytes }]);
      }),
      { numRuns: 800, seed: 3 },
    );
  });
});
