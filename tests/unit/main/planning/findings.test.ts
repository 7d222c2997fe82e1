import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../../shared-types/evaluation.ts';
import type { HeatRun, Plan } from '../../../../shared-types/plan.ts';
import { FINDING_CODES, type FindingCode, findingLine, findingWords } from '../../../../shared-types/words/findings.ts';
import {
  type Change,
  cover,
  findingsAfter,
  molten,
  rows as plainRows,
  remove,
  runsWithStart,
  withRuns,
  withSite,
  withTags,
} from './provoked-findings.ts';
import { stepRows } from './provoked-steps.ts';
import { type Heat, partOf } from './support.ts';

const rows = [...plainRows, ...stepRows];

describe('findings', () => {
  test('an ordinary plan on a known board has nothing to say but that the iron is not modelled', () => {
    expect(findingsAfter({}).map((found) => found.code)).toEqual(['iron-not-modelled']);
  });

  test.each(rows)('%s', (code, weight, change) => {
    const all = findingsAfter(change);
    const own = all.filter((found) => found.code === code);
    expect(own.map((found) => found.weight)).toContain(weight);
    for (const found of all) {
      const { what, todo } = findingWords(found);
      expect(`${what} ${todo}`).not.toMatch(/undefined|NaN|\?|safe/);
      expect(findingLine(found).length).toBeGreaterThan(20);
    }
  });

  test.each(rows)('%s speaks of no gas, flow or nozzle where infrared heats from above', (code, _weight, change) => {
    const infrared = (plan: Plan): Plan => {
      const before = (change.plan ?? ((same: Plan) => same))(plan);
      const nozzle = {
        kind: 'infrared',
        lengthMm: 40,
        widthMm: 40,
        turnDeg: 0,
        standOffMm: 25,
        emissivity: 0.9,
      } as const;
      return { ...before, station: { ...before.station, nozzle } };
    };
    for (const found of findingsAfter({ ...change, plan: infrared })) {
      if (found.code === 'outlet-not-measured' || !(FINDING_CODES as string[]).includes(found.code)) continue;
      const { what, todo } = findingWords(found);
      expect(`${what}. ${todo}`, code).not.toMatch(/\b(gas|flow|nozzle|jet)\b/i);
      expect(todo).toMatch(/^[A-Z]|^$/);
    }
  });

  test('what stands under a can is told with the can, until it comes off', () => {
    const parts = [
      partOf('E1', 'electrolytic-small', { x: 80, y: 40 }),
      partOf('E2', 'electrolytic-small', { x: 96, y: 40 }),
    ];
    const heat = { E1: { joint: 225 }, E2: { joint: 225 } };
    const told = (more: Parameters<typeof cover>[0], plan = (same: Plan) => same) =>
      findingsAfter({ parts, heat, plan, board: { covers: [cover({ x: 80, ...more })] } }).filter(
        (found) => found.code === 'parts-under-can',
      );
    expect(findingWords(told({})[0])).toEqual({
      what: 'E1 stands under the can SH1, which stays on',
      todo: 'Take the can off first and tag it; or change the profile so that they may stay.',
    });
    expect(findingWords(told({ fixing: 'soldered' })[0]).todo).toMatch(
      /^The can comes off first, in a heat run of its own/,
    );
    expect(told({}, withTags(remove('SH1')))).toEqual([]);
    expect(told({ kind: 'frame' })).toEqual([]);
    expect(told({ side: 'bottom' })).toEqual([]);
  });

  test('a run without gas makes no ceramic jump: it warms slowly', () => {
    const given = { parts: [partOf('C1', 'chip-capacitor')], heat: { C1: { body: 225, joint: 210 } } };
    const codes = (plan: (plan: Plan) => Plan) =>
      findingsAfter({ ...given, plan, evaluation: runsWithStart(30) }).map((found) => found.code);
    const unlit = (runs: HeatRun[]) =>
      runs.map((run) => ({ ...run, segments: run.segments.map((one) => ({ ...one, gas: null, flowLMin: 0 })) }));
    expect(codes((same) => same)).toContain('ceramic-jump-over');
    expect(codes(withRuns(unlit)).filter((code) => code.startsWith('ceramic'))).toEqual([]);
  });

  test('every code is provoked above', () => {
    expect([...new Set(rows.map(([code]) => code))].sort()).toEqual([...FINDING_CODES].sort());
  });

  test('exceptions first: stops, then warnings, then notes', () => {
    const order = { stop: 0, warn: 1, note: 2 };
    const all = findingsAfter({
      parts: [partOf('BT1', 'coin-cell')],
      removal: { coldestJointC: 238 },
      installation: { skinMaxC: 250 },
    });
    const weights = all.map((found) => order[found.weight]);
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
    expect(new Set(weights).size).toBe(3);
  });

  test('many parts are one line that names six and counts the rest', () => {
    const parts = Array.from({ length: 9 }, (_, index) => partOf(`R${index + 2}`, 'chip-resistor'));
    const heat = Object.fromEntries(parts.map((part, index) => [part.refdes, { riseKPerS: 3.2 + index / 10 }]));
    const fast = findingsAfter({ parts, heat }).filter((found) => found.code === 'small-parts-rise-fast');
    expect(fast).toHaveLength(1);
    expect(fast[0].place).toEqual({ kind: 'part', id: 'R10' });
    expect(findingWords(fast[0]).what).toBe(
      '9 parts (R2, R3, R4, R5, R6, R7 and 3 more): small parts that rise by up to 4 °C/s; packages are held to 3 °C/s',
    );
  });

  test('a cold target says by how much, and what helps', () => {
    const words = (change: Change) =>
      findingWords(findingsAfter({ removal: { verdict: 'solid', coldestJointC: 208, moltenAtS: null }, ...change })[0]);
    expect(words({}).what).toBe('U1 does not melt in Removal: coldest corner 208 °C, 12 °C below liquidus 220');
    expect(words({}).todo).toBe('Keep the gas on longer.');
    expect(words({ evaluation: runsWithStart(110) }).todo).toBe('Preheat more or longer; or keep the gas on longer.');
    const stiffener = cover({ kind: 'stiffener', side: 'bottom', fixing: 'screwed' });
    expect(words({ board: { covers: [stiffener] } }).todo).toMatch(/^Take the stiffener off/);
  });

  test('a can that is tagged, or has its own heat run, is no finding', () => {
    const covers = [cover({ fixing: 'soldered' })];
    const codes = (plan: (plan: Plan) => Plan) => findingsAfter({ board: { covers }, plan }).map((found) => found.code);
    expect(codes(withTags(remove('SH1')))).not.toContain('soldered-can-over-target');
    expect(codes(withTags(remove('SH1')))).not.toContain('tag-on-unknown-part');
    const lift = (runs: HeatRun[]): HeatRun[] => [
      { ...runs[0], id: 'run-0', name: 'Can off', kind: 'cover-removal' },
      ...runs,
    ];
    expect(codes(withRuns(lift))).not.toContain('soldered-can-over-target');
  });

  /** Pb in a Sn-Bi joint: ternary eutectic at 96 C (equipment maker's solder lexicon; Indium 46Bi34Sn20Pb 96 C). */
  test('lead and bismuth must not meet, whichever of them is on the board', () => {
    const stops = (alloyOff: string, alloyOn: string) =>
      findingsAfter({ plan: withSite({ alloyOff, alloyOn }) }).flatMap((found) =>
        found.weight === 'stop' ? found.code : [],
      );
    expect(stops('sn63pb37', 'sn42bi58')).toEqual(['lead-meets-bismuth']);
    expect(stops('sn42bi57ag1', 'sn62pb36ag2')).toEqual(['lead-meets-bismuth']);
    expect(stops('sac305', 'sn42bi58')).toEqual([]);
    expect(stops('sn63pb37', 'sac305')).toEqual([]);
  });

  test('notices of the evaluation are findings too, said once', () => {
    const notices: Evaluation['notices'] = [
      { code: 'reynolds-low', place: 'Removal', figures: { reynolds: 1500, from: 2000, to: 400000 } },
      { code: 'iron-not-modelled', place: 'Site preparation', figures: {} },
    ];
    const all = findingsAfter({ evaluation: (evaluation) => ({ ...evaluation, notices }) });
    expect(all.map((found) => found.code)).toEqual(['iron-not-modelled', 'reynolds-low']);
    expect(all[1].place).toEqual({ kind: 'run', id: 'run-1' });
    expect(findingLine(all[1])).toMatch(/^Removal: the jet is weaker \(Reynolds number 1500\).*Martin 1977/);
  });
});

