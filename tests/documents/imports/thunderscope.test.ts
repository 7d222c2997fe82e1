import { describe, expect, test } from 'vitest';
import { importBoard } from '../../../main/document/imports/import-board.ts';
import { type Board, ownToBoard } from '../../../shared-types/board.ts';
import { importReportLines } from '../../../shared-types/words/imports.ts';
import { boardFolder, filesOf, textOf } from './boards-folder.ts';
import { importFolder } from './import-folder.ts';

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
