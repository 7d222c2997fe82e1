import { afterAll, describe, expect, test } from 'vitest';
import { readBill } from '../../../main/document/imports/bill/read-bill.ts';
import { type ImportedBoard, importBoard } from '../../../main/document/imports/import-board.ts';
import { type Board, ownToBoard } from '../../../shared-types/board.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { boardFolder, filesOf, textOf } from './boards-folder.ts';

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

const rows: string[] = [];
const done = new Map<string, ImportedBoard>();

function importFolder(name: string): ImportedBoard | null {
  const known = done.get(name);
  if (known) return known;
  const folder = boardFolder(name);
  if (!folder) return null;
  const files = filesOf(folder);
  const start = performance.now();
  const result = importBoard(files);
  const seconds = (performance.now() - start) / 1000;
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  rows.push(tableRow(name, result.value, seconds));
  done.set(name, result.value);
  return result.value;
}

function tableRow(name: string, { report }: ImportedBoard, seconds: number): string {
  const { counts, outline, offset, check, sense } = report;
  const megabytes = Math.round(process.memoryUsage().rss / 1e6);
  const pads = check
    ? `side ${check.side.right}/${check.withPads - check.side.throughHole}, middle ${check.centre.within}/${check.withPads}, turn ${check.turn.manyPins.right}/${check.turn.manyPins.of} and two-pad ${check.turn.twoPads.right}/${check.turn.twoPads.of}, pads only ${check.padsOnly.length}`
    : 'no pads with references';
  const warnings = report.notes
    .filter(({ weight }) => weight === 'warn')
    .map(({ code, refdes }) => (refdes ? `${code} ${refdes.length}` : code));
  return [
    name.padEnd(14),
    `${counts.top}/${counts.bottom}`.padEnd(8),
    `${outline.lengthMm.toFixed(2)} x ${outline.widthMm.toFixed(2)} (${outline.cutouts} cutouts, ${outline.why})`.padEnd(
      40,
    ),
    `offset ${offset.by} ${offset.votes}/${offset.of}`.padEnd(28),
    `turns ${sense.turnsBy} ${sense.agreeing}/${sense.of}`.padEnd(24),
    pads,
    `[${warnings.join(', ')}]`,
    `${seconds.toFixed(2)} s, ${megabytes} MB`,
  ].join(' | ');
}

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

function partOf(board: Board, refdes: string): Board['parts'][number] {
  const part = board.parts.find((one) => one.refdes === refdes);
  if (!part) throw new Error(`no part ${refdes}`);
  return part;
}

