import { describe, expect, test } from 'vitest';
import { inWorkingOrder } from '../../../../../shared-types/rules/straps/move-order.ts';
import { planStraps, type StrapMove } from '../../../../../shared-types/rules/straps/plan-straps.ts';
import { moveLine, movesLine, refusalWords } from '../../../../../shared-types/words/straps.ts';
import { bits, jumpers, position, reel, strapPart, strapTicket } from '../../../../support/straps.ts';

type Ticket = ReturnType<typeof strapTicket>;
const lines = ({ board, plan }: Ticket) => planStraps(board, plan).moves.map(moveLine);
const refusals = ({ board, plan }: Ticket) => planStraps(board, plan).refused.map(refusalWords);

describe('positions, fitted or empty', () => {
  const positions = [position('R1'), position('R2'), position('R3', '4k7')];
  const parts = [strapPart('R1', '10k'), strapPart('R2', '10k -', { x: 12 }), strapPart('R3', '4k7 -', { x: 14 })];
  const group = jumpers('G', positions, { a: '100', b: '010', c: '011', either: 'x0x' });

  test('one relocation where a part of the value is free', () => {
    expect(lines(strapTicket(parts, [group], { G: 'b' }))).toEqual(['Relocate 10k 0402: R1 to R2']);
  });

  test('another value comes from stock, and is refused with the reason where there is none', () => {
    expect(lines(strapTicket(parts, [group], { G: 'c' }, [reel('4k7')]))).toEqual([
      'Relocate 10k 0402: R1 to R2',
      'Add 4k7 0402: from stock to R3',
    ]);
    expect(refusals(strapTicket(parts, [group], { G: 'c' }))).toEqual([
      'R3 needs 4k7 0402, and none is at hand: add it to the stock',
    ]);
  });

  test('another size or a coarser tolerance does not fit, and is named', () => {
    expect(refusals(strapTicket(parts, [group], { G: 'c' }, [reel('4.7k', '0603')]))[0]).toContain(
      'at hand but not fitting: 4.7k 0603',
    );
    const tight = jumpers('G', [position('R1'), position('R2'), position('R3', '4k7', 1)], { c: '011' });
    expect(refusals(strapTicket(parts, [tight], { G: 'c' }, [reel('4k7', '0402', null, 5)]))[0]).toContain('5 %');
    expect(refusals(strapTicket(parts, [tight], { G: 'c' }, [reel('4k7', '0402', null, 1)]))).toEqual([]);
  });

  test('with stock first the old part comes off and a new one goes on', () => {
    expect(lines(strapTicket(parts, [group], { G: 'b' }, [reel('10k')], true))).toEqual([
      'Take off 10k 0402: R1, stays off',
      'Add 10k 0402: from stock to R2',
    ]);
  });

  test('what does not matter is left alone; a setting that holds already needs nothing', () => {
    const { board, plan } = strapTicket(parts, [group], { G: 'either' });
    expect(planStraps(board, plan)).toMatchObject({ moves: [], refused: [], settled: ['G'] });
  });

  test('ticks win over the drawing', () => {
    const ticket = strapTicket(parts, [group], { G: 'b' });
    const tick = (refdes: string, fitted: boolean, value = '') => ({
      refdes,
      fitted,
      value,
      evidence: 'not-checked' as const,
      marking: '',
    });
    ticket.plan.straps.ticked = [tick('R1', false), tick('R2', true, '10k')];
    expect(lines(ticket)).toEqual([]);
    ticket.plan.straps.ticked = [tick('R2', true, '22k')];
    expect(lines(ticket)).toEqual(['Take off 22k 0402: R2, stays off', 'Relocate 10k 0402: R1 to R2']);
  });

  test('a wish for a setting that is gone, and a position on no part, are refused', () => {
    expect(refusals(strapTicket(parts, [group], { G: 'nothing of the kind' }))[0]).toContain('no longer in the table');
    expect(refusals(strapTicket(parts.slice(0, 2), [group], { G: 'b' }))).toEqual(['R3 is not on the board']);
  });
});

describe('bits with pulls', () => {
  const parts = [
    strapPart('R1', '10k'),
    strapPart('R2', '10k -', { x: 11 }),
    strapPart('R3', '10k -', { x: 12 }),
    strapPart('R4', '10k -', { x: 13 }),
  ];

  test('a bit is turned round by moving its one part to the other pull', () => {
    const group = bits('G', [{ name: 'B0', up: 'R1', down: 'R2' }], { one: '1', zero: '0' });
    expect(lines(strapTicket(parts, [group], { G: 'zero' }))).toEqual(['Relocate 10k 0402: R1 to R2']);
  });

  test('where open reads as wanted a pull is not fitted for it, and its part may serve another bit', () => {
    const group = bits(
      'G',
      [
        { name: 'B0', up: 'R1', down: 'R2', open: 1 },
        { name: 'B1', up: 'R3', down: 'R4' },
      ],
      { both: '11' },
    );
    expect(lines(strapTicket(parts, [group], { G: 'both' }))).toEqual(['Relocate 10k 0402: R1 to R3']);
    expect(lines(strapTicket(parts, [group], { G: 'both' }, [reel('10k')], true))).toEqual([
      'Add 10k 0402: from stock to R3',
    ]);
  });

  test('a level that no position gives is refused', () => {
    const group = bits('G', [{ name: 'B0', up: 'R1' }], { zero: '0' });
    expect(refusals(strapTicket(parts, [group], { G: 'zero' }))[0]).toContain('B0 cannot be 0');
  });
});

