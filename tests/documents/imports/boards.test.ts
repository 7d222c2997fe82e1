import { afterAll, describe, expect, test } from 'vitest';
import { readBill } from '../../../main/document/imports/bill/read-bill.ts';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { boardFolder, filesOf, textOf } from './boards-folder.ts';
import { importFolder, rows } from './import-folder.ts';

/** Real boards as oracles: counts and sizes are those that ../shared/boards/README.md states for each. */
interface Expected {
  readonly top: number;
  readonly bottom: number;
  /** Outline box, mm; null where no layer shows one. */
  readonly outline: readonly [number, number] | null;
  readonly unit: string;
  /** Logos and drawings among the placements, top and bottom: counted, but no parts. */
  readonly legend?: readonly [number, number];
  readonly turns?: 'pads' | 'columns' | 'none';
}

const EXPECTED: Record<string, Expected> = {
  thunderscope: { top: 464, bottom: 273, outline: [122.5, 103.5], unit: 'mm', turns: 'pads' },
  ulx3s: { top: 51, bottom: 155, outline: [93.98, 50.8], unit: 'mm', turns: 'none' },
  butterstick: { top: 128, bottom: 208, outline: [80, 49], unit: 'mm', turns: 'pads', legend: [7, 2] },
  fomu: { top: 0, bottom: 38, outline: [13, 9.4], unit: 'mm' },
  'protel-panel': { top: 279, bottom: 3, outline: [105.0036, 105.0036], unit: 'mil', turns: 'columns' },
  'debug-adapter': { top: 22, bottom: 0, outline: [60, 35], unit: 'mil', turns: 'none' },
  'limesdr-usb': { top: 285, bottom: 572, outline: [100, 60], unit: 'mm', turns: 'columns' },
  kvision: { top: 73, bottom: 4, outline: [122, 56], unit: 'mm', turns: 'columns' },
  xy: { top: 46, bottom: 0, outline: null, unit: 'mil', turns: 'none' },
};

afterAll(() => {
  if (rows.length > 0)
    console.log(
      [
        'board          | top/bottom | outline | offset | turns | pads | warnings | time and process memory',
        ...rows,
      ].join('\n'),
    );
});

