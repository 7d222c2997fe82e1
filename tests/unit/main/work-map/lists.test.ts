import { describe, expect, it } from 'vitest';
import { gatherFacts, outlineOf, stateMark } from '../../../../main/work-map/facts/sheet-facts.ts';
import { cropScale, groupSites } from '../../../../main/work-map/facts/site-groups.ts';
import {
  designatorRanges,
  exceptionsOf,
  naturalOrder,
  ordinaryParts,
  removalsByTray,
} from '../../../../main/work-map/facts/work-lists.ts';
import type { PartAction } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { CAUTION_IDS, CAUTIONS, cautionsFor } from '../../../../shared-types/words/cautions.ts';
import { METRIC } from '../../../../shared-types/words/measures.ts';
import { sheetFigures } from '../../../../shared-types/words/sheet-figures.ts';
import { sheetWordsFor } from '../../../../shared-types/words/sheet-run.ts';
import { clock, SHEET, sideWords } from '../../../../shared-types/words/work-map.ts';
import { emptyAssessment, exposure } from './assessment.ts';
import { madeUpBoard, madeUpPlan } from './made-up.ts';

const board = madeUpBoard(60);
const action = (refdes: string, kind: PartAction['action'], fields: Partial<PartAction> = {}): PartAction => ({
  refdes,
  action: kind,
  reason: 'within-limits',
  figures: {},
  done: false,
  ...fields,
});

describe('lists of the sheet', () => {
  it('orders removals by tray slot, A2 before A10, those without a slot last', () => {
    const plan = madeUpPlan(board, { tags: 0 });
    const slots = ['A10', '', 'B1', 'A2'];
    const tags = slots.map((traySlot, index) => ({
      id: `t${index}`,
      kind: 'remove' as const,
      order: index + 1,
      note: '',
      refdes: `C${index + 1}`,
      goesBack: true,
      traySlot,
    }));
    const facts = gatherFacts(board, { ...plan, tags }, emptyAssessment());
    expect(removalsByTray(facts).map((tag) => tag.traySlot)).toEqual(['A2', 'A10', 'B1', '']);
  });

  it('sorts names with their numbers', () => {
    expect(['C10', 'C2', 'R1', 'C2_b', 'C02'].sort(naturalOrder)).toEqual(['C2', 'C02', 'C2_b', 'C10', 'R1']);
  });

  it('writes neighbouring designators as ranges', () => {
    expect(designatorRanges(['C1', 'C2', 'C3', 'C5', 'C6', 'R7', 'TP'])).toBe('C1–C3, C5, C6, R7, TP');
    expect(designatorRanges(['C1', 'R2'])).toBe('C1, R2');
    expect(designatorRanges([])).toBe('');
  });

  it('puts open exceptions before planned ones, the smallest margin first, and leaves out what is ordinary', () => {
    const assessment = {
      ...emptyAssessment(),
      actions: [
        action('C1', 'leave'),
        action('C2', 'leave-will-reflow'),
        action('U1', 'target'),
        action('R1', 'shield', { done: true }),
        action('R2', 'remove-first'),
        action('R3', 'shield'),
        action('R4', 'remove-first', { done: true, reason: 'tagged-by-you' }),
      ],
    };
    assessment.evaluation.parts = [
      exposure('R1', { marginK: -50 }),
      exposure('R2', { marginK: -5 }),
      exposure('R3', { marginK: -9 }),
    ];
    const facts = gatherFacts(board, madeUpPlan(board, { tags: 0 }), assessment);
    expect(exceptionsOf(facts).map((row) => row.action.refdes)).toEqual(['R3', 'R2', 'R1']);
    expect(ordinaryParts(facts)).toEqual({ count: 2, reflowing: ['C2'] });
  });
});

describe('outlines of part states', () => {
  const [, , part] = board.parts;
  const outline = (fields: Parameters<typeof exposure>[1], kind: PartAction['action'] = 'leave', fitted = true) => {
    const assessment = { ...emptyAssessment(), actions: [action(part.refdes, kind)] };
    assessment.evaluation.parts = [exposure(part.refdes, fields)];
    const facts = gatherFacts(board, madeUpPlan(board, { tags: 0 }), assessment);
    return outlineOf(facts, { ...part, fitted });
  };

  it('tell clear, unsure, over and reflow apart', () => {
    expect(outline({})).toBe('clear');
    expect(outline({ state: 'unsure' })).toBe('unsure');
    expect(outline({ state: 'over' }, 'shield')).toBe('over');
    expect(outline({ reflow: 'whole' })).toBe('reflow');
    expect(outline({ state: 'over' }, 'shield', false)).toBe('empty');
    expect([stateMark('over'), stateMark('unsure'), stateMark('reflow')]).toEqual(['!', '?', '']);
  });

  it('do not warn of a small part that is left to reflow', () => {
    expect(outline({ state: 'over', reflow: 'whole' }, 'leave-will-reflow')).toBe('reflow');
  });

  it('show a part that cannot be saved as beyond its limit, whatever doubt the band leaves', () => {
    expect(outline({ state: 'unsure' }, 'cannot-be-saved')).toBe('over');
    expect(outline({ state: 'unsure', reflow: 'whole' }, 'cannot-be-saved')).toBe('over');
  });
});

