import { expect, test } from 'vitest';
import { imageBox, objectBox } from '../../../../../../main/document/imports/gerber/extents.ts';
import { readGerber } from '../../../../../../main/document/imports/gerber/read-gerber.ts';
import type { GerberImage } from '../../../../../../main/document/imports/gerber/types.ts';

/** Files of our own invention; section numbers are those of The Gerber Layer Format Specification 2023.03. */
function read(...lines: string[]): GerberImage {
  const result = readGerber([...lines, 'M02*'].join('\n'));
  if (!result.ok) throw new Error(result.failure.reason);
  return result.image;
}

const MM46 = ['%FSLAX46Y46*%', '%MOMM*%'];

function expectBox(image: GerberImage, [minX, minY, maxX, maxY]: number[], digits = 6) {
  const box = imageBox(image.objects);
  expect(box.minX).toBeCloseTo(minX, digits);
  expect(box.minY).toBeCloseTo(minY, digits);
  expect(box.maxX).toBeCloseTo(maxX, digits);
  expect(box.maxY).toBeCloseTo(maxY, digits);
}

test('format 2.3 in inches, leading zeros left out (4.2.2)', () => {
  const image = read('%FSLAX23Y23*%', '%MOIN*%', '%ADD10C,0.010*%', 'D10*', 'X1000Y500D03*');
  expectBox(image, [25.4 - 0.127, 12.7 - 0.127, 25.4 + 0.127, 12.7 + 0.127]);
  expect(image.unit).toBe('inch');
});

test('trailing zeros left out and incremental coordinates (8.2.1, deprecated)', () => {
  const image = read('%FSTIX24Y24*%', '%MOMM*%', '%ADD10C,1*%', 'D10*', 'X01Y02D03*', 'X01Y0D03*');
  const [first, second] = image.objects;
  expect(first.kind === 'flash' && first.at).toEqual({ x: 1, y: 2 });
  expect(second.kind === 'flash' && second.at).toEqual({ x: 2, y: 2 });
});

test('G70 and G71 give the unit of old files without MO (8.1)', () => {
  expect(read('%FSLAX24Y24*%', 'G70*', '%ADD10C,0.1*%', 'D10*', 'X10000Y0D03*').objects[0]).toMatchObject({
    at: { x: 25.4 },
  });
  expect(read('%FSLAX24Y24*%', 'G71*', '%ADD10C,0.1*%', 'D10*', 'X10000Y0D03*').objects[0]).toMatchObject({
    at: { x: 1 },
  });
});

test('a file without a unit is read by its number format and says so', () => {
  const read24 = read('%FSLAX24Y24*%', '%ADD10C,0.1*%', 'D10*', 'X10000Y0D03*');
  expect(read24.notes).toMatchObject([{ kind: 'unitsAssumed', detail: 'inches', line: 2 }]);
  expect(read24.objects[0]).toMatchObject({ at: { x: 25.4 } });
  const read44 = read('%FSLAX44Y44*%', '%ADD10C,0.1*%', 'D10*', 'X10000Y0D03*');
  expect(read44.notes).toMatchObject([{ kind: 'unitsAssumed', detail: 'millimetres' }]);
  expect(read44.objects[0]).toMatchObject({ at: { x: 1 } });
});

test('multi-quadrant arc: extents pass the quadrant points (4.7.2)', () => {
  const image = read(...MM46, '%ADD10C,0*%', 'D10*', 'G75*', 'X1000000Y0D02*', 'G03*', 'X0Y-1000000I-1000000J0D01*');
  expectBox(image, [-1, -1, 1, 1]);
});

test('an arc that ends where it starts is a full circle (4.7.2)', () => {
  const image = read(
    ...MM46,
    '%ADD10C,0.2*%',
    'D10*',
    'G75*',
    'X5000000Y5000000D02*',
    'G02*',
    'X5000000Y5000000I1000000J0D01*',
  );
  expectBox(image, [4.9, 3.9, 7.1, 6.1]);
});

test('single-quadrant arc: unsigned offsets, at most a quarter (8.1.10)', () => {
  const image = read(...MM46, '%ADD10C,0*%', 'D10*', 'G74*', 'X1000000Y0D02*', 'G03*', 'X0Y1000000I1000000J0D01*');
  const [stroke] = image.objects;
  expect(stroke.kind === 'stroke' && stroke.segment).toMatchObject({
    kind: 'arc',
    centre: { x: 0, y: 0 },
    clockwise: false,
  });
  expectBox(image, [0, 0, 1, 1]);
});

