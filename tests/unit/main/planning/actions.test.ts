import { describe, expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import type { Part } from '../../../../shared-types/board.ts';
import type { ActionKind, PartAction } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { actionLimit, actionReason, type ReasonCode } from '../../../../shared-types/words/planning.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf } from './support.ts';

const removeTag = (refdes: string): Tag => ({
  id: `r-${refdes}`,
  kind: 'remove',
  refdes,
  order: 5,
  note: '',
  goesBack: true,
  traySlot: 'A1',
});
const shieldTag = (refdes: string): Tag => ({
  id: `s-${refdes}`,
  kind: 'shield',
  refdes,
  order: 6,
  note: '',
  shield: 'foil-tent',
});

function adviceFor(
  part: Part,
  heat: Heat,
  tags: Tag[] = [],
  change: (plan: Plan) => Plan = (plan) => plan,
): PartAction {
  const board = boardOf([part]);
  const plan = change({ ...planOf(board), tags: [...planOf(board).tags, ...tags] });
  const found = assess(board, plan, evaluationOf(plan, [exposureOf(part, heat)]));
  const own = found.actions.filter((action) => action.refdes === part.refdes);
  expect(own).toHaveLength(1);
  return own[0];
}

type Row = [what: string, part: Part, heat: Heat, action: ActionKind, reason: ReasonCode];

/** Limits used below: PBT 200 on the skin, moulded packages by J-STD-020 Table 4-2, electrolytics by maker (figures page, A and B). */
const rows: Row[] = [
  ['a cool package', partOf('U2', 'so'), { skin: 150 }, 'leave', 'within-limits'],
  [
    'a part without any limit',
    partOf('X1', 'metal-can'),
    { body: 150, limits: { joint: null } },
    'leave',
    'no-limit-known',
  ],
  [
    'a bypass part at the array',
    partOf('C1', 'chip-capacitor'),
    { body: 232, joint: 234 },
    'leave-will-reflow',
    'small-part-reflows',
  ],
  [
    'a small part with one molten end',
    partOf('R1', 'chip-resistor'),
    { joint: 222, jointMin: 214 },
    'leave-will-reflow',
    'small-part-melts-at-one-end',
  ],
  [
    'a bypass part on the underside that hangs on',
    partOf('C1', 'chip-capacitor', {
      side: 'bottom',
      package: { name: '0402', shape: 'rectangle', lengthMm: 1, widthMm: 0.5, heightMm: 0.5 },
    }),
    { body: 240, joint: 240 },
    'leave-will-reflow',
    'underside-part-reflows',
  ],
  [
    'a neighbouring array within the repeat of a hand-held run of melting',
    partOf('U2', 'bga'),
    { skin: 210, joint: 210 },
    'leave',
    'large-part-near-melting',
  ],
  [
    'the same with a computed band that leaves it well below',
    partOf('U2', 'bga'),
    { skin: 210, joint: 210, bandK: 5 },
    'leave',
    'within-limits',
  ],
  [
    'a large part that melts whole',
    partOf('U2', 'bga'),
    { skin: 235, joint: 228, jointMin: 223 },
    'leave-will-reflow',
    'large-part-reflows',
  ],
  [
    'a large part that melts at one edge',
    partOf('U2', 'bga'),
    { skin: 230, joint: 224, jointMin: 196 },
    'remove-first',
    'large-part-partly-molten',
  ],
  [
    'a large part that is mushy at one edge',
    partOf('U2', 'bga'),
    { skin: 230, joint: 224, jointMin: 218 },
    'remove-first',
    'large-part-partly-molten',
  ],
  [
    'a PBT connector that a foil saves',
    partOf('J1', 'connector-pbt'),
    { skin: 226, shieldedSkin: 190, joint: 165 },
    'shield',
    'shield-brings-it-under',
  ],
  [
    'a PBT connector that a foil only just saves',
    partOf('J1', 'connector-pbt'),
    { skin: 226, shieldedSkin: 198, joint: 165 },
    'remove-first',
    'shield-not-enough',
  ],
  [
    'a PBT connector that stays over under foil',
    partOf('J1', 'connector-pbt'),
    { skin: 243, shieldedSkin: 214, joint: 165 },
    'remove-first',
    'shield-not-enough',
  ],
  [
    'a PBT connector on a hot board',
    partOf('J1', 'connector-pbt'),
    { skin: 226, shieldedSkin: 221, joint: 210 },
    'remove-first',
    'board-too-hot',
  ],
  [
    'a connector heated through its pins',
    partOf('J1', 'connector-pbt'),
    { skin: 208, shieldedSkin: 205, joint: 199, shares: { gas: 0.2, preheater: 0.1, joints: 0.7, losses: 0.1 } },
    'remove-first',
    'heat-through-joints',
  ],
  [
    'an electrolytic that would melt again',
    partOf('C9', 'electrolytic-medium'),
    { body: 215, joint: 219, jointMin: 219 },
    'remove-first',
    'rated-for-one-reflow',
  ],
  [
    'an electrolytic over its limit that would melt again as well: off at once, no shield first',
    partOf('C9', 'electrolytic-medium'),
    { body: 245, shieldedBody: 205, joint: 232 },
    'remove-first',
    'rated-for-one-reflow',
  ],
  [
    'a package over its limit that would tilt as well: off at once, no shield first',
    partOf('J1', 'connector-lcp'),
    { skin: 262, shieldedSkin: 240, joint: 224, jointMin: 200 },
    'remove-first',
    'large-part-partly-molten',
  ],
  [
    'a connector that no reflow is allowed',
    partOf('J1', 'connector-pa66-gf'),
    { skin: 225, joint: 219 },
    'remove-first',
    'not-reflow-rated',
  ],
  [
    'a part nobody named',
    partOf('Z1', 'no-such-class'),
    { skin: 195, joint: 219 },
    'remove-first',
    'class-not-known-would-reflow',
  ],
  [
    'an underfilled array near melting',
    partOf('U2', 'bga', { underfilled: true }),
    { skin: 215, joint: 205 },
    'cannot-be-saved',
    'underfill-softens',
  ],
  [
    'an underfilled array well below',
    partOf('U2', 'bga', { underfilled: true }),
    { skin: 190, joint: 180 },
    'leave',
    'within-limits',
  ],
  [
    'an underfilled package that is cooked',
    partOf('U2', 'bga', { underfilled: true }),
    { skin: 262, shieldedSkin: 261, joint: 180 },
    'cannot-be-saved',
    'underfilled-over-limit',
  ],
  [
    'joints beyond the preset for neighbours, yet solid',
    partOf('D1', 'diode'),
    {
      skin: 215,
      joint: 210,
      limits: { joint: { celsius: 200, origin: 'shop', source: { text: 'preset', how: 'found', confidence: 'M' } } },
    },
    'leave',
    'warm-joints-stay-solid',
  ],
  [
    'a margin within the band that foil clears',
    partOf('J1', 'connector-pbt'),
    { skin: 192, shieldedSkin: 170, bandK: 12, state: 'unsure' },
    'shield',
    'shield-for-certainty',
  ],
  [
    'a margin within the band that foil leaves there',
    partOf('J1', 'connector-pbt'),
    { skin: 192, shieldedSkin: 189, bandK: 12, state: 'unsure' },
    'leave',
    'margin-within-band',
  ],
  [
    'a margin that a measured outlet would clear',
    partOf('J1', 'connector-pbt'),
    {
      ...{ skin: 192, shieldedSkin: 189, bandK: 12, state: 'unsure' },
      bands: {
        ...{ bodyK: 12, skinK: 12, jointK: 12, secondsOverS: 0, mostly: 'outlet', mostlyShare: 0.6 },
        outletMeasuredK: 7,
      },
    },
    'leave',
    'measure-the-outlet',
  ],
  [
    'joints of a middling part that may melt within their band',
    partOf('U2', 'so', { package: { name: 'so', shape: 'rectangle', lengthMm: 5, widthMm: 4, heightMm: 1.5 } }),
    { body: 205, joint: 205, bandK: 25, state: 'unsure' },
    'leave',
    'joints-may-melt',
  ],
  [
    'over by less than the band counts as over',
    partOf('J1', 'connector-pbt'),
    { skin: 204, shieldedSkin: 199, joint: 150, bandK: 12, state: 'unsure' },
    'remove-first',
    'shield-not-enough',
  ],
];

describe('the advice for a part', () => {
  test.each(rows)('%s', (_, part, heat, action, reason) => {
    const advice = adviceFor(part, heat);
    expect([advice.action, advice.reason]).toEqual([action, reason]);
    expect(advice.done).toBe(false);
    expect(actionReason(advice)).not.toMatch(/undefined|NaN|\?|safe/);
  });

  test.each(['coin-cell', 'lithium-cell', 'battery', 'module-on-connector', 'plastic-optics', 'supercapacitor'])(
    '%s comes off even when cold and far away',
    (classId) => {
      const advice = adviceFor(partOf('BT1', classId), { body: 30, joint: 30, clearanceMm: 90 });
      expect([advice.action, advice.reason, advice.done]).toEqual(['remove-first', 'always-off', false]);
    },
  );

  test('a cell that the evaluation never saw comes off too, an empty position does not', () => {
    const board = boardOf([partOf('BT1', 'coin-cell'), partOf('BT2', 'coin-cell', { fitted: false })]);
    const plan = planOf(board);
    const actions = assess(board, plan, evaluationOf(plan, [])).actions;
    expect(actions.filter((action) => action.action === 'remove-first').map((action) => action.refdes)).toEqual([
      'BT1',
    ]);
  });

  test('parts tagged to come off are listed as done, with why', () => {
    const board = boardOf([partOf('BT1', 'coin-cell'), partOf('J1', 'connector-pbt')]);
    const base = planOf(board);
    const plan = { ...base, tags: [...base.tags, removeTag('BT1'), removeTag('J1')] };
    const notEvaluated = ['BT1', 'J1'].map((refdes) => ({ refdes, reason: 'removed' as const }));
    const { actions } = assess(board, plan, evaluationOf(plan, [], { notEvaluated }));
    const off = actions.filter((action) => action.action === 'remove-first');
    expect(off.map((action) => [action.refdes, action.reason, action.done])).toEqual([
      ['BT1', 'always-off', true],
      ['J1', 'tagged-by-you', true],
    ]);
  });

  test('what a shield does not hold comes off; it is never advised a shield again', () => {
    const part = partOf('J1', 'connector-pbt');
    const advice = adviceFor(part, { skin: 206, shieldedSkin: 150, joint: 160 }, [shieldTag('J1')]);
    expect([advice.action, advice.reason]).toEqual(['remove-first', 'shield-did-not-hold']);
  });

  test('a shield that holds is done', () => {
    const advice = adviceFor(partOf('J1', 'connector-pbt'), { skin: 190, joint: 160 }, [shieldTag('J1')]);
    expect([advice.action, advice.reason, advice.done]).toEqual(['shield', 'shielded-as-planned', true]);
  });

  test('the target is done when its replace tag stands', () => {
    const board = boardOf([]);
    const plan = planOf(board);
    const target = (tags: Tag[]) => assess(board, { ...plan, tags }, evaluationOf(plan, [])).actions[0];
    expect(target(plan.tags)).toMatchObject({ refdes: 'U1', action: 'target', done: true });
    expect(target([])).toMatchObject({ refdes: 'U1', action: 'target', done: false });
  });
});

describe('parts that may drop from the underside', () => {
  // 30 g per square inch (IPC TechNet 1996, 2002: mass over the mating area of all pads).
  const coil = partOf('L4', 'power-inductor', { side: 'bottom', massG: 14, padAreaMm2: 120 });
  const molten = { body: 225, joint: 224, jointMin: 222 };

  test('14 g on 120 mm2 is 75 g per square inch: secured, not left', () => {
    const advice = adviceFor(coil, molten);
    expect([advice.action, advice.reason]).toEqual(['secure', 'heavy-when-molten']);
    expect(advice.figures.gramsPerSquareInch).toBeCloseTo(75.3, 1);
    expect(actionReason(advice)).toContain('14 g on 120 mm² of pads, 75 g per square inch, more than 30');
  });

  test('on the worked side, or solid, or light it is not', () => {
    expect(adviceFor({ ...coil, side: 'top' }, molten).action).toBe('leave-will-reflow');
    expect(adviceFor(coil, { body: 200, joint: 200 }).action).toBe('leave');
    expect(adviceFor({ ...coil, massG: 5.5 }, molten).action).toBe('leave-will-reflow');
  });

  test('an estimated mass says so', () => {
    const { massG: _, padAreaMm2: __, ...unknown } = coil;
    const heavy = { ...unknown, package: { ...coil.package, heightMm: 12 } };
    const advice = adviceFor(heavy, molten);
    expect(advice.action).toBe('secure');
    expect(actionReason(advice)).toContain('(mass and pad area estimated)');
  });

  test('a watch point with a note holds it; a bare one does not', () => {
    const watch = (note: string): Tag => ({
      id: 'w9',
      kind: 'watchPoint',
      name: 'W9',
      side: 'bottom',
      x: 0,
      y: 0,
      refdes: 'L4',
      order: null,
      note,
    });
    expect(adviceFor(coil, molten, [watch('')]).done).toBe(false);
    expect(adviceFor(coil, molten, [watch('Held by a post')]).done).toBe(true);
  });
});

describe('what counts as large', () => {
  const edge: Heat = { skin: 225, joint: 222, jointMin: 214 };
  const sized = (classId: string, lengthMm: number) =>
    partOf('U2', classId, { package: { name: '', shape: 'rectangle', lengthMm, widthMm: 4, heightMm: 1 } });

  test('a small package molten at one end is held by surface tension, a larger one is not', () => {
    expect(adviceFor(sized('so', 8.65), edge).reason).toBe('small-part-melts-at-one-end');
    expect(adviceFor(sized('so', 10), edge).reason).toBe('large-part-partly-molten');
  });

  test('an array counts as large whatever its size', () => {
    expect(adviceFor(sized('csp', 4), edge).reason).toBe('large-part-partly-molten');
  });
});

describe('the reasons', () => {
  test('a limit passed by a fraction of a degree reads so', () => {
    const advice = adviceFor(partOf('J1', 'connector-pbt'), { skin: 200.3, shieldedSkin: 170, joint: 150 });
    expect(actionReason(advice)).toMatch(/^skin 200 °C, just over its limit 200 \(connector, PBT\): 170 under/);
  });

  test('say that the alloy is a guess: testing a joint may settle the matter', () => {
    const advice = adviceFor(partOf('C1', 'chip-capacitor', { alloy: 'unknown' }), { joint: 190, solidusC: 183 });
    expect(actionReason(advice)).toContain('(solidus 183, alloy not known)');
    expect(actionReason(adviceFor(partOf('C1', 'chip-capacitor'), { joint: 230 }))).toContain('(solidus 217)');
  });

  test('name figure, limit, where it comes from, and what a shield would do', () => {
    const part = partOf('J1', 'connector-pbt');
    const shield = adviceFor(part, { skin: 226, shieldedSkin: 190, joint: 165 });
    expect(actionReason(shield)).toBe(
      'skin 226 °C, limit 200 (connector, PBT): 190 under aluminium foil, tented with a 1.5 mm gap',
    );
    expect(actionLimit(shield)).toMatch(/^limit 200 °C: PBT, glass-filled/);
    const board = adviceFor(part, { skin: 231, shieldedSkin: 229, joint: 216 });
    expect(actionReason(board)).toBe(
      'skin 231 °C, limit 200 (connector, PBT): the board under it reaches 216 °C, a shield cannot help',
    );
  });
});
