import { writeFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { writeBoard } from '../../../../../main/document/open-document.ts';
import { commandLineIn } from '../../../../support/command-line.ts';
import { jumpers, position, strapPart, strapTicket } from '../../../../support/straps.ts';

const { at, run } = commandLineIn('straps');

beforeAll(() => {
  const group = jumpers('Memory', [position('R1'), position('R2'), position('R3', '4k7')], {
    old: '100',
    new: '011',
    other: '010',
  });
  const parts = [strapPart('R1', '10k'), strapPart('R2', '10k -', { x: 12 }), strapPart('R3', '4k7 -', { x: 14 })];
  writeFileSync(at('b.board.json'), writeBoard(strapTicket(parts, [group]).board));
  writeFileSync(at('none.board.json'), writeBoard(strapTicket(parts, []).board));
});

test('a board says its code, and the moves to a wanted setting', async () => {
  const plain = await run('straps', at('b.board.json'));
  expect(plain).toMatchObject({ status: 0, error: '' });
  expect(plain.out).toContain("Straps 'Memory'\n  now: 100: old\n  no setting wanted\n");
  const wished = await run('straps', at('b.board.json'), '--want', 'Memory=new');
  expect(wished.out).toContain('Moves: nothing to move\n');
  expect(wished.out).toContain("refused, 'Memory': R3 needs 4k7 0402, and none is at hand");
});

test('moves as lines and as JSON', async () => {
  const { out } = await run('straps', at('b.board.json'), '--want', 'Memory=other');
  expect(out).toContain('Moves: 1 relocate\n  1. Relocate 10k 0402: R1 to R2\n');
  const json = JSON.parse((await run('straps', at('b.board.json'), '--want', 'Memory=other', '--json')).out);
  expect(json).toMatchObject({ relocated: 1, moves: [{ kind: 'relocate', from: 'R1', to: 'R2' }], refused: [] });
});

test('the same as JSON', async () => {
  const { out } = await run('straps', at('b.board.json'), '--want', 'Memory=setting-2', '--json');
  expect(JSON.parse(out)).toMatchObject({
    groups: [{ name: 'Memory', code: '100', says: ['old'], wanted: 'new', faults: [] }],
    relocated: 0,
    moves: [],
    refused: [{ code: 'no-part-at-hand', refdes: 'R3' }],
  });
});

test('a wish that names nothing is wrong use; a board without straps says so', async () => {
  const wrong = await run('straps', at('b.board.json'), '--want', 'Memory=nothing');
  expect(wrong).toMatchObject({ status: 2, out: '' });
  expect(wrong.error).toContain('--want Memory=nothing');
  expect((await run('straps', at('none.board.json'))).out).toBe('The board has no strap groups.\n');
});

test('the gateway sample: one relocation, one added, one taken off, and the sum agrees', async () => {
  const { out } = await run('straps', 'sample-boards/greenhouse-gateway.hmticket');
  expect(out).toContain('Moves: 1 relocate, 1 add, 1 off');
  expect(out).toContain('R101 to R102');
  expect(out).toContain('Parts that go on add up to 16 Gbit, as the setting tells');
});

test('the ferry sample: the divider is read, its ambiguous code refused', async () => {
  const { out } = await run('straps', 'sample-boards/ferry-gate-controller.hmticket');
  expect(out).toContain('24 V drive');
  expect(out).toMatch(/refused, 'Gate drive': code 4 is ambiguous: .* can be read as 3, 4/);
  expect(out).toContain('Moves: nothing to move');
});