test('coordinates are modal, and a word without D code repeats the last operation (8.1)', () => {
  const image = read(...MM46, '%ADD10C,0.1*%', 'D10*', 'X0Y0D02*', 'X1000000D01*', 'Y2000000*');
  expect(image.objects).toHaveLength(2);
  expectBox(image, [-0.05, -0.05, 1.05, 2.05]);
});

test.each([
  ['C,1', [-0.5, -0.5, 0.5, 0.5]],
  ['C,1X0.4', [-0.5, -0.5, 0.5, 0.5]],
  ['R,2X1', [-1, -0.5, 1, 0.5]],
  ['O,3X1', [-1.5, -0.5, 1.5, 0.5]],
  ['O,1X3', [-0.5, -1.5, 0.5, 1.5]],
  ['P,2X4X0', [-1, -1, 1, 1]],
  ['P,2X4X45', [-Math.SQRT1_2, -Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2]],
])('standard aperture %s has its extents (4.4)', (template, box) => {
  expectBox(read(...MM46, `%ADD10${template}*%`, 'D10*', 'X0Y0D03*'), box as number[]);
});

test('macro: primitives, variables, arithmetic and rotation about the macro origin (4.5)', () => {
  const box = ['%AMBOX*', '0 a box and two ears*', '$3=$1x2*', '21,1,$3,$2,1,0,90*', '1,1,$2,0,-$3/2*', '1,0,50,0,0*%'];
  const image = read(...MM46, ...box, '%ADD10BOX,2X1*%', 'D10*', 'X0Y0D03*');
  expectBox(image, [-0.5, -2.5, 0.5, 3]);
});

test('macro: outline, polygon, moire, thermal (4.5.1)', () => {
  const shape = (body: string) => read(...MM46, `%AMS*${body}*%`, '%ADD10S*%', 'D10*', 'X0Y0D03*');
  expectBox(shape('4,1,3,0,0,2,0,2,1,0,0,0'), [0, 0, 2, 1]);
  expectBox(shape('4,1,3,0,0,2,0,2,1,0,0,90'), [-1, 0, 0, 2]);
  expectBox(shape('5,1,4,0,0,2,0'), [-1, -1, 1, 1]);
  expectBox(shape('6,0,0,5,0.5,0.5,2,0.1,6,0'), [-3, -3, 3, 3]);
  expectBox(shape('7,0,0,0.8,0.55,0.125,45'), [-0.4, -0.4, 0.4, 0.4], 4);
  expectBox(shape('20,1,0.2,0,0,1,0,0'), [0, -0.1, 1, 0.1]);
});

test('a rounded rectangle turned by 30 degrees keeps its true extents', () => {
  const corners = [
    [-1, -0.5],
    [1, -0.5],
    [1, 0.5],
    [-1, 0.5],
  ];
  const angle = Math.PI / 6;
  const turned = corners.map(([x, y]) => [
    x * Math.cos(angle) - y * Math.sin(angle),
    x * Math.sin(angle) + y * Math.cos(angle),
  ]);
  const flat = turned.flat().map((value) => value.toFixed(6));
  const macro = [
    '%AMRR*',
    '4,1,4,$2,$3,$4,$5,$6,$7,$8,$9,$2,$3,0*',
    '1,1,$1+$1,$2,$3*',
    '1,1,$1+$1,$4,$5*',
    '1,1,$1+$1,$6,$7*',
    '1,1,$1+$1,$8,$9*%',
  ];
  const image = read(...MM46, ...macro, `%ADD10RR,0.25X${flat.join('X')}*%`, 'D10*', 'X0Y0D03*');
  const reachX = Math.cos(angle) + 0.5 * Math.sin(angle) + 0.25;
  const reachY = Math.sin(angle) + 0.5 * Math.cos(angle) + 0.25;
  expectBox(image, [-reachX, -reachY, reachX, reachY], 5);
});

test('region with an arc: one object, exact extents; clear objects do not count (4.10)', () => {
  const region = ['G36*', 'X0Y0D02*', 'G01*', 'X2000000D01*', 'G75*', 'G03*', 'X0Y0I-1000000J0D01*', 'G37*'];
  const image = read(...MM46, ...region, '%LPC*%', '%ADD10C,9*%', 'D10*', 'X0Y0D03*');
  expect(image.objects.map(({ kind, dark }) => `${kind} ${dark}`)).toEqual(['region true', 'flash false']);
  expectBox(image, [0, 0, 2, 1]);
});

