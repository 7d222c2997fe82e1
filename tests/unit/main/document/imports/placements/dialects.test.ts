import { describe, expect, test } from 'vitest';
import { readPlacements } from '../../../../../../main/document/imports/placements/read-placements.ts';
import type { PlacementTable } from '../../../../../../main/document/imports/placements/types.ts';

/**
 * One invented board of four parts in every dialect met in exports: R1 top, C2 bottom, U3 top at 22.5 degrees, J4 bottom.
 * Headings are common practice, no source; the parts are our own invention.
 */
interface Dialect {
  readonly text: string;
  /** Unit found and where; mm per unit follows. */
  readonly unit: PlacementTable['unit'];
  readonly from: PlacementTable['unitFrom'];
  readonly separator: PlacementTable['separator'];
}

const DIALECTS: Record<string, Dialect> = {
  'comma, quoted, no unit': {
    text: 'Ref,Val,Package,PosX,PosY,Rot,Side\n"R1","10k, 1%","R_0603",10.000000,20.000000,90.000000,top\n"C2","1uF","C_0402",30.500000,-4.250000,180.000000,bottom\n"U3","GATE","QFN16",12.000000,8.000000,22.500000,top\n"J4","PLUG","HDR-6",40.000000,5.000000,-90.000000,bottom\n',
    unit: null,
    from: 'unknown',
    separator: ',',
  },
  'blanks under a commented heading, unit in the preamble': {
    text: '### Positions of an invented board ###\n## Unit = mm, Angle = deg.\n## Side : All\n# Ref     Val       Package        PosX       PosY       Rot  Side\nR1        10k,_1%   R_0603      10.0000    20.0000   90.0000  top\nC2        1uF       C_0402      30.5000    -4.2500  180.0000  bottom\nU3        GATE      QFN16       12.0000     8.0000   22.5000  top\nJ4        PLUG      HDR-6       40.0000     5.0000  -90.0000  bottom\n## End\n',
    unit: 'mm',
    from: 'preamble',
    separator: 'blanks',
  },
  'fixed columns, unit behind the values, comments with blanks': {
    text: [
      'Designator Footprint        Mid X         Mid Y         Ref X         Ref Y         Pad X         Pad Y TB      Rotation Comment   ',
      '',
      'R1         R_0603            10mm          20mm          10mm          20mm          10mm       19.25mm  T         90.00 10k, 1%   ',
      'C2         C_0402          30.5mm       -4.25mm        30.5mm       -4.25mm          31mm       -4.25mm  B        180.00 1uF       ',
      'U3         QFN16             12mm           8mm          12mm           8mm        10.5mm         7.5mm  T         22.50 GATE      ',
      'J4         HDR-6             40mm           5mm          40mm           5mm          40mm         1.5mm  B        -90.00 PLUG 6 POS',
    ].join('\r\n'),
    unit: 'mm',
    from: 'value',
    separator: 'columns',
  },
  'names that push their row out of the columns': {
    text: [
      'Designator Footprint        Mid X         Mid Y         Ref X         Ref Y         Pad X         Pad Y TB      Rotation Comment   ',
      'R1         R_0603_LONG_NAME_INDEED            10mm          20mm          10mm          20mm          10mm       19.25mm  T         90.00 10k, 1%   ',
      'C2         C_0402          30.5mm       -4.25mm        30.5mm       -4.25mm          31mm       -4.25mm  B        180.00 1uF       ',
      'U3         QFN16             12mm           8mm          12mm           8mm        10.5mm         7.5mm  T         22.50           ',
      'J4         HDR-6             40mm           5mm          40mm           5mm          40mm         1.5mm  B        -90.00 PLUG 6 POS',
    ].join('\n'),
    unit: 'mm',
    from: 'value',
    separator: 'blanks',
  },
  'long preamble, unit in the headings, mil, inner quotes': {
    text: [
      'Placement of an invented board',
      '',
      '=========================================',
      'Design information:',
      '',
      'Date:       01/02/03',
      'Units used: mil',
      '',
      'Designator Comment          Layer       Footprint Center-X(mil) Center-Y(mil) Rotation Description     ',
      'R1         "10k 1%"         TopLayer    R_0603    393.701       787.402       90       "RES 10k 1%"    ',
      'C2         1uF              BottomLayer C_0402    1200.787      -167.323      180      "CAP 1uF"       ',
      'U3         GATE             TopLayer    QFN16     472.441       314.961       22.5     "GATE .05" PAD" ',
      'J4         "PLUG .1" 6 POS" BottomLayer HDR-6     1574.803      196.850       -90      "PLUG"          ',
    ].join('\n'),
    unit: 'mil',
    from: 'heading',
    separator: 'columns',
  },
  'exclamation marks, mirror and embedded layer': {
    text: '# refdes ! symbol_x ! symbol_y ! rotation ! mirror ! symbol_name ! embedded_layer\n# UUNITS = MILS\nR1 ! 393.701 ! 787.402 ! 90 ! ! R_0603 !\nC2 ! 1200.787 ! -167.323 ! 180 ! m ! C_0402 !\nU3 ! 472.441 ! 314.961 ! 22.5 ! ! QFN16 !\nJ4 ! 1574.803 ! 196.850 ! 270 ! m ! HDR-6 !\n',
    unit: 'mil',
    from: 'preamble',
    separator: '!',
  },
  'symbol columns with YES and NO': {
    text: 'UUNITS = MILS\nREFDES,COMP_DEVICE_TYPE,COMP_VALUE,COMP_TOL,COMP_PACKAGE,SYM_X,SYM_Y,SYM_ROTATE,SYM_MIRROR\nR1,RES,10k,1%,R_0603,393.701,787.402,90,NO\nC2,CAP,1uF,,C_0402,1200.787,-167.323,180,YES\nU3,IC,GATE,,QFN16,472.441,314.961,22.5,NO\nJ4,CONN,PLUG,,HDR-6,1574.803,196.850,270,YES\n',
    unit: 'mil',
    from: 'preamble',
    separator: ',',
  },
  'headings in a comment, unit in another': {
    text: '# RefDes, Description, Value, X, Y, rotation, top/bottom\n# X,Y in mils.  rotation in degrees.\n# ----\nR1,"R_0603","10k",393.701,787.402,90,top\nC2,"C_0402","1uF",1200.787,-167.323,180,bottom\nU3,"QFN16","GATE",472.441,314.961,22.5,top\nJ4,"HDR-6","PLUG",1574.803,196.850,270,bottom\n',
    unit: 'mil',
    from: 'preamble',
    separator: ',',
  },
  'semicolons and decimal commas': {
    text: 'Designator;Value;Package;X [mm];Y [mm];Rotation;Layer\r\nR1;10k;R_0603;10,00;20,00;90;Top\r\nC2;1uF;C_0402;30,50;-4,25;180;Bottom\r\nU3;GATE;QFN16;12,00;8,00;22,5;Top\r\nJ4;PLUG;HDR-6;40,00;5,00;270;Bottom\r\n',
    unit: 'mm',
    from: 'heading',
    separator: ';',
  },
  'tabs, layer names of the copper': {
    text: 'Ref\tValue\tFootprint\tX (mm)\tY (mm)\tRotate\tSide\nR1\t10k\tR_0603\t10\t20\t90\tF.Cu\nC2\t1uF\tC_0402\t30.5\t-4.25\t180\tB.Cu\nU3\tGATE\tQFN16\t12\t8\t22.5\tF.Cu\nJ4\tPLUG\tHDR-6\t40\t5\t270\tB.Cu\n',
    unit: 'mm',
    from: 'heading',
    separator: '\t',
  },
  'name, component, side first': {
    text: 'Name,Component,Side,Centre X,Centre Y,Rotation,Pattern\nR1,10k,Top,10mm,20mm,90,R_0603\nC2,1uF,Bottom,30.5mm,-4.25mm,180,C_0402\nU3,GATE,Top,12mm,8mm,22.5,QFN16\nJ4,PLUG,Bottom,40mm,5mm,270,HDR-6\n',
    unit: 'mm',
    from: 'value',
    separator: ',',
  },
  'device beside package, positions spelled out': {
    text: 'Designator,Value,Device,Package,Position X (inch),Position Y (inch),Rotation,Side\nR1,10k,RES,R_0603,0.393701,0.787402,90,T\nC2,1uF,CAP,C_0402,1.200787,-0.167323,180,B\nU3,GATE,IC,QFN16,0.472441,0.314961,22.5,T\nJ4,PLUG,CONN,HDR-6,1.574803,0.196850,270,B\n',
    unit: 'inch',
    from: 'heading',
    separator: ',',
  },
  'no headings': {
    text: 'R1 10.00 20.00 90 top 10k R_0603\nC2 30.50 -4.25 180 bottom 1uF C_0402\nU3 12.00 8.00 22.5 top GATE QFN16\nJ4 40.00 5.00 270 bottom PLUG HDR-6\n',
    unit: null,
    from: 'unknown',
    separator: 'blanks',
  },
};

