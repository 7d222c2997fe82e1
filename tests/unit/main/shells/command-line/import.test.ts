import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { readBoard } from '../../../../../main/document/open-document.ts';
import { runCommandLine } from '../../../../../main/shells/command-line/run.ts';

vi.stubGlobal('__VERSION__', 'test');
const folder = mkdtempSync(join(tmpdir(), 'heatmargin-import-'));
const at = (name: string): string => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...words: string[]): Promise<{ status: number; out: string; error: string }> {
  const heard = { out: '', error: '' };
  const status = await runCommandLine(words, {
    out: (text) => {
      heard.out += text;
    },
    error: (text) => {
      heard.error += text;
    },
  });
  return { status, ...heard };
}

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
    ['--panel=two', /--panel takes/],
    ['--outline=big', /--outline takes/],
    ['--offset=1', /--offset takes/],
  ])('%s is wrong use', async (option, error) => {
    const ended = await run('import', at('pos.csv'), '-o', at('b.board.json'), option);
    expect(ended.status).toBe(2);
    expect(ended.error).toMatch(error);
  });
});
