import { expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import type { Board, Part } from '../../../../shared-types/board.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { CAUTION_IDS, CAUTIONS, cautionsFor } from '../../../../shared-types/words/cautions.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf } from './support.ts';

type Case = { part?: Part; heat?: Heat; board?: Partial<Board>; plan?: (plan: Plan) => Plan };

function cautionsWith({ part, heat, board: more, plan: change = (same) => same }: Case): string[] {
  const board = boardOf(part ? [part] : [], more);
  const plan = change(planOf(board));
  return assess(board, plan, evaluationOf(plan, part && heat ? [exposureOf(part, heat)] : [])).cautions;
}

const chip = partOf('R1', 'chip-resistor');
const coil = partOf('L4', 'power-inductor', { side: 'bottom', massG: 14, padAreaMm2: 120 });
const can = {
  id: 'SH1',
  kind: 'can',
  side: 'top',
  x: 0,
  y: 0,
  lengthMm: 5,
  widthMm: 5,
  turn: 0,
  heightMm: 2,
  sheetMm: 0.2,
  material: 'tinned-steel',
  fixing: 'clipped',
} as const;

test.each<[string, Case, Case]>([
  ['extraction-off', { plan: (plan) => ({ ...plan, station: { ...plan.station, fumeExtraction: 'off' } }) }, {}],
  ['lead', { part: partOf('R1', 'chip-resistor', { alloy: 'sn63pb37' }) }, { part: chip }],
  ['lead', { part: partOf('R1', 'chip-resistor', { alloy: 'unknown' }) }, { part: chip }],
  ['unknown-alloy', { part: partOf('R1', 'chip-resistor', { alloy: 'unknown' }) }, { part: chip }],
  ['cells', { part: partOf('BT1', 'coin-cell') }, { part: partOf('BT1', 'coin-cell', { fitted: false }) }],
  [
    'electrolytics',
    { part: partOf('C9', 'electrolytic-small'), heat: { body: 120 } },
    { part: partOf('C9', 'electrolytic-small'), heat: { body: 60 } },
  ],
  ['coated', { part: partOf('R1', 'chip-resistor', { coated: true }) }, { part: chip }],
  [
    'plastics',
    { part: partOf('J1', 'connector-lcp'), heat: { body: 190 } },
    { part: partOf('J1', 'connector-lcp'), heat: { body: 100 } },
  ],
  ['underfill', { part: partOf('U2', 'bga', { underfilled: true }) }, { part: partOf('U2', 'bga') }],
  ['underside-parts', { part: coil, heat: { body: 225, joint: 224 } }, { part: coil, heat: { body: 180, joint: 180 } }],
  ['moisture', { part: chip, heat: { body: 210 } }, { part: chip, heat: { body: 190 } }],
  ['covers', { board: { covers: [can] } }, { board: { covers: [{ ...can, kind: 'stiffener' }] } }],
  ['invented', { board: { source: { drawnFrom: '', licence: '', invented: true } } }, {}],
])('%s applies where it should and only there', (id, present, absent) => {
  expect(cautionsWith(present)).toContain(id);
  expect(cautionsWith(absent)).not.toContain(id);
});

test('every caution that is not printed always can be named, and has words', () => {
  const sometimes = CAUTION_IDS.filter((id) => !CAUTIONS[id].always);
  expect(sometimes).toHaveLength(12);
  expect(cautionsFor(cautionsWith({ part: coil, heat: { body: 225, joint: 224 } })).length).toBeGreaterThan(5);
});