const EXPECTED = [
  ['R1', 10, 20, 90, 'top', 'R_0603'],
  ['C2', 30.5, -4.25, 180, 'bottom', 'C_0402'],
  ['U3', 12, 8, 22.5, 'top', 'QFN16'],
  ['J4', 40, 5, 270, 'bottom', 'HDR-6'],
];

describe('the same four parts in every dialect', () => {
  test.each(Object.entries(DIALECTS))('%s', (_, { text, unit, from, separator }) => {
    const table = readPlacements(text, 'invented.txt');
    if (!table) throw new Error('no table found');
    const scale = table.mmPerUnit ?? 1;
    const rows = table.placements.map(({ refdes, x, y, rotation, side, packageName }) => [
      refdes,
      Number((x * scale).toFixed(3)),
      Number((y * scale).toFixed(3)),
      (rotation + 360) % 360,
      side,
      packageName.replace('_LONG_NAME_INDEED', ''),
    ]);
    expect(rows).toEqual(EXPECTED);
    expect(table.faults).toEqual([]);
    expect([table.unit, table.unitFrom, table.separator]).toEqual([unit, from, separator]);
  });
});

function read(text: string, file = 'invented.csv'): PlacementTable {
  const table = readPlacements(text, file);
  if (!table) throw new Error('no table found');
  return table;
}