describe('thunderscope against its own pads (Gerber X2)', () => {
  const imported = importFolder('thunderscope');
  const there = imported ? test : test.skip;

  there('side: all right', () => {
    expect(imported?.report.check?.side).toEqual({ right: 734, throughHole: 3, wrong: [] });
  });

  there('middle within 0.05 mm of the pads for 726 of 737; the others are parts with uneven pads, listed', () => {
    const centre = imported?.report.check?.centre;
    expect(centre?.within).toBe(726);
    expect(centre?.off.map(({ refdes }) => refdes).sort()).toEqual(
      ['D1', 'EMI1', 'EMI2', 'J10', 'J12', 'J13', 'J9', 'R1049_1', 'R1049_2', 'R1049_3', 'R1049_4'].sort(),
    );
  });

  there('turn within 1 degree by pin numbers; two pads modulo 180 counted apart', () => {
    const turn = imported?.report.check?.turn;
    expect(turn?.manyPins).toEqual({ right: 57, of: 57 });
    expect(turn?.twoPads).toEqual({ right: 656, of: 656, rightWithPinNumbers: 656 });
    expect(turn?.alone).toEqual({ alongAxes: 14, of: 15, others: ['D1'] });
    expect(turn?.onePin).toBe(9);
    expect(turn?.wrong).toEqual([]);
  });

  there(
    'pin 1 of every part is where the copper layers flash it, read here by a pattern and not by the importer',
    () => {
      const folder = boardFolder('thunderscope');
      if (!folder || !imported) return;
      const flashed = new Map<string, { x: number; y: number }[]>();
      for (const name of ['Thunderscope_Rev5.3-Top Layer.gtl', 'Thunderscope_Rev5.3-Bottom Layer.gbl']) {
        // Both files say FSLAX45Y45 and MM: a coordinate is in 0.01 micrometres. A pin holds until the next attribute.
        const pins = textOf(folder, name).matchAll(/%TO\.P,([^,*]+),1(?:,[^*]*)?\*%([\s\S]*?)(?=%TO\.P|%TD)/g);
        for (const [, refdes, body] of pins) {
          const pads = [...body.matchAll(/X(-?\d+)Y(-?\d+)D03\*/g)].map(([, x, y]) => ({
            x: Number(x) / 1e5,
            y: Number(y) / 1e5,
          }));
          flashed.set(refdes, [...(flashed.get(refdes) ?? []), ...pads]);
        }
      }
      let checked = 0;
      for (const part of imported.board.parts) {
        const pads = flashed.get(part.refdes);
        if (!part.pin1 || pads?.length !== 1) continue;
        const at = ownToBoard(part, part.pin1);
        expect(Math.hypot(at.x - pads[0].x, at.y - pads[0].y), part.refdes).toBeLessThan(0.001);
        checked++;
      }
      expect(checked).toBeGreaterThan(700);
    },
  );

  there('parts of one package, on either side and at any turn, have pin 1 at one place in their own axes', () => {
    const spread = new Map<string, { x: number[]; y: number[] }>();
    for (const {
      package: { name },
      pin1,
    } of imported?.board.parts ?? []) {
      if (!pin1) continue;
      const known = spread.get(name) ?? { x: [], y: [] };
      spread.set(name, { x: [...known.x, pin1.x], y: [...known.y, pin1.y] });
    }
    const wide = [...spread].filter(
      ([, { x, y }]) => Math.max(...x) - Math.min(...x) > 0.02 || Math.max(...y) - Math.min(...y) > 0.02,
    );
    expect(wide.map(([name]) => name)).toEqual([]);
  });

  there(
    'without references in its layers the offset is still voted, and sizes guessed from paste fit the named pads',
    () => {
      const folder = boardFolder('thunderscope');
      if (!folder || !imported) return;
      const bare = filesOf(folder).map(({ name, bytes }) => {
        if (!/\.g[a-z0-9]{2}$/.test(name)) return { name, bytes };
        const text = new TextDecoder('latin1').decode(bytes).replace(/%TO\.[^%]*%/g, '');
        return { name, bytes: new TextEncoder().encode(text) };
      });
      const result = importBoard(bare);
      if (!result.ok) throw new Error(JSON.stringify(result.problem));
      const { board, report } = result.value;
      expect(report.offset.by).toBe('pairs');
      expect(Math.hypot(report.offset.xMm, report.offset.yMm)).toBeLessThan(0.01);
      expect(report.offset.votes / report.offset.of).toBeGreaterThan(0.9);
      const guessed = report.notes.find(({ code }) => code === 'size-by-unnamed-pads')?.refdes ?? [];
      expect(guessed.length).toBeGreaterThanOrEqual(40);
      for (const refdes of guessed) {
        const [known, guess] = [partOf(imported.board, refdes), partOf(board, refdes)];
        expect(Math.abs(known.package.lengthMm - guess.package.lengthMm), refdes).toBeLessThan(0.5);
        expect(Math.abs(known.package.widthMm - guess.package.widthMm), refdes).toBeLessThan(0.5);
      }
    },
  );

  there('its four shield cans are covers of the size of their rings of pads, with parts under each', () => {
    const { covers = [] } = imported?.report ?? {};
    expect(covers.map(({ refdes, as, by }) => [refdes, as, by]).sort()).toEqual(
      [1, 2, 3, 4].map((number) => [`SHLD1001_${number}`, 'can', 'name']),
    );
    for (const { under } of covers) expect(under).toBeGreaterThan(20);
    const { board } = imported ?? {};
    // Oracle for the ring: middles of the flashes under each reference, by a pattern over the copper layer.
    const copper = textOf(boardFolder('thunderscope') as string, 'Thunderscope_Rev5.3-Top Layer.gtl');
    for (const cover of board?.covers ?? []) {
      const own = copper.split(/%TO\.P,/).filter((text) => text.startsWith(`${cover.id},`));
      const at = own.flatMap((text) => [...text.split('%TD')[0].matchAll(/X(-?\d+)Y(-?\d+)D03/g)]);
      expect(at.length).toBeGreaterThan(8);
      const span = (axis: number) => {
        const values = at.map((found) => Number(found[axis]) / 1e5);
        return Math.max(...values) - Math.min(...values);
      };
      const [across, up] = cover.turn % 180 === 0 ? [cover.lengthMm, cover.widthMm] : [cover.widthMm, cover.lengthMm];
      for (const [mm, between] of [
        [across, span(1)],
        [up, span(2)],
      ]) {
        expect(mm - between).toBeGreaterThan(0.2);
        expect(mm - between).toBeLessThan(2.5);
      }
    }
    expect(board?.parts.some(({ refdes }) => refdes.startsWith('SHLD'))).toBe(false);
  });

  there('outline with nine cutouts, arcs kept', () => {
    expect(imported?.board.cutouts).toHaveLength(9);
    expect(imported?.report.outline.arcs).toBe(26);
    const bulges = [imported?.board.outline ?? [], ...(imported?.board.cutouts ?? [])]
      .flat()
      .filter(({ bulge }) => bulge);
    expect(bulges.length).toBeGreaterThanOrEqual(26);
  });

  there('references with pads and no placement are listed: test points, holes, marks, empty positions', () => {
    const only = imported?.report.check?.padsOnly ?? [];
    expect(only).toHaveLength(190);
    expect(only.filter((name) => /^TP/.test(name))).toHaveLength(106);
    expect(imported?.board.fiducials).toHaveLength(8);
  });

  there('the 324-ball array is an array of 15 x 15 mm (its package code: CSG325)', () => {
    if (!imported) return;
    const array = partOf(imported.board, 'U18');
    expect(array).toMatchObject({ side: 'top', class: 'bga', pinCount: 324 });
    // Body size 15.0 mm: from memory of the maker's package drawing; the import guesses it from the grid.
    expect(Math.abs(array.package.lengthMm - 15)).toBeLessThan(0.6);
    expect(array.pin1).toEqual({ x: -6.8, y: 6.8 });
    if (imported) console.log(importReportLines(imported.report).join('\n'));
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

describe('thunderscope without its placements', () => {
  const whole = importFolder('thunderscope');
  (whole ? test : test.skip)('its layers alone give the parts, on the same sides and places', () => {
    const folder = boardFolder('thunderscope');
    if (!folder || !whole) return;
    const result = importBoard(filesOf(folder, /\.g[a-z0-9]{2}$/));
    if (!result.ok) throw new Error(result.problem.code);
    const { board, report } = result.value;
    const known = new Map(whole.board.parts.map((part) => [part.refdes, part]));
    const both = board.parts.flatMap((part) => {
      const other = known.get(part.refdes);
      return other ? [{ part, other }] : [];
    });
    const near = both.filter(({ part, other }) => Math.hypot(part.x - other.x, part.y - other.y) <= 0.05);
    const wrongSide = both.filter(({ part, other }) => part.side !== other.side);
    console.log(
      `thunderscope by pads: ${board.parts.length} parts, ${both.length} of ${known.size} placed ones, ${near.length} within 0.05 mm, ${wrongSide.length} on the other side (${wrongSide.map(({ part }) => part.refdes).join(' ')}), cutouts ${report.outline.cutouts}`,
    );
    expect(report.outline.lengthMm).toBeCloseTo(122.5, 1);
    expect(both.length).toBeGreaterThanOrEqual(728);
    expect(near.length / both.length).toBeGreaterThan(0.98);
    expect(wrongSide).toEqual([]);
    // Pin 1 on the left or upper left is a custom that not every package keeps; askew parts must come out askew.
    const off = (a: number, b: number, period: number) => Math.min((a - b + 720) % period, (b - a + 720) % period);
    const alike = both.filter(({ part, other }) => off(part.turn, other.turn, 360) <= 1);
    console.log(`turns by pins alone: ${alike.length} of ${both.length} as placed`);
    expect(alike.length / both.length).toBeGreaterThan(0.9);
    const twisted = both.filter(({ part, other }) => off(part.turn, other.turn, 90) > 1);
    expect(twisted.map(({ part }) => part.refdes)).toEqual([]);
  });
});
