import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readBoard } from '../../../../../main/document/open-document.ts';
import { commandLineIn } from '../../../../support/command-line.ts';

const { at, run } = commandLineIn('import');

/** Two images of three parts, without a unit. */
const ROWS = [0, 100].flatMap((x) =>
  ['R1', 'R2', 'U1'].map((refdes, index) => `${refdes},${x + index * 10},${index * 5},0,top`),
);
writeFileSync(at('pos.csv'), ['Ref,X,Y,Rot,Side', ...ROWS].join('\n'));

async function partsOf(...options: string[]): Promise<{ refdes: string; x: number }[]> {
  const ended = await run('import', at('pos.csv'), '-o', at('a.board.json'), ...options);
  expect(ended).toMatchObject({ status: 0, error: '' });
  const board = readBoard(readFileSync(at('a.board.json'), 'utf8'), 'a');
  return board.ok ? board.value.parts : [];
}

describe('choices of an import on the command line', () => {
  test('one image of a panel, and the unit', async () => {
    expect((await partsOf('--unit', 'mm')).map(({ refdes }) => refdes)).toEqual([
      'R1',
      'R2',
      'U1',
      'R1(2)',
      'R2(2)',
      'U1(2)',
    ]);
    const one = await partsOf('--unit', 'mm', '--panel', 'one');
    expect(one.map(({ refdes }) => refdes)).toEqual(['R1', 'R2', 'U1']);
    expect(one[1].x - one[0].x).toBeCloseTo(10, 6);
    const mils = await partsOf('--unit', 'mil', '--panel', 'one');
    expect(mils[1].x - mils[0].x).toBeCloseTo(0.254, 6);
  });

  test('the offset is taken as given', async () => {
    const ended = await run('import', at('pos.csv'), '-o', at('a.board.json'), '--unit', 'mm', '--offset=-12.5,3');
    expect(ended.out).toMatch(/offset +placements to Gerber x -12\.5, y 3 mm, chosen/);
  });

  test.each([
    ['--unit=ell', /--unit takes/],
    ['--bottom-x=left', /--bottom-x takes/],
    ['--bottom-x=toString', /--bottom-x takes/],
    ['--bottom-y=up', /--bottom-y takes/],
    ['--drawing-unit=px', /--drawing-unit takes/],
    ['--panel=two', /--panel takes/],
    ['--outline=big', /--outline takes/],
    ['--offset=1', /--offset takes/],
  ])('%s is wrong use', async (option, error) => {
    const ended = await run('import', at('pos.csv'), '-o', at('b.board.json'), option);
    expect(ended.status).toBe(2);
    expect(ended.error).toMatch(error);
  });
});

test('y of the bottom, and the unit of a drawing, are taken as given', async () => {
  writeFileSync(at('bottom.csv'), ['Ref,X (mm),Y (mm),Rot,Side', 'R1,1,2,0,bottom', 'R2,9,5,0,bottom'].join('\n'));
  const lines = [
    [0, 0, 4, 0],
    [4, 0, 4, 3],
    [4, 3, 0, 3],
    [0, 3, 0, 0],
  ].map(([x, y, toX, toY]) => `0\nLINE\n8\n0\n10\n${x}\n20\n${y}\n11\n${toX}\n21\n${toY}\n`);
  writeFileSync(at('plate.dxf'), `0\nSECTION\n2\nENTITIES\n${lines.join('')}0\nENDSEC\n0\nEOF\n`);
  const options = ['--bottom-y', 'negated', '--drawing-unit', 'cm'];
  const ended = await run('import', at('bottom.csv'), at('plate.dxf'), '-o', at('c.board.json'), ...options);
  expect(ended.out).toMatch(/drawing +plate\.dxf: in cm \(chosen\)/);
  expect(ended.out).toMatch(/outline +40 x 30 mm/);
  const board = readBoard(readFileSync(at('c.board.json'), 'utf8'), 'c');
  const [first, second] = board.ok ? board.value.parts : [];
  expect(second.y - first.y).toBeCloseTo(-3, 6);
});

describe('folders on the command line', () => {
  test('their files are read, also in folders within; hidden ones are not', async () => {
    mkdirSync(at('set/inner'), { recursive: true });
    writeFileSync(at('set/inner/pos.csv'), ['Ref,X,Y,Rot,Side', ...ROWS].join('\n'));
    writeFileSync(at('set/.pos.csv'), 'Ref,X,Y,Rot,Side\nR99,1,1,0,top');
    const ended = await run('import', at('set'), '-o', at('b.board.json'), '--unit', 'mm', '--panel', 'one');
    expect(ended).toMatchObject({ status: 0, error: '' });
    const board = readBoard(readFileSync(at('b.board.json'), 'utf8'), 'b');
    expect(board.ok && board.value.parts.map(({ refdes }) => refdes)).toEqual(['R1', 'R2', 'U1']);
  });

  test('a folder with nothing in it, and one that is not there, are named', async () => {
    mkdirSync(at('bare'));
    for (const name of ['bare', 'lost']) {
      const ended = await run('import', at(name), '-o', at('c.board.json'));
      expect(ended.status).toBe(1);
      expect(ended.error).toContain(name);
    }
  });

  test('side words and shields are what they are said to be', async () => {
    const rows = ['Ref,X (mm),Y (mm),Rot,Side', 'R1,10,10,0,zon', 'R2,20,15,0,maan', 'SHLD1,15,12,0,zon'];
    writeFileSync(at('sides.csv'), rows.join('\n'));
    const ended = await run(
      'import',
      at('sides.csv'),
      '-o',
      at('s.board.json'),
      '--side',
      'maan=bottom',
      '--side',
      'zon=top',
    );
    expect(ended.out).toMatch(/placements 2 top, 1 bottom/);
    for (const option of [
      ['--side', 'maan'],
      ['--side', 'maan=up'],
      ['--cover', 'SHLD1=lid'],
    ])
      expect((await run('import', at('sides.csv'), '-o', at('s.board.json'), ...option)).error).toMatch(
        /takes a (word|designator)/,
      );
  });
});
