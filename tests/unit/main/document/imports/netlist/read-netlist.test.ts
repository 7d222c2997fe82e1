import { describe, expect, test } from 'vitest';
import { importBoard } from '../../../../../../main/document/imports/import-board.ts';
import { readNetlist } from '../../../../../../main/document/imports/netlist/read-netlist.ts';
import { boxOfDiscs, turnPoint } from '../../../../../../main/document/imports/plane.ts';
import { INVENTED_PARTS, inventedFiles } from '../invented-board.ts';

/** One record, built column by column as IPC-D-356 numbers them (columns from memory; a real file is read in tests/documents). */
function record(code: '317' | '327', refdes: string, pin: string, access: string, figures: string): string {
  return `${code}${'NET'.padEnd(17)}${refdes.padEnd(6)}-${pin.padEnd(4)} ${code === '317' ? 'D0400P' : '      '}A${access}${figures}`;
}

const sized = (value: number, width: number): string => String(Math.round(value * 1000)).padStart(width, '0');
const signed = (value: number): string => `${value < 0 ? '-' : '+'}${sized(Math.abs(value), 6)}`;

/** The invented board's pads as a metric netlist whose origin lies elsewhere. */
function inventedNetlist(origin = { x: -3.25, y: 40 }): string {
  const lines = INVENTED_PARTS.flatMap(({ refdes, side, x, y, turn, pads }) =>
    pads.map(([pin, ownX, ownY, width, height]) => {
      const at = turnPoint({ x: ownX, y: side === 'bottom' ? -ownY : ownY }, turn);
      const place = `X${signed(x + at.x + origin.x)}Y${signed(y + at.y + origin.y)}`;
      return record(
        '327',
        refdes,
        pin,
        side === 'top' ? '01' : '04',
        `${place}X${sized(width, 4)}Y${sized(height, 4)}R${String(Math.floor(turn)).padStart(3, '0')}S0`,
      );
    }),
  );
  return ['P  JOB INVENTED', 'P  UNITS CUST 1', ...lines, '999', ''].join('\r\n');
}

const file = (text: string) => ({ name: 'board.ipc', bytes: new TextEncoder().encode(text) });
/** Layers of the invented board that tell no references. */
const bare = inventedFiles().map(({ name, bytes }) => ({
  name,
  bytes: new TextEncoder().encode(new TextDecoder().decode(bytes).replace(/%TO\.[^%]*%/g, '')),
}));

describe('the edge of the board (IPC-D-356A, record 389)', () => {
  const boardOf = (edge: string, extra: ReturnType<typeof file>[] = []) => {
    const text = inventedNetlist({ x: 100, y: 200 }).replace('999', `${edge}\r\n999`);
    const result = importBoard([file(text), ...extra]);
    if (!result.ok) throw new Error(result.problem.code);
    return result.value;
  };

  test('with the width of its line before it, a cutout behind an asterisk, and a continuation', () => {
    const { board, report } = boardOf(
      '389BOARD_EDGE         X0100Y0000 X+100000Y+200000 X+160000Y+200000 X+160000Y+236000\r\n' +
        '089                   X+100000Y+236000 X+100000Y+200000 * X120000Y232000 X130000 Y234000 X120000 Y232000',
    );
    expect(report.outline).toMatchObject({ lengthMm: 60, widthMm: 36, cutouts: 1, file: 'board.ipc' });
    expect(board.cutouts[0]).toEqual(
      expect.arrayContaining([
        { x: 20, y: 32 },
        { x: 30, y: 34 },
      ]),
    );
    const part = board.parts.find(({ refdes }) => refdes === 'C1');
    expect([part?.x, part?.y]).toEqual([6, 6]);
  });

  test('without a width; panels and scores are no edge of the board', () => {
    const { report } = boardOf(
      '389PANEL_EDGE         X0Y0 X900000 Y900000 X0 Y0\r\n089                   X900000\r\n' +
        '389BOARD_EDGE         X100000Y200000 X160000 Y236000 X100000 Y200000\r\n389SCORE_LINE         X110000Y200000 Y236000',
    );
    expect(report.outline).toMatchObject({ lengthMm: 60, widthMm: 36, cutouts: 0, others: [] });
  });

  test('a layer that draws the outline goes first', () => {
    const { report } = boardOf('389BOARD_EDGE         X0Y0 X900000 Y900000 X0 Y0', bare.slice(1));
    expect(report.outline).toMatchObject({ lengthMm: 60, file: 'invented-edge.gbr' });
  });
});