describe('several groups at once', () => {
  const parts = [
    strapPart('R1', '10k'),
    strapPart('R2', '10k -', { x: 12 }),
    strapPart('R3', '10k -', { x: 30 }),
    strapPart('R4', '10k', { x: 31 }),
  ];

  test('what one group gives up serves the other, the nearer part to the nearer place', () => {
    const a = jumpers('A', [position('R1'), position('R3')], { x: '01' });
    const b = jumpers('B', [position('R4'), position('R2')], { x: '01' });
    expect(lines(strapTicket(parts, [a, b], { A: 'x', B: 'x' })).sort()).toEqual([
      'Relocate 10k 0402: R1 to R2',
      'Relocate 10k 0402: R4 to R3',
    ]);
  });

  test('a shared position that both want alike is planned once; wanted differently both are refused and left', () => {
    const a = jumpers('A', [position('R1'), position('R2')], { on: '01', off: '10' });
    const b = jumpers('B', [position('R2'), position('R3')], { on: '10', off: '00' });
    expect(lines(strapTicket(parts, [a, b], { A: 'on', B: 'on' }))).toEqual(['Relocate 10k 0402: R1 to R2']);
    const clash = strapTicket(parts, [a, b], { A: 'on', B: 'off' });
    expect(lines(clash)).toEqual([]);
    const { refused } = planStraps(clash.board, clash.plan);
    expect(refused).toEqual([{ group: 'A / B', code: 'positions-clash', refdes: 'R2' }]);
  });
});

describe('what cannot be reached', () => {
  const parts = [
    strapPart('R1', '10k'),
    strapPart('R2', '4k7 -', { x: 12 }),
    strapPart('R3', '10k', { x: 30 }),
    strapPart('R4', '10k -', { x: 31 }),
  ];
  const lacking = jumpers('A', [position('R1'), position('R2', '4k7')], { a: '01' });

  test('leaves its group as it is, while another group is planned all the same', () => {
    const fine = jumpers('B', [position('R3'), position('R4')], { b: '01' });
    const ticket = strapTicket(parts, [lacking, fine], { A: 'a', B: 'b' });
    expect(lines(ticket)).toEqual(['Relocate 10k 0402: R3 to R4']);
    expect(refusals(ticket)).toEqual(['R2 needs 4k7 0402, and none is at hand: add it to the stock']);
  });

  test('a group that shares a position only with a refused one keeps its own plan whole', () => {
    const clash = jumpers('C', [position('R1')], { c: '1' });
    const shares = jumpers('D', [position('R2', '4k7'), position('R3'), position('R4')], { d: '001' });
    const ticket = strapTicket(parts, [lacking, clash, shares], { A: 'a', C: 'c', D: 'd' });
    expect(refusals(ticket)).toEqual([
      'R1 would have to be two things at once',
      'R2 would have to be two things at once',
    ]);
    const alone = strapTicket(parts, [lacking, clash, shares], { C: 'c', D: 'd' });
    expect(lines(alone)).toEqual(['Relocate 10k 0402: R3 to R4']);
  });

  test('sixty-four positions and a stock of five hundred kinds take no time', () => {
    const many = Array.from({ length: 64 }, (_, i) => strapPart(`R${i}`, i % 2 ? '10k' : '10k -', { x: i }));
    const wide = jumpers(
      'W',
      many.map(({ refdes }) => position(refdes)),
      { w: '10'.repeat(32) },
    );
    const stock = Array.from({ length: 500 }, (_, i) => reel(i % 2 ? '10k' : `${i + 1}R`));
    const start = performance.now();
    expect(lines(strapTicket(many, [wide], { W: 'w' }, stock))).toHaveLength(32);
    expect(performance.now() - start).toBeLessThan(4000);
  });
});

test('moves come in an order that works: off first, into free places, rings through the tray, new parts last', () => {
  const move = (from: string | null, to: string | null): StrapMove => ({
    kind: from === null ? 'add' : to === null ? 'off' : 'relocate',
    from,
    to,
    value: '',
    size: '',
    waits: false,
  });
  const ordered = inWorkingOrder([
    move(null, 'E'),
    move('A', 'B'),
    move('B', 'C'),
    move('X', 'Y'),
    move('Y', 'X'),
    move('C', null),
  ]);
  expect(ordered.map(({ from, to, waits }) => `${from}>${to}${waits ? ' waits' : ''}`)).toEqual([
    'C>null',
    'B>C',
    'A>B',
    'X>Y waits',
    'Y>X',
    'null>E',
  ]);
});

test('the line that heads the moves', () => {
  expect(movesLine({ relocated: 1, added: 1, off: 1 })).toBe('1 relocate, 1 add, 1 off');
  expect(movesLine({ relocated: 0, added: 2, off: 0 })).toBe('2 add');
  expect(movesLine({ relocated: 0, added: 0, off: 0 })).toBe('nothing to move');
});
