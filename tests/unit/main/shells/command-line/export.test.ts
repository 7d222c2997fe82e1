import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readBoard, writeBoard } from '../../../../../main/document/open-document.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { commandLineIn } from '../../../../support/command-line.ts';

const { at, run } = commandLineIn('export');

const board = boardWith([partNamed('U1'), partNamed('U2', { x: 12.3456, y: 7.5, turn: 22.5, side: 'bottom' })]);

beforeAll(async () => {
  writeFileSync(at('a.board.json'), writeBoard(board));
  await run('ticket', at('a.board.json'), '-o', at('a.hmticket'), '--site', 'U1');
});

describe('export', () => {
  test('placements of a ticket and of a bare board are the same table, and come back by import', async () => {
    expect(await run('export', 'placements', at('a.hmticket'), '-o', at('t.csv'))).toMatchObject({
      status: 0,
      error: '',
    });
    await run('export', 'placements', at('a.board.json'), '-o', at('b.csv'));
    expect(readFileSync(at('t.csv'), 'utf8')).toBe(readFileSync(at('b.csv'), 'utf8'));
    expect(readFileSync(at('t.csv'), 'utf8')).toContain('U2,,BGA 10x10,12.3456,7.5,22.5,bottom,yes,1.2\r\n');
    const imported = await run('import', at('t.csv'), '-o', at('back.board.json'));
    expect(imported.status).toBe(0);
    expect(imported.out).toMatch(/placements 1 top, 1 bottom/);
  });

  test('exposures, with the caution that they are estimates', async () => {
    const made = await run('export', 'exposures', at('a.hmticket'), '-o', at('e.csv'), '--coarse');
    expect(made).toMatchObject({ status: 0, error: '' });
    expect(made.out).toMatch(/2 parts\.\n.*estimates/);
    expect(readFileSync(at('e.csv'), 'utf8').split('\r\n')).toHaveLength(4);
  });

  test('the board as JSON', async () => {
    await run('export', 'board', at('a.hmticket'), '-o', at('c.board.json'));
    expect(readBoard(readFileSync(at('c.board.json'), 'utf8'), 'c')).toEqual({ ok: true, value: board });
  });

  test.each([
    [['export', 'chart', 'a', '-o', 'x'], 2, /board, placements or exposures/],
    [['export', 'toString', 'a', '-o', 'x'], 2, /board, placements or exposures/],
    [['export', 'placements', 'a'], 2, /-o FILE/],
    [['export', 'placements', '/nowhere', '-o', 'x'], 1, /\/nowhere/],
  ])('%j', async (words, status, error) => {
    const ended = await run(...words);
    expect(ended.status).toBe(status);
    expect(ended.error).toMatch(error);
  });

  test('exposures of a bare board: there is no plan, and nothing is written', async () => {
    const ended = await run('export', 'exposures', at('a.board.json'), '-o', at('none.csv'));
    expect(ended.status).toBe(1);
    expect(ended.error).toMatch(/plan/);
    expect(() => readFileSync(at('none.csv'))).toThrow();
  });
});