describe('records', () => {
  test('inches: ten thousandths; a surface pad on top, turned', () => {
    const netlist = readNetlist(
      `P  UNITS CUST 0\n${record('327', 'R1', '2', '01', 'X+010000Y-002000X0200Y0100R090S1')}\n999`,
    );
    const [pad] = netlist?.pads.get('R1') ?? [];
    expect(pad).toMatchObject({ pin: '2', side: 'top', through: false });
    expect(pad.at.x).toBeCloseTo(25.4, 9);
    expect(pad.at.y).toBeCloseTo(-5.08, 9);
    const box = boxOfDiscs(pad.hull);
    expect(box.maxX - box.minX).toBeCloseTo(0.254, 9);
    expect(box.maxY - box.minY).toBeCloseTo(0.508, 9);
  });

  test('a pin that goes through stands on both sides; a height of 0 is round', () => {
    const netlist = readNetlist(
      `P  UNITS CUST 1\n${record('317', 'J1', '1', '00', 'X+001000Y+002000X1500Y0000R000S3')}\n999`,
    );
    expect(netlist?.pads.get('J1')?.map(({ side, through }) => [side, through])).toEqual([
      ['top', true],
      ['bottom', true],
    ]);
    expect(netlist?.pads.get('J1')?.[0].hull).toEqual([{ x: 1, y: 2, r: 0.75 }]);
  });

  test('vias are no parts; pins that cannot be read are counted; a missing end is told', () => {
    const good = record('327', 'C1', '1', '02', 'X+001000Y+002000X0500Y0600R000S1');
    const netlist = readNetlist(
      `P  UNITS CUST 1\n${record('317', 'VIA', '', '00', 'X+1Y+1')}\n${good}\n327NET              C2    -1      A01X+00\n`,
    );
    expect([...(netlist?.pads.keys() ?? [])]).toEqual(['C1']);
    expect(netlist?.pads.get('C1')?.[0].side).toBe('bottom');
    expect(netlist).toMatchObject({ unread: 1, noEnd: true });
  });
});

describe('a netlist stands in for pads with references', () => {
  test('beside layers without any: same sides, middles, turns and pins as with them', () => {
    const known = importBoard(inventedFiles(), { name: 'x' });
    const made = importBoard([...bare, file(inventedNetlist())], { name: 'x' });
    if (!known.ok || !made.ok) throw new Error('expected boards');
    const { report } = made.value;
    expect(report.check).toMatchObject({ layer: 'netlist', withPads: 19, side: { wrong: [] } });
    expect(report.check?.turn.wrong).toEqual([]);
    expect(report.notes.find(({ code }) => code === 'netlist-moved')?.detail).toMatchObject({ x: 3.25, y: -40 });
    const parts = new Map(known.value.board.parts.map((part) => [part.refdes, part]));
    for (const part of made.value.board.parts) {
      const other = parts.get(part.refdes);
      expect(part).toMatchObject({
        side: other?.side,
        turn: other?.turn,
        pinCount: other?.pinCount,
        class: other?.class,
      });
      expect(Math.hypot(part.x - (other?.x ?? 0), part.y - (other?.y ?? 0))).toBeLessThan(0.01);
    }
  });

  test('alone: parts in the middle of their pads, and what is not known is said', () => {
    const made = importBoard([file(inventedNetlist({ x: 0, y: 0 }))]);
    if (!made.ok) throw new Error(made.problem.code);
    const { board, report } = made.value;
    expect(board.parts).toHaveLength(19);
    expect(report.notes.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['parts-by-pads', 'no-outline', 'netlist-pads']),
    );
    const known = new Map(INVENTED_PARTS.map((part) => [part.refdes, part]));
    for (const part of board.parts) {
      const { x = 0, y = 0, side } = known.get(part.refdes) ?? {};
      expect(part.side).toBe(side);
      expect(Math.hypot(part.x - report.shift.xMm - x, part.y - report.shift.yMm - y)).toBeLessThan(0.01);
    }
  });

  test('beside layers with references it is not needed, and told so', () => {
    const made = importBoard([...inventedFiles(), file(inventedNetlist())]);
    expect(made.ok && made.value.report.check?.layer).toBe('copper');
    expect(made.ok && made.value.report.notes.map(({ code }) => code)).toContain('netlist-not-needed');
  });

  test('a netlist of vias only is one problem', () => {
    expect(importBoard([file(`P  UNITS CUST 1\n${record('317', 'VIA', '', '00', 'X+1Y+1')}\n999\n`)])).toMatchObject({
      ok: false,
      problem: { code: 'unknown-file-kind', file: 'board.ipc', detail: { found: 'a netlist' } },
    });
  });
});
