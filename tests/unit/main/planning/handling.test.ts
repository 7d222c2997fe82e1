import { describe, expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import type { Part } from '../../../../shared-types/board.ts';
import type { Finding } from '../../../../shared-types/evaluation.ts';
import type { Plan, Site } from '../../../../shared-types/plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { findingLine } from '../../../../shared-types/words/findings.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf } from './support.ts';

type Change = { parts?: Part[]; site?: Partial<Site>; heat?: Record<string, Heat>; tags?: Tag[] };

function findings({ parts = [], site = {}, heat = {}, tags = [] }: Change): Finding[] {
  const board = boardOf(parts);
  const plain = planOf(board);
  const plan: Plan = { ...plain, sites: [{ ...plain.sites[0], ...site }], tags: [...plain.tags, ...tags] };
  const exposures = board.parts.filter((part) => heat[part.refdes]).map((part) => exposureOf(part, heat[part.refdes]));
  return assess(board, plan, evaluationOf(plan, exposures)).findings;
}
const codes = (change: Change): string[] => findings(change).map((found) => found.code);
const line = (change: Change, code: string): string => {
  const found = findings(change).find((one) => one.code === code);
  return found ? findingLine(found) : '';
};

describe('the history of a place', () => {
  test('two exchanges are the practice of shops (SMTnet 6465), IPC-7711/21 sets none: the third stops the work', () => {
    expect(codes({ site: { exchangedBefore: 1 } })).not.toContain('exchanged-too-often');
    expect(codes({ site: { exchangedBefore: 2 } }).slice(0, 2)).toEqual(['decline-or-quote', 'exchanged-too-often']);
    expect(line({ site: { exchangedBefore: 2 } }, 'exchanged-too-often')).toMatch(/exchange no\. 3 at U1/);
  });

  test('the verdict stands first and names what cannot be mended', () => {
    const lost: Change = { parts: [partOf('U7', 'bga', { underfilled: true })], heat: { U7: { joint: 212 } } };
    expect(line({ ...lost, site: { exchangedBefore: 4 } }, 'decline-or-quote')).toBe(
      'U7 cannot be saved, and the place of U1 has been exchanged too often. Decline, or quote the replacement and ' +
        'the risk before the board is hot. (Common practice, no source: work that cannot end well is declined, or quoted ' +
        'with what it will cost.)',
    );
    expect(line(lost, 'decline-or-quote')).toMatch(/^U7 cannot be saved\. Decline/);
    expect(codes({})).not.toContain('decline-or-quote');
  });
});

/** Floor life: J-STD-020 Table 5-1 / J-STD-033 Table 7-1. Bakes: J-STD-033 user table as printed in a public copy. */
describe('moisture of the part that goes on', () => {
  const incoming = (moistureLevel: Site['incoming']['moistureLevel'], openH: number | null, thicknessMm = 1.2) => ({
    site: { incoming: { moistureLevel, openH, thicknessMm } },
  });

  test('at the end of its floor life nothing is said, an hour later it stops', () => {
    for (const [level, hours] of [
      ['2', 8760],
      ['2a', 672],
      ['3', 168],
      ['4', 72],
      ['5', 48],
      ['5a', 24],
    ] as const) {
      expect(codes(incoming(level, hours)), level).not.toContain('floor-life-over');
      expect(codes(incoming(level, hours + 1)), level).toContain('floor-life-over');
    }
    expect(codes(incoming('1', 99999))).not.toContain('floor-life-over');
  });

  test('up to 72 h late takes the shorter bake, later the longer one', () => {
    expect(line(incoming('3', 240), 'floor-life-over')).toMatch(/Bake it 7 h at 125 °C, 23 h at 90 °C or 9 d at 40 °C/);
    expect(line(incoming('3', 241), 'floor-life-over')).toMatch(
      /Bake it 9 h at 125 °C, 33 h at 90 °C or 13 d at 40 °C/,
    );
  });

  test('a thicker body takes longer; what nobody knows is taken as long over', () => {
    expect(line(incoming('4', null, 1.4), 'floor-life-unknown')).toMatch(/Bake it 11 h at 125 °C/);
    expect(line(incoming('4', null, 1.41), 'floor-life-unknown')).toMatch(
      /Bake it 34 h at 125 °C, 5 d at 90 °C or 47 d/,
    );
    expect(line(incoming('4', null, 2.1), 'floor-life-unknown')).toMatch(/Bake it 2 d at 125 °C, 10 d at 90 °C/);
    expect(line(incoming('4', null, 4.6), 'floor-life-unknown')).toMatch(/no row for it: bake as its data sheet says/);
  });

  test('an array with a side above 17 mm takes 96 h at 125 C (from memory)', () => {
    const large = (lengthMm: number): Change => ({
      site: { ...incoming('3', null, 1.2).site, target: 'U5' },
      parts: [partOf('U5', 'bga', { package: { name: '', shape: 'rectangle', lengthMm, widthMm: 10, heightMm: 1.2 } })],
    });
    expect(line(large(17), 'floor-life-unknown')).toMatch(/Bake it 9 h/);
    expect(line(large(17.5), 'floor-life-unknown')).toMatch(/Bake it 4 d at 125/);
  });

  test('asks nothing where nothing goes on', () => {
    const board = boardOf([]);
    const plain = planOf(board);
    const site = { ...plain.sites[0], incoming: { moistureLevel: '4', openH: null, thicknessMm: null } as const };
    const plan = { ...plain, sites: [site], heatRuns: plain.heatRuns.filter((run) => run.kind !== 'installation') };
    const found = assess(board, plan, evaluationOf(plan, [])).findings;
    expect(found.map((one) => one.code)).not.toContain('floor-life-unknown');
  });
});

describe('the bake of the board', () => {
  const hot: Change['heat'] = { U1: { body: 230 } };
  test('is no hotter than the weakest part stands that stays on', () => {
    expect(line({ heat: hot }, 'bake-first')).toMatch(/No part that stays asks for less than 125 °C/);
    const can = [partOf('C9', 'electrolytic-large')];
    expect(line({ parts: can, heat: hot }, 'bake-first')).toMatch(/At most 90 °C: C9 .* stands 105 °C/);
    const cell = [...can, partOf('BT1', 'coin-cell')];
    expect(line({ parts: cell, heat: hot }, 'bake-first')).toMatch(/At most 40 °C: BT1/);
    const off: Tag = {
      id: 'r',
      kind: 'remove',
      refdes: 'BT1',
      order: 2,
      note: '',
      goesBack: true,
      traySlot: 'A1',
    };
    expect(line({ parts: cell, heat: hot, tags: [off] }, 'bake-first')).toMatch(/At most 90 °C: C9/);
  });
});

describe('firmware', () => {
  test('is written in circuit where that is possible, whoever lifts it', () => {
    const lift: Tag = { id: 'p', kind: 'reprogram', refdes: 'U3', order: 3, note: '', way: 'off-and-back' };
    expect(codes({ parts: [partOf('U3', 'so')], tags: [lift] })).toContain('in-circuit-first');
    expect(codes({ parts: [partOf('U3', 'so')], tags: [{ ...lift, way: 'in-circuit' }] })).not.toContain(
      'in-circuit-first',
    );
  });
});