/** Borders of the published figures: at the figure nothing is said, beyond it something is. */
describe('published borders', () => {
  const said = (code: FindingCode, change: Change): boolean =>
    findingsAfter(change).some((found) => found.code === code);
  const resistor = [partOf('R1', 'chip-resistor')];

  test('3 K/s: J-STD-020 Table 5-2, ramp-up', () => {
    expect(said('rises-too-fast', { parts: [partOf('U2', 'qfn')], heat: { U2: { riseKPerS: 3 } } })).toBe(false);
    expect(said('rises-too-fast', { parts: [partOf('U2', 'qfn')], heat: { U2: { riseKPerS: 3.01 } } })).toBe(true);
  });
  test('150 s above liquidus: J-STD-020 Table 5-2', () => {
    expect(said('too-long-above-liquidus', { removal: { secondsAnyAbove: 150 } })).toBe(false);
    expect(said('too-long-above-liquidus', { removal: { secondsAnyAbove: 150.5 } })).toBe(true);
  });
  test('45 and 90 s above liquidus: common practice, no source', () => {
    expect(said('above-liquidus-short', { installation: { secondsAllAbove: 45 } })).toBe(false);
    expect(said('above-liquidus-long', { installation: { secondsAnyAbove: 90 } })).toBe(false);
  });
  test('190 K up to 1206, 130 K from 1210: Murata GRM caution 4-1; 150 K warned: Panasonic ECJ', () => {
    const jump = (id: string, siteC: number): Change => ({
      parts: [partOf('C1', id)],
      heat: { C1: { body: 225, joint: 210 } },
      evaluation: runsWithStart(siteC),
    });
    expect(said('ceramic-jump', jump('chip-capacitor', 75))).toBe(false);
    expect(said('ceramic-jump', jump('chip-capacitor', 74))).toBe(true);
    expect(said('ceramic-jump-over', jump('chip-capacitor', 36))).toBe(false);
    expect(said('ceramic-jump-over', jump('chip-capacitor', 34))).toBe(true);
    expect(said('ceramic-jump-over', jump('chip-capacitor-large', 96))).toBe(false);
    expect(said('ceramic-jump-over', jump('chip-capacitor-large', 94))).toBe(true);
  });
  test('195 C in the middle, 210 C at a corner: Ismail et al., Jurnal Teknologi 84 (2022)', () => {
    const array = (heat: Heat): Change => ({ parts: [partOf('U2', 'bga')], heat: { U2: heat } });
    expect(said('array-may-crack', array({ body: 195, joint: 210 }))).toBe(false);
    expect(said('array-may-crack', array({ body: 195.5, joint: 200 }))).toBe(true);
    expect(said('array-may-crack', array({ body: 190, joint: 210.5 }))).toBe(true);
  });
  test('3 reflows: J-STD-020 qualification (memory), Microchip soldering profile', () => {
    const twoSides = [partOf('U2', 'bga'), partOf('R9', 'chip-resistor', { side: 'bottom' })];
    expect(said('reflow-count', { parts: twoSides, heat: { U2: { ...molten, reflows: 1 } } })).toBe(false);
    expect(said('reflow-count', { parts: twoSides.slice(0, 1), heat: { U2: { ...molten, reflows: 2 } } })).toBe(false);
    expect(said('reflow-count', { parts: twoSides.slice(0, 1), heat: { U2: { ...molten, reflows: 3 } } })).toBe(true);
  });
  test('3.125 mm: IPC-7095 interim final draft 6.1.2', () => {
    expect(said('within-keep-out', { parts: resistor, heat: { R1: { clearanceMm: 3.125 } } })).toBe(false);
  });
  test('200 C: J-STD-033 clause 6 (from memory)', () => {
    expect(said('bake-first', { parts: resistor, heat: { R1: { body: 200 } } })).toBe(false);
  });
});