test('middle columns win over the origin and pad columns; the pad column tells the first pad', () => {
  const table = read(
    'Designator,Mid X,Mid Y,Ref X,Ref Y,Pad X,Pad Y,Layer,Rotation\nR1,1mm,2mm,7mm,8mm,1.5mm,2mm,T,0\n',
  );
  expect(table.placements[0]).toMatchObject({ x: 1, y: 2, pad1: { x: 1.5, y: 2 } });
});

test('origin columns serve where no middle is given', () => {
  expect(read('Designator,Ref-X(mil),Ref-Y(mil),Rotation,Side\nR1,100,200,0,T\n').placements[0]).toMatchObject({
    x: 100,
    y: 200,
  });
});

test('columns that nobody knows are kept apart, not guessed', () => {
  const table = read('Ref,X,Y,Rot,Side,Feeder lane,Height(mm)\nR1,1,2,0,top,17,0.8\n');
  expect(table.columns.filter(({ meaning }) => meaning === null).map(({ heading }) => heading)).toEqual([
    'Feeder lane',
  ]);
});

test('rows that cannot be read come back with line and reason', () => {
  const table = read(
    'Ref,X,Y,Rot,Side\nR1,1,2,0,top\nR2,oops,2,0,top\n,1,2,0,top\nR3,1,2,north,top\nR4,1,2,0,leftish\n',
  );
  expect(table.placements.map(({ refdes }) => refdes)).toEqual(['R1', 'R3', 'R4']);
  expect(table.faults.map(({ line, fault, word }) => [line, fault, word])).toEqual([
    [3, 'position', undefined],
    [4, 'refdes', undefined],
    [5, 'rotation', undefined],
    [6, 'side', 'leftish'],
  ]);
});

test('a blank value cell does not shift a row of fixed columns', () => {
  const table = read(
    '# Ref  Val   Package  PosX   PosY   Rot  Side\nR1     10k   R_0603   1.0    2.0    90   top\nTP1          PAD_1MM  3.0    4.0    0    top\n',
  );
  expect(table.placements.map(({ refdes, x, y, packageName, value }) => [refdes, x, y, packageName, value])).toEqual([
    ['R1', 1, 2, 'R_0603', '10k'],
    ['TP1', 3, 4, 'PAD_1MM', ''],
  ]);
});

test('an unescaped inner quote stays in its cell and swallows no rows', () => {
  const table = read(
    '"Ref","Comment","X","Y","Rot","Side"\n"J1","HEADER .05" SMD","1","2","0","top"\n"J2","PLAIN","3","4","0","top"\n',
  );
  expect(table.placements.map(({ refdes, value }) => `${refdes} ${value}`)).toEqual(['J1 HEADER .05" SMD', 'J2 PLAIN']);
});