describe('every real board with placements comes in whole', () => {
  test.each(Object.entries(EXPECTED))('%s', (name, expected) => {
    const imported = importFolder(name);
    if (!imported) return;
    const { board, report } = imported;
    const placed = [...board.parts, ...board.covers];
    const onSide = (side: string) => placed.filter((part) => part.side === side).length;
    const [top, bottom] = expected.legend ?? [0, 0];
    expect([onSide('top'), onSide('bottom')]).toEqual([expected.top - top, expected.bottom - bottom]);
    expect(report.counts).toEqual({
      top: expected.top,
      bottom: expected.bottom,
      inner: 0,
      unread: 0,
      legend: top + bottom,
    });
    expect(new Set(report.tables.map(({ unit }) => unit))).toEqual(new Set([expected.unit]));
    if (expected.turns) expect(report.sense.turnsBy).toBe(expected.turns);
    if (expected.outline === null) expect(report.outline.why).toBe('parts');
    else {
      // Outline box within 0.05 mm.
      expect(Math.abs(report.outline.lengthMm - expected.outline[0])).toBeLessThan(0.05);
      expect(Math.abs(report.outline.widthMm - expected.outline[1])).toBeLessThan(0.05);
    }
    for (const line of importReportLines(report)) expect(line).not.toMatch(/undefined|NaN|\[object/);
  });
});

describe('butterstick: bottom x negated, offset to the Gerber origin', () => {
  const imported = importFolder('butterstick');
  const there = imported ? test : test.skip;

  there('both are found by the pads', () => {
    expect(imported?.report.sense).toMatchObject({ xNegated: true, xBy: 'pads', agreeing: 304, of: 304 });
    expect(imported?.report.offset).toMatchObject({ by: 'references', votes: 322, of: 327 });
    expect(imported?.report.check?.side.wrong).toEqual([]);
    expect(imported?.report.check?.turn.wrong).toEqual([]);
  });

  there('headers whose origin is pin 1 get the middle of their pads', () => {
    const pins = imported?.report.check?.centre.off.filter(({ why }) => why === 'pin').map(({ refdes }) => refdes);
    expect(pins).toEqual(['J6', 'J7']);
  });
});

describe('butterstick with its bill of materials', () => {
  const folder = boardFolder('butterstick');
  const there = folder ? test : test.skip;
  const lineOf = (refdes: string) => (found: { refdes: string }) => found.refdes === refdes;

  there('the bill lists as many parts as it says itself, and its empty positions are empty', () => {
    const imported = importFolder('butterstick');
    if (!imported || !folder) return;
    const text = textOf(folder, 'ButterStick-r1.0a-bom.csv');
    const stated = Number(/"Component Count:","(\d+)"/.exec(text)?.[1]);
    const bill = readBill(text, 'bom.csv');
    expect(bill?.lines.size).toBe(stated);
    const empty = [...text.matchAll(/^"","","([A-Z]+\d+)".*"DNP"/gm)].map(([, refdes]) => refdes);
    expect(empty).toHaveLength(19);
    for (const refdes of empty) expect(imported.board.parts.find(lineOf(refdes))?.fitted, refdes).toBe(false);
    expect(imported.board.parts.filter(({ fitted }) => !fitted)).toHaveLength(19);
    expect(imported.report.notes.find(({ code }) => code === 'bill-unlisted')?.refdes).toEqual(['J6', 'J7']);
    expect(imported.report.notes.find(({ code }) => code === 'legend')?.refdes).toEqual(['G***', 'LOGO1', 'LOGO2']);
  });

  there('layers and bill alone give parts with package names and values', () => {
    if (!folder) return;
    const result = importBoard(filesOf(folder, /(zip|bom\.csv)$/));
    if (!result.ok) throw new Error(result.problem.code);
    const part = result.value.board.parts.find(lineOf('C10'));
    expect(part).toMatchObject({ value: '10uF', package: { name: 'Capacitor_SMD:C_0603_1608Metric' } });
  });
});

test('fomu: the netlist tells the pads, and every part lies right on them', () => {
  const imported = importFolder('fomu');
  if (!imported) return;
  const { check, offset } = imported.report;
  expect(offset).toMatchObject({ by: 'references', votes: 38, of: 38 });
  expect(check).toMatchObject({
    layer: 'netlist',
    withPads: 38,
    side: { right: 38, wrong: [] },
    centre: { within: 38 },
  });
  expect(check?.turn).toMatchObject({ manyPins: { right: 3, of: 3 }, twoPads: { right: 29, of: 29 }, wrong: [] });
});

test('fomu without its placements: the netlist alone gives the parts, on the same sides and places', () => {
  const whole = importFolder('fomu');
  const folder = boardFolder('fomu');
  if (!whole || !folder) return;
  const result = importBoard(filesOf(folder, /\.(d356|gm1|gbp|gtp)$/));
  if (!result.ok) throw new Error(result.problem.code);
  const made = new Map(result.value.board.parts.map((part) => [part.refdes, part]));
  for (const part of whole.board.parts) {
    const other = made.get(part.refdes);
    expect(other?.side, part.refdes).toBe(part.side);
    expect(Math.hypot((other?.x ?? 0) - part.x, (other?.y ?? 0) - part.y), part.refdes).toBeLessThan(0.05);
  }
});

test('protel-panel: the fixed-width and the CSV form are one placement; the double reference is kept twice', () => {
  const folder = boardFolder('protel-panel');
  if (!folder) return;
  const forms = ['Pick_Place_for_SE_SG_IF_V2.csv', 'Pick_Place_for_SE_SG_IF_V2.txt'].map((name) => {
    const result = importBoard(filesOf(folder).filter((file) => file.name === name));
    if (!result.ok) throw new Error(JSON.stringify(result.problem));
    return result.value.board.parts;
  });
  expect(forms[1]).toEqual(forms[0]);
  expect(forms[0].filter(({ refdes }) => /^U200/.test(refdes)).map(({ refdes }) => refdes)).toEqual([
    'U200',
    'U200(2)',
  ]);
});

test('limesdr-usb: layers alone show the same outline, told by the paste pads in it', () => {
  const folder = boardFolder('limesdr-usb');
  if (!folder) return;
  const result = importBoard(filesOf(folder, /\.G/));
  if (!result.ok) throw new Error(result.problem.code);
  const { outline } = result.value.report;
  expect(outline).toMatchObject({ why: 'pads', file: 'LimeSDR-USB_1v4.GM1' });
  expect(Math.abs(outline.lengthMm - 100)).toBeLessThan(0.05);
  expect(Math.abs(outline.widthMm - 60)).toBeLessThan(0.05);
});

test('limesdr-usb: the outline stands among hundreds of loops; the parked part and the outer fiducials are told', () => {
  const imported = importFolder('limesdr-usb');
  if (!imported) return;
  expect(imported.report.outline).toMatchObject({ why: 'smallest', sharePercent: 99.4 });
  const off = imported.report.notes.find(({ code }) => code === 'off-board');
  expect(off?.refdes?.sort()).toEqual(['F1', 'F2', 'F3', 'F4', 'JMP1']);
});