test('step and repeat copies what lies between (4.12)', () => {
  const image = read(...MM46, '%ADD10C,1*%', 'D10*', '%SRX3Y2I5.0J4.0*%', 'X0Y0D03*', '%SR*%', 'X100000000Y0D03*');
  expect(image.objects).toHaveLength(7);
  const boxes = image.objects.slice(0, 6).map((object) => objectBox(object));
  expect(boxes.map(({ minX, minY }) => `${minX + 0.5},${minY + 0.5}`)).toEqual([
    '0,0',
    '0,4',
    '5,0',
    '5,4',
    '10,0',
    '10,4',
  ]);
});

test('a block flashed mirrored, turned and scaled (4.9, 4.11)', () => {
  const block = ['%ABD20*%', 'D10*', 'X0Y0D02*', 'X3000000Y1000000D01*', '%AB*%'];
  const image = read(...MM46, '%ADD10C,0*%', ...block, '%LMX*%', '%LR90*%', '%LS2*%', 'D20*', 'X10000000Y0D03*');
  const [stroke] = image.objects;
  // (3,1) mirrored: (-3,1); turned by 90: (-1,-3); doubled: (-2,-6); moved: (8,-6).
  expect(stroke.kind === 'stroke' && stroke.segment.to).toEqual({ x: 8, y: -6 });
});

test('X2 attributes: pin of a part, aperture function, deletion (5.3, 5.6)', () => {
  const image = read(
    ...MM46,
    '%TF.FileFunction,Copper,L1,Top*%',
    '%TA.AperFunction,SMDPad,CuDef*%',
    '%ADD10R,1X1*%',
    '%TD*%',
    '%ADD11C,0.2*%',
    'D10*',
    '%TO.P,R7,2,A\\u002CB*%',
    '%TO.N,GND*%',
    'X0Y0D03*',
    '%TD.P*%',
    'X1000000Y0D03*',
    'D11*',
    '%TO.C,U1*%',
    'X0Y0D02*',
    'X1000000D01*',
  );
  expect(image.fileFunction).toEqual(['Copper', 'L1', 'Top']);
  expect(image.objects.map(({ attributes }) => attributes)).toEqual([
    { refdes: 'R7', pin: '2', pinName: 'A,B', apertureFunction: 'SMDPad,CuDef' },
    { apertureFunction: 'SMDPad,CuDef' },
    { refdes: 'U1', pin: undefined, pinName: undefined },
  ]);
});

test('X2 attributes in comments count the same (5.1.1)', () => {
  const image = read(
    'G04 #@! TF.FileFunction,Profile,NP*',
    'G04 an ordinary comment, 100 % harmless*',
    ...MM46,
    '%ADD10C,1*%',
    'D10*',
    'G04 #@! TO.P,C5,1*',
    'X0Y0D03*',
    'G04 #@! TD*',
    'X0Y0D03*',
  );
  expect(image.fileFunction).toEqual(['Profile', 'NP']);
  expect(image.objects.map(({ attributes }) => attributes.refdes)).toEqual(['C5', undefined]);
});

test('unknown commands, bad numbers, missing apertures and a missing end are told once, with their line', () => {
  const result = readGerber(
    [...MM46, '%ADD10C,1*%', 'D10*', 'X0Y0D03*', 'X1.2.3D03*', 'G99*', 'G99*', 'D77*', 'X0Y0D03*'].join('\n'),
  );
  expect(result.ok && result.image.notes.map(({ kind, line }) => `${kind} ${line}`)).toEqual([
    'badNumber 6',
    'unknownCommand 7',
    'apertureMissing 10',
    'noEnd 10',
  ]);
});

test('a repeat bomb and a block bomb are refused', () => {
  const repeat = readGerber(
    [...MM46, '%ADD10C,1*%', 'D10*', '%SRX9999Y9999I1J1*%', 'X0Y0D03*', '%SR*%', 'M02*'].join('\n'),
  );
  expect(repeat).toMatchObject({ ok: false, failure: { reason: 'tooManyObjects' } });
  const lines = [...MM46, '%ADD10C,1*%', 'D10*'];
  for (let level = 20; level < 34; level++) {
    lines.push(`%ABD${level}*%`, ...Array.from({ length: 10 }, () => 'X0Y0D03*'), '%AB*%', `D${level}*`);
  }
  expect(readGerber([...lines, 'X0Y0D03*', 'M02*'].join('\n'))).toMatchObject({
    ok: false,
    failure: { reason: 'tooManyObjects' },
  });
});