describe('crops', () => {
  const site = (x: number, lengthMm: number) => ({
    id: `s${x}`,
    name: 'U1',
    target: 'U1',
    side: 'top' as const,
    area: { x, y: 40, lengthMm, widthMm: lengthMm, turnDeg: 0 },
    alloyOff: 'sac305',
    alloyOn: 'sac305',
    exchangedBefore: 0,
    incoming: { moistureLevel: '1' as const, openH: null, thicknessMm: null },
    fence: null,
  });
  const space = { width: 520, height: 340 };

  it('are drawn at two to three times, smaller only for a site that would not fit', () => {
    expect(cropScale([site(50, 10)], 'top', 0, space)).toBe(3);
    expect(cropScale([site(50, 30)], 'top', 0, space)).toBe(2);
    expect(cropScale([site(50, 90)], 'top', 0, space)).toBeLessThan(2);
  });

  it('hold sites together while they fit at two times', () => {
    expect(groupSites([site(40, 17), site(62, 10)], 0, space).length).toBe(1);
    expect(groupSites([site(40, 17), site(200, 10)], 0, space).length).toBe(2);
    expect(groupSites([site(40, 17), { ...site(62, 10), side: 'bottom' }], 0, space).length).toBe(2);
  });
});

describe('words of the sheet', () => {
  it('write times, ramps, margins and scales', () => {
    expect([clock(0), clock(59.6), clock(265), clock(3600)]).toEqual(['0:00', '1:00', '4:25', '60:00']);
    const { ramp, signed, bare } = sheetFigures({ temperature: 'C', length: 'mm' });
    expect([ramp(23, 260), ramp(260, 260.2)]).toEqual(['23 to 260', '260']);
    expect([signed(-8.4), signed(12.6), signed(0)]).toEqual(['−8', '+13', '+0']);
    expect([bare(227.3), bare(227.3, 31.6), bare(227.3, 0.2)]).toEqual(['227', '227 ±32', '227 ±1']);
    expect(SHEET.scale(2.5).replaceAll('\u00a0', ' ')).toBe('2.5 : 1');
    expect(SHEET.scale(1 / 1.5).replaceAll('\u00a0', ' ')).toBe('1 : 1.5');
  });

  it('write every figure in the units of the user, both ways', () => {
    // 217 °C = 422.6 °F; a difference of 10 K = 18 °F; 25.4 mm = 1000 mil (definitions).
    const plain = (text: string) => text.replaceAll('\u00a0', ' ');
    const said = (temperature: 'C' | 'F', length: 'mm' | 'mil') => {
      const figures = sheetFigures({ temperature, length });
      const axis = figures.axis(100, (share) => share >= 0.4).map(({ celsius, text }) => [Math.round(celsius), text]);
      return [
        ...[figures.degrees(217), figures.bare(217, 10), figures.signed(-10), figures.range(100, 217)],
        ...[figures.ofLimit(217, 260, 10), figures.length(25.4), figures.sizes(25.4, 12.7), axis],
      ].map((one) => (typeof one === 'string' ? plain(one) : one));
    };
    expect(said('C', 'mm')).toEqual([
      ...['217 °C', '217 ±10', '−10', '100–217', '217 ±10 of 260', '25.4 mm', '25.4 x 12.7 mm'],
      [
        [0, '0'],
        [50, '50'],
        [100, '100'],
      ],
    ]);
    expect(said('F', 'mil')).toEqual([
      ...['423 °F', '423 ±18', '−18', '212–423', '423 ±18 of 500', '1000 mil', '1000 x 500 mil'],
      [
        [-18, '0'],
        [38, '100'],
        [93, '200'],
      ],
    ]);
  });

  it('speak of no gas, outlet or flow where infrared heats from above', () => {
    const plan = madeUpPlan(board, { tags: 0 });
    const infrared = {
      kind: 'infrared' as const,
      lengthMm: 30,
      widthMm: 20,
      turnDeg: 0,
      emissivity: 0.9,
      standOffMm: 40,
    };
    const lit: Plan = { ...plan, station: { ...plan.station, nozzle: infrared } };
    const said = ({ columns, act, chart, setUp, reflowing, runFacts }: ReturnType<typeof sheetWordsFor>) =>
      [columns.gasOn, columns.gasOff, columns.gasSet, act.noGas(), chart.gas, setUp, reflowing('C1')]
        .concat(runFacts('removal', 'top', 'U1', 60))
        .join(' | ');
    expect(said(sheetWordsFor(METRIC.units, plan))).toMatch(/Gas on/);
    expect(said(sheetWordsFor(METRIC.units, lit))).not.toMatch(/\b(gas|nozzle|air)\b/i);
    expect(said(sheetWordsFor(METRIC.units, lit)).replaceAll('\u00a0', ' ')).toMatch(
      /infrared emitter 30 x 20 mm, 40 mm off/,
    );
  });

  it('name side and turn', () => {
    expect(sideWords('bottom', 90)).toBe('Bottom, seen from below, turned 90°');
    expect(sideWords('top', 360)).toBe('Top');
    expect(sideWords('top', -90)).toBe('Top, turned 270°');
  });

  it('print the cautions that always stand, the named ones once, and never lose one', () => {
    const always = CAUTION_IDS.filter((id) => CAUTIONS[id].always);
    expect(cautionsFor([]).length).toBe(always.length);
    expect(cautionsFor(['lead', 'lead', 'cells']).length).toBe(always.length + 2);
    expect(cautionsFor(['no-such-caution']).at(-1)?.title).toBe('no-such-caution');
    for (const { sentence } of Object.values(CAUTIONS)) expect(sentence).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });
});
