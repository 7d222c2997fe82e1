import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { writeBoard } from '../../../../../main/document/open-document.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { commandLineIn } from '../../../../support/command-line.ts';

const { at, run } = commandLineIn('commands');

const capacitor = (refdes: string, x: number, side: 'top' | 'bottom') =>
  partNamed(refdes, {
    x,
    side,
    class: 'chip-capacitor',
    package: { name: '0402', shape: 'rectangle', lengthMm: 1, widthMm: 0.5, heightMm: 0.5 },
  });

beforeAll(() => {
  const board = boardWith([
    partNamed('U1'),
    capacitor('C1', 58, 'top'),
    capacitor('C2', 50, 'bottom'),
    capacitor('C3', 95, 'top'),
  ]);
  writeFileSync(at('probe.board.json'), writeBoard(board));
});

describe('the way from a board to a sheet', () => {
  test('check says what a file holds', async () => {
    const checked = await run('check', at('probe.board.json'));
    expect(checked).toMatchObject({ status: 0, error: '' });
    expect(checked.out).toMatch(/valid board\. 100\.0 x 80\.0 mm, 3 parts on top, 1 on the bottom/);
    expect(checked.out).toMatch(/\nBoard health: .*copper layers guessed\n/);
  });

  test('ticket, evaluate and work-map follow each other', async () => {
    const made = await run(
      'ticket',
      at('probe.board.json'),
      '-o',
      at('probe.hmticket'),
      '--site',
      'U1',
      '--number',
      'T-7',
    );
    expect(made).toMatchObject({ status: 0, error: '' });
    expect((await run('check', at('probe.hmticket'))).out).toMatch(/Ticket T-7: 1 site, 3 heat runs, 1 tags/);

    const evaluated = await run('evaluate', at('probe.hmticket'), '--json', '--coarse');
    expect(evaluated).toMatchObject({ status: 0, error: '' });
    const result = JSON.parse(evaluated.out) as {
      bands: string;
      parts: { refdes: string; clearanceMm: number; joint: { maxC: number } }[];
      actions: { refdes: string; action: string; sentence: string }[];
    };
    expect(result.bands).toBe('computed');
    const peaks = new Map(result.parts.map((part) => [part.refdes, part.joint.maxC]));
    expect([...peaks.keys()].sort()).toEqual(['C1', 'C2', 'C3', 'U1']);
    expect(peaks.get('U1')).toBeGreaterThan(peaks.get('C1')!);
    expect(peaks.get('C1')).toBeGreaterThan(peaks.get('C3')!);
    expect(result.parts.find((part) => part.refdes === 'C1')?.clearanceMm).toBeCloseTo(2.5, 1);
    expect(result.actions.find((action) => action.refdes === 'U1')?.action).toBe('target');

    const printed = await run(
      'work-map',
      at('probe.hmticket'),
      '-o',
      at('probe.pdf'),
      '--coarse',
      '--date',
      '2026-01-02',
    );
    expect(printed).toMatchObject({ status: 0, error: '' });
    expect(readFileSync(at('probe.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('pages of the sheet as pictures: one file each, or a page alone', async () => {
    const write = (...more: string[]) => run('work-map', at('probe.hmticket'), '--coarse', ...more);
    const all = await write('-o', at('probe.svg'), '--degrees', 'F', '--unit', 'mil');
    expect(all).toMatchObject({ status: 0, error: '' });
    expect(all.out.trim().split('\n').length).toBeGreaterThan(4);
    expect(readFileSync(at('probe-01.svg'), 'utf8')).toContain('aria-label="T-7"');
    const pages = ['probe-01.svg', 'probe-02.svg', 'probe-03.svg', 'probe-04.svg'].map((one) =>
      readFileSync(at(one), 'utf8'),
    );
    expect(pages.join()).toContain('°F');
    expect(pages.join()).toContain('mil');
    expect(pages.join(), 'nothing on the sheet stays in C').not.toMatch(/\d.°C/);
    expect(await write('-o', at('one.png'), '--page', '2', '--dpi', '72')).toMatchObject({ status: 0, error: '' });
    expect(readFileSync(at('one.png')).readUInt32BE(16)).toBe(595);
    expect((await write('-o', at('one.svg'), '--page', '99')).error).toMatch(/The sheet has no page 99/);
    expect((await write('-o', at('one.png'), '--dpi', '5000')).error).toMatch(/dots per inch from 50 to 600/);
    expect((await write('-o', at('one.pdf'), '--page', '1')).error).toMatch(/SVG or PNG/);
    expect((await write('-o', at('one.pdf'), '--degrees', 'K')).error).toMatch(/--degrees takes C or F/);
    expect((await write('-o', at('one.bmp'))).error).toMatch(/NAME\.svg or -o NAME\.png/);
  });

  test('a shop profile goes into the removal and installation runs', async () => {
    const profile = {
      name: 'Short',
      segments: [
        { name: 'Warm', seconds: 20, preheater: { startC: 25, endC: 200 } },
        {
          name: 'Gas',
          seconds: 10,
          preheater: { startC: 200, endC: 200 },
          gas: { startC: 300, endC: 300 },
          flowLMin: 30,
        },
      ],
    };
    writeFileSync(at('short.json'), JSON.stringify(profile));
    const made = await run(
      'ticket',
      at('probe.board.json'),
      '-o',
      at('short.hmticket'),
      '--site',
      'U1',
      '--profile',
      at('short.json'),
    );
    expect(made).toMatchObject({ status: 0, error: '' });
    const evaluated = JSON.parse((await run('evaluate', at('short.hmticket'), '--json', '--coarse')).out) as {
      runs: { seconds: number }[];
    };
    expect(evaluated.runs.map((found) => found.seconds).sort()).toContain(30);
  });
});

describe('wrong use and wrong input', () => {
  test.each([
    [[], 2, /Exit status/],
    [['fly'], 2, /no command 'fly'/],
    [['check'], 2, /missing/],
    [['check', 'a', 'b'], 2, /'b' is one word too many/],
    [['evaluate', 'a', '--fast'], 2, /--fast/],
    [['schema', 'chart'], 2, /no format 'chart'/],
    [['example', 'cold', 'x'], 2, /no example 'cold'/],
    [['example', 'heat', 'x', '--cell', '-2'], 2, /--cell needs a value/],
    [['example', 'heat', 'x', '--cell=-2'], 2, /--cell takes/],
    [['ticket', 'x.board.json', '--site', 'U1'], 2, /-o NAME/],
    [['ticket', 'x.board.json', '-o', 'x.hmticket'], 2, /--site REF/],
    [['check', '/nowhere/x.board.json'], 1, /^\/nowhere\/x\.board\.json was not found/],
    [['check', '/'], 1, /cannot be read/],
  ])('%j ends with %i', async (words, status, sentence) => {
    const ended = await run(...words);
    expect(ended.status).toBe(status);
    expect(ended.error).toMatch(sentence);
    expect(ended.out).toBe('');
  });

  test('a bare board is told that its plan is missing, on one line', async () => {
    const ended = await run('evaluate', at('probe.board.json'));
    expect(ended.status).toBe(1);
    expect(ended.error).toMatch(/a plan is missing/);
    expect(ended.error.trimEnd()).not.toContain('\n');
  });

  test('an unknown part, an unwritable place and a truncated ticket are problems', async () => {
    expect((await run('ticket', at('probe.board.json'), '-o', at('x.hmticket'), '--site', 'U99')).error).toMatch(
      /has no part U99/,
    );
    expect((await run('ticket', at('probe.board.json'), '-o', '/nowhere/x.hmticket', '--site', 'U1')).status).toBe(1);
    await run('ticket', at('probe.board.json'), '-o', at('cut.hmticket'), '--site', 'U1');
    writeFileSync(at('cut.hmticket'), readFileSync(at('cut.hmticket')).subarray(0, 300));
    expect(await run('evaluate', at('cut.hmticket'))).toMatchObject({ status: 1, out: '' });
  });

  test('a wrong profile names its field', async () => {
    writeFileSync(
      at('bad.json'),
      JSON.stringify({ name: 'x', segments: [{ name: 'a', seconds: -1, preheater: { startC: 1, endC: 2 } }] }),
    );
    const ended = await run(
      'ticket',
      at('probe.board.json'),
      '-o',
      at('x.hmticket'),
      '--site',
      'U1',
      '--profile',
      at('bad.json'),
    );
    expect(ended.error).toMatch(/segments\[0\]\.seconds/);
  });

  test('schemas are JSON Schema 2020-12', async () => {
    for (const format of ['board', 'plan', 'profile']) {
      const printed = JSON.parse((await run('schema', format)).out) as { $schema: string };
      expect(printed.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    }
  });
});