test('a quoted cell with a line break is one row', () => {
  const table = read('Ref,Description,X,Y,Rot,Side\nU1,"two\nlines",1,2,0,top\nU2,one,3,4,0,top\n');
  expect(table.placements.map(({ refdes, x }) => [refdes, x])).toEqual([
    ['U1', 1],
    ['U2', 3],
  ]);
});

test('parts on inner layers are marked as such', () => {
  const table = read('Ref,X,Y,Rot,Layer\nR1,1,2,0,Top\nR2,3,4,0,In2.Cu\nR3,5,6,0,MidLayer1\n');
  expect(table.placements.map(({ side }) => side)).toEqual(['top', 'inner', 'inner']);
  const embedded = read('refdes!x!y!rotation!mirror!embedded_layer\nR1!1!2!0!NO!\nR2!3!4!0!NO!SIG3\n');
  expect(embedded.placements.map(({ side }) => side)).toEqual(['top', 'inner']);
});

test('without a side column the file name or its head tells the side', () => {
  const body = 'Ref,X,Y,Rot\nR1,1,2,0\n';
  expect(read(body, 'thing-bottom.csv')).toMatchObject({ sideFrom: 'name', placements: [{ side: 'bottom' }] });
  expect(read(body, 'robot-stopper.csv').sideFrom).toBe('assumed');
  expect(read('C1 1.27 2.54 90 1uF C_0402\nC2 3.81 2.54 0 1uF C_0402\n', 'thing.mnb').placements[0].side).toBe(
    'bottom',
  );
  expect(read(`## Side : bottom\n${body}`)).toMatchObject({ sideFrom: 'preamble', placements: [{ side: 'bottom' }] });
  expect(read(body)).toMatchObject({ sideFrom: 'assumed', placements: [{ side: 'top' }] });
});

test('headings without rows make an empty table', () => {
  expect(read('Ref,Val,Package,PosX,PosY,Rot,Side\n')).toMatchObject({ placements: [], faults: [] });
});

test('a fitted or DNP column marks empty positions', () => {
  const words = read('Ref,X,Y,Rot,Side,DNP\nR1,1,2,0,top,\nR2,1,2,0,top,yes\n');
  expect(words.placements.map(({ fitted }) => fitted)).toEqual([true, false]);
  const fitted = read('Ref,X,Y,Rot,Side,Fitted\nR1,1,2,0,top,yes\nR2,1,2,0,top,no\n');
  expect(fitted.placements.map(({ fitted: is }) => is)).toEqual([true, false]);
});

test.each([
  '',
  'hello world\nthis is a letter\n',
  'a,b,c\n1,2,3\n',
  '{"parts": []}',
  'Qty,Reference,Value\n2,"R1,R2",10k\n',
])('a text without a table gives none: %j', (text) => {
  expect(readPlacements(text, 'letter.txt')).toBeNull();
});

test('a headless row without its value keeps its place and is not lost', () => {
  const table = read(
    'R1 10.00 20.00 90 10k R_0603\nJ1 30.00 20.00 0 PLUG_6\nC2 30.50 4.25 180 1uF C_0402\n',
    'thing.mnt',
  );
  expect(table.placements.map(({ refdes, x, y, rotation }) => [refdes, x, y, rotation])).toEqual([
    ['R1', 10, 20, 90],
    ['J1', 30, 20, 0],
    ['C2', 30.5, 4.25, 180],
  ]);
});

test('a unit column counts row by row', () => {
  const table = read('Ref,X,Y,Rotation,Side,Unit\nU1,1000,2000,0,T,mil\nU2,25.4,50.8,0,T,mm\n');
  expect(table).toMatchObject({ unit: 'mil', unitFrom: 'value' });
  expect(table.placements[1].x).toBeCloseTo(1000, 6);
});

test('headings of layout programs that spell positions out', () => {
  const table = read('RefDes,Layer,LocationX,LocationY,Rotation,PatternName,Value\nR1,Bottom,1.5,2.5,90,R_0603,10k\n');
  expect(table.placements[0]).toMatchObject({ side: 'bottom', x: 1.5, y: 2.5, packageName: 'R_0603', value: '10k' });
});
