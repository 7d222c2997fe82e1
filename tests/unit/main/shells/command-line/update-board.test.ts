import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { packTicket } from '../../../../../main/document/ticket-archive.ts';
import { readTicketFile } from '../../../../../main/files/ticket-file.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { commandLineIn } from '../../../../support/command-line.ts';

const { at, run } = commandLineIn('update-board');

const chip = { name: 'R_0603', shape: 'rectangle', lengthMm: 1.6, widthMm: 0.8, heightMm: null } as const;
const board = boardWith([
  partNamed('U1'),
  ...['R1', 'R2', 'R3', 'R4'].map((refdes, index) =>
    partNamed(refdes, { x: 10 + 9 * index, y: 12 + index, package: chip, class: 'chip-resistor', value: '10k' }),
  ),
]);
const plan = planForTargets(board, 'T-3', ['U1']);
plan.tags.push({ id: 'tag-7', kind: 'remove', refdes: 'R3', order: null, note: '', goesBack: true, traySlot: 'A1' });
writeFileSync(at('old.hmticket'), packTicket({ document: { board, plan }, photos: new Map() }));

/** R1 as it was, R2 moved, R3 gone, R4 of another value, R5 new; the file's origin lies 20, 5 mm off. */
const ROWS = [
  'Ref,Val,Package,PosX (mm),PosY (mm),Rot,Side',
  'U1,,BGA 10x10,70,45,0,top',
  'R1,10k,R_0603,30,17,0,top',
  'R2,10k,R_0603,41,18,0,top',
  'R4,22k,R_0603,57,20,0,top',
  'R5,1k,R_0603,80,20,0,top',
];
writeFileSync(at('new.csv'), ROWS.join('\n'));

function written() {
  const read = readTicketFile(new Uint8Array(readFileSync(at('new.hmticket'))), 'new');
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value.document;
}

describe('update-board', () => {
  test('says what changes and changes nothing with --show', async () => {
    const { status, out } = await run('update-board', at('old.hmticket'), at('new.csv'), '--show');
    expect(status).toBe(0);
    expect(out).toMatch(/lies +moved by x [\d.]+, y [\d.]+ mm, turned by 0°.*3 of 4 lie there/);
    expect(out).toMatch(/same +2 of 4 parts/);
    expect(out).toMatch(/place +R2: by 2 mm/);
    expect(out).toMatch(/value +R4: 10k → 22k/);
    expect(out).toMatch(/added +R5, R_0603/);
    expect(out).toMatch(/gone +R3: taken off; what the ticket says of it is kept \(tag remove\)/);
    expect(out).not.toMatch(/outline/);
  });

  test('says what the reading of the files stumbled over, and nothing that only a new board lacks', async () => {
    writeFileSync(
      at('plain.csv'),
      [...ROWS, 'R6,1k,R_0603,far,20,0,top'].join('\n').replace(/ \(mm\)|,Side|,top/g, ''),
    );
    const { status, out } = await run('update-board', at('old.hmticket'), at('plain.csv'), '--show');
    expect(status).toBe(0);
    expect(out).toMatch(/^warn +.*plain\.csv.*side/im);
    expect(out).toMatch(/^warn +.*unit/im);
    expect(out).toMatch(/line 7/);
    expect(out).not.toMatch(/outline|laminate|layers/i);
  });

  test('writes the ticket: the plan as it was, the board brought up to the files', async () => {
    const ended = await run('update-board', at('old.hmticket'), at('new.csv'), '-o', at('new.hmticket'));
    expect(ended).toMatchObject({ status: 0, error: '' });
    const next = written();
    expect(next.plan).toEqual(plan);
    expect(next.board.parts.map(({ refdes, x, value }) => [refdes, x, value])).toEqual([
      ['U1', 50, ''],
      ['R1', 10, '10k'],
      ['R2', 21, '10k'],
      ['R4', 37, '22k'],
      ['R5', 60, '1k'],
    ]);
    expect(next.board.outline).toEqual(board.outline);
    expect(next.board.source.drawnFrom).toBe('drawn by hand; updated from new.csv');
  });

  test('leaves, keeps and renames as it is told', async () => {
    const options = ['--leave', 'place=R2', '--leave', 'value', '--renamed', 'R3=R5', '--stay', 'R9'];
    const ended = await run('update-board', at('old.hmticket'), at('new.csv'), '-o', at('new.hmticket'), ...options);
    expect(ended).toMatchObject({ status: 0, error: '' });
    const next = written();
    expect(next.board.parts.map(({ refdes, x, value }) => [refdes, x, value])).toEqual([
      ['U1', 50, ''],
      ['R1', 10, '10k'],
      ['R2', 19, '10k'],
      ['R5', 60, '10k'],
      ['R4', 37, '10k'],
    ]);
    expect(next.plan.tags.at(-1)).toMatchObject({ id: 'tag-7', refdes: 'R5' });
  });

  test.each([
    [['--move=7,8'], /lies +moved by x 7, y 8 mm.*chosen: 0 of 4/],
    [['--turn', '90', '--mirror', '--move=0,0'], /turned by 90°, mirrored/],
  ])('takes another place of the board: %j', async (options, said) => {
    const { out } = await run('update-board', at('old.hmticket'), at('new.csv'), '--show', ...options);
    expect(out).toMatch(said);
  });

  test.each([
    [['--turn', '45'], /--turn takes/],
    [['--take', 'colour'], /--take and --leave take a kind/],
    [['--renamed', 'R3'], /two designators/],
    [[], /Name the ticket to write/],
  ])('says what does not fit: %j', async (options, said) => {
    const ended = await run(
      'update-board',
      at('old.hmticket'),
      at('new.csv'),
      ...(options.length ? ['--show'] : []),
      ...options,
    );
    expect(ended.status).toBe(2);
    expect(ended.error).toMatch(said);
  });

  test('files that give no board leave the ticket alone', async () => {
    writeFileSync(at('letter.txt'), 'Dear all,\nno placements today.\n');
    const ended = await run('update-board', at('old.hmticket'), at('letter.txt'), '-o', at('none.hmticket'));
    expect(ended.status).toBe(1);
    expect(ended.error).toMatch(/letter\.txt/);
    expect(() => readFileSync(at('none.hmticket'))).toThrow();
  });
});
