import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../../../main/planning/assess.ts';
import type { Board, Part } from '../../../../shared-types/board.ts';
import type { Assessment, Evaluation } from '../../../../shared-types/evaluation.ts';
import { PART_CLASSES } from '../../../../shared-types/library/classes.ts';
import { type Plan, planSchema } from '../../../../shared-types/plan.ts';
import { suggestionsOf, takeAllSuggestions, takeSuggestion } from '../../../../shared-types/rules/suggestions.ts';
import { summarise, summaryLine } from '../../../../shared-types/rules/summary.ts';
import { findingWords } from '../../../../shared-types/words/findings.ts';
import { actionReason, takeWords } from '../../../../shared-types/words/planning.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf } from '../../main/planning/support.ts';

/** Heat of a part as it would be bare, and what a shield really does, which need not be what was foretold. */
type Fate = { part: Part; bare: Heat; shielded: Heat };

/** A stand-in for the heat model: parts tagged to come off are gone, shielded ones get their shielded heat. */
function evaluateIn(fates: readonly Fate[], plan: Plan): Evaluation {
  const has = (refdes: string, kind: string) => plan.tags.some((tag) => tag.kind === kind && tag.refdes === refdes);
  const gone = fates.filter(({ part }) => has(part.refdes, 'remove'));
  const parts = fates
    .filter(({ part }) => part.fitted && !has(part.refdes, 'remove'))
    .map(({ part, bare, shielded }) => exposureOf(part, has(part.refdes, 'shield') ? shielded : bare));
  const notEvaluated = gone.map(({ part }) => ({ refdes: part.refdes, reason: 'removed' as const }));
  return evaluationOf(plan, parts, { notEvaluated, bands: 'not-computed' });
}

const heat = fc.record({
  body: fc.double({ min: 25, max: 300, noNaN: true }),
  skin: fc.double({ min: 25, max: 300, noNaN: true }),
  joint: fc.double({ min: 25, max: 260, noNaN: true }),
  drop: fc.double({ min: 0, max: 80, noNaN: true }),
  foretold: fc.double({ min: 0, max: 120, noNaN: true }),
  bandK: fc.option(fc.double({ min: 0, max: 30, noNaN: true }), { nil: null }),
  clearanceMm: fc.double({ min: 0, max: 60, noNaN: true }),
  reflows: fc.integer({ min: 0, max: 3 }),
});

const fate = (refdes: string): fc.Arbitrary<Fate> =>
  fc
    .record({
      classId: fc.constantFrom(...PART_CLASSES.map((partClass) => partClass.id), 'nobody-knows'),
      side: fc.constantFrom('top' as const, 'bottom' as const),
      underfilled: fc.boolean(),
      fitted: fc.boolean(),
      bare: heat,
      shielded: heat,
    })
    .map(({ classId, side, underfilled, fitted, bare, shielded }) => {
      const told = ({ drop, foretold, ...figures }: typeof bare): Heat => ({
        ...figures,
        jointMin: figures.joint - drop,
        shieldedBody: figures.body - foretold,
        shieldedSkin: figures.skin - foretold,
        shieldedJoint: figures.joint - foretold / 2,
      });
      return {
        part: partOf(refdes, classId, { side, underfilled, fitted }),
        bare: told(bare),
        shielded: told(shielded),
      };
    });

const fates = fc
  .integer({ min: 1, max: 12 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => fate(`P${index + 1}`))));

type World = { board: Board; plan: Plan; fates: readonly Fate[] };
function worldOf(list: readonly Fate[]): World {
  const board = boardOf(list.map(({ part }) => part));
  return { board, plan: planOf(board), fates: list };
}
const assessIn = (world: World, plan: Plan): Assessment => assess(world.board, plan, evaluateIn(world.fates, plan));

describe('over any board and any heat', () => {
  test('every evaluated part gets exactly one action, and every sentence is whole', () => {
    fc.assert(
      fc.property(fates, (list) => {
        const world = worldOf(list);
        const found = assessIn(world, world.plan);
        const named = found.actions.map((action) => action.refdes);
        expect(new Set(named).size).toBe(named.length);
        for (const { refdes } of found.evaluation.parts) expect(named).toContain(refdes);
        const sentences = [
          ...found.actions.map((action) => actionReason(action)),
          ...found.findings.flatMap((finding) => Object.values(findingWords(finding))),
        ];
        for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|NaN|Infinity|\?|\bsafe\b/);
      }),
      { numRuns: 300 },
    );
  });

  test('taking all suggestions again and again comes to rest, and no part ever goes back a step', () => {
    fc.assert(
      fc.property(fates, (list) => {
        const world = worldOf(list);
        let { plan } = world;
        let rounds = 0;
        for (;;) {
          const open = suggestionsOf(assessIn(world, plan), plan);
          if (open.length === 0) break;
          const removedBefore = plan.tags.filter((tag) => tag.kind === 'remove').length;
          plan = takeAllSuggestions(plan, open);
          expect(plan.tags.filter((tag) => tag.kind === 'remove').length).toBeGreaterThanOrEqual(removedBefore);
          rounds++;
          expect(rounds).toBeLessThanOrEqual(4);
        }
        expect(planSchema.safeParse(plan).success).toBe(true);
        const orders = plan.tags.flatMap((tag) => tag.order ?? []);
        expect(new Set(orders).size).toBe(orders.length);
        const slots = plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag.traySlot] : []));
        expect(slots).toEqual(slots.map((_, index) => `A${index + 1}`));
        const twice = plan.tags.filter((tag) => tag.kind === 'shield').map((tag) => tag.refdes);
        for (const refdes of twice)
          expect(plan.tags.some((tag) => tag.kind === 'remove' && tag.refdes === refdes)).toBe(false);
        for (const action of assessIn(world, plan).actions)
          if (!action.done) expect(['leave', 'leave-will-reflow', 'cannot-be-saved']).toContain(action.action);
      }),
      { numRuns: 300 },
    );
  });

  test('taking a part off never leaves more to do', () => {
    fc.assert(
      fc.property(fates, fc.nat(), (list, pick) => {
        const world = worldOf(list);
        const { refdes } = list[pick % list.length].part;
        const off = { id: 'r', kind: 'remove', refdes, order: 9, note: '', goesBack: true, traySlot: 'A1' } as const;
        const before = suggestionsOf(assessIn(world, world.plan), world.plan);
        const plan = { ...world.plan, tags: [...world.plan.tags, off] };
        const after = suggestionsOf(assessIn(world, plan), plan);
        expect(after.length).toBeLessThanOrEqual(before.length);
        expect(after.map((suggestion) => suggestion.refdes)).not.toContain(refdes);
      }),
      { numRuns: 200 },
    );
  });

  test('taking one twice, or one that is already there, changes nothing more', () => {
    fc.assert(
      fc.property(fates, (list) => {
        const world = worldOf(list);
        for (const suggestion of suggestionsOf(assessIn(world, world.plan), world.plan)) {
          const once = takeSuggestion(world.plan, suggestion);
          expect(once).not.toBe(world.plan);
          expect(takeSuggestion(once, suggestion)).toBe(once);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('the summary counts every action once', () => {
    fc.assert(
      fc.property(fates, (list) => {
        const world = worldOf(list);
        const found = assessIn(world, world.plan);
        const { cannot, remove, secure, shield, willReflow, leave, targets } = summarise(found, world.plan);
        expect(cannot + remove + secure + shield + willReflow + leave + targets).toBe(found.actions.length);
      }),
      { numRuns: 100 },
    );
  });
});

describe('one by one', () => {
  const connector = partOf('J1', 'connector-pbt');
  const hot: Heat = { skin: 226, shieldedSkin: 190, joint: 165 };
  const world = worldOf([
    { part: connector, bare: hot, shielded: { ...hot, skin: 206 } },
    { part: partOf('BT1', 'coin-cell', { x: 5 }), bare: { body: 40 }, shielded: { body: 40 } },
    { part: partOf('C9', 'electrolytic-small'), bare: { body: 215, joint: 219 }, shielded: { body: 215, joint: 219 } },
    {
      part: partOf('L4', 'power-inductor', { side: 'bottom', x: 31, y: 22, massG: 14, padAreaMm2: 120 }),
      bare: { body: 225, joint: 224 },
      shielded: { body: 225, joint: 224 },
    },
  ]);

  test('parts that always come off lead, then removals, shields, parts to secure', () => {
    const open = suggestionsOf(assessIn(world, world.plan), world.plan);
    expect(open.map(({ refdes, kind }) => [refdes, kind])).toEqual([
      ['BT1', 'remove'],
      ['C9', 'remove'],
      ['J1', 'shield'],
      ['L4', 'secure'],
    ]);
    expect(takeWords(open)).toBe('Remove 2 parts, shield 1, secure 1');
    expect(takeWords([open[2]])).toBe('Shield J1');
  });

  test('the tags they become', () => {
    const open = suggestionsOf(assessIn(world, world.plan), world.plan);
    const plan = takeAllSuggestions(world.plan, open);
    expect(plan.tags.slice(world.plan.tags.length)).toMatchObject([
      { kind: 'remove', refdes: 'BT1', order: 2, traySlot: 'A1', goesBack: true, note: '' },
      {
        kind: 'remove',
        refdes: 'C9',
        order: 3,
        traySlot: 'A2',
        goesBack: true,
        note: 'Fit a new one: rated for one reflow.',
      },
      { kind: 'shield', refdes: 'J1', order: 4, shield: 'foil-tent' },
      { kind: 'watchPoint', refdes: 'L4', order: null, name: 'W2', side: 'bottom', x: 31, y: 22 },
    ]);
    expect(plan.tags.at(-1)?.note).toBe(
      'Secure from below before heat: 14 g on 120 mm² of pads, 75 g per square inch.',
    );
    expect(world.plan.tags).toHaveLength(2);
  });

  test('a shield that does not hold is replaced by a removal', () => {
    const shielded = takeAllSuggestions(world.plan, suggestionsOf(assessIn(world, world.plan), world.plan));
    const next = suggestionsOf(assessIn(world, shielded), shielded);
    expect(next.map(({ refdes, kind }) => [refdes, kind])).toEqual([['J1', 'remove']]);
    const plan = takeAllSuggestions(shielded, next);
    expect(plan.tags.filter((tag) => tag.refdes === 'J1')).toMatchObject([{ kind: 'remove', traySlot: 'A3' }]);
  });

  test('a thermocouple on a part that comes off stays as a point of the board; the one that held it goes', () => {
    const watch = (id: string, note: string) =>
      ({ id, kind: 'watchPoint', name: id, side: 'top', x: 1, y: 2, refdes: 'J1', order: null, note }) as const;
    const plan = {
      ...world.plan,
      tags: [...world.plan.tags, watch('W8', 'beside pin 1'), watch('W9', 'Secure from below before heat: ...')],
    };
    const [remove] = suggestionsOf(assessIn(world, plan), plan).filter(({ refdes }) => refdes === 'BT1');
    const after = takeSuggestion(plan, { ...remove, refdes: 'J1' });
    expect(after.tags.find((tag) => tag.id === 'W8')).toMatchObject({ refdes: null, x: 1, y: 2, note: 'beside pin 1' });
    expect(after.tags.some((tag) => tag.id === 'W9')).toBe(false);
  });

  test('tags set since the assessment are not suggested again and count already', () => {
    const found = assessIn(world, world.plan);
    const plan = takeSuggestion(world.plan, suggestionsOf(found, world.plan)[2]);
    expect(suggestionsOf(found, plan).map(({ refdes }) => refdes)).toEqual(['BT1', 'C9', 'L4']);
    expect(summarise(found, plan).open).toBe(summarise(found, world.plan).open - 1);
  });

  test('a target is never suggested to come off', () => {
    const found = assessIn(world, world.plan);
    const plan: Plan = {
      ...world.plan,
      sites: [...world.plan.sites, { ...world.plan.sites[0], id: 'site-2', target: 'C9' }],
    };
    expect(suggestionsOf(found, plan).map(({ refdes }) => refdes)).not.toContain('C9');
  });

  test('the line at the foot of the table', () => {
    expect(summaryLine(summarise(assessIn(world, world.plan), world.plan))).toBe('2 remove · 1 secure · 1 shield');
    expect(
      summaryLine({
        cannot: 0,
        remove: 3,
        secure: 0,
        shield: 4,
        willReflow: 14,
        leave: 62,
        targets: 1,
        over: 0,
        unsure: 0,
        open: 0,
      }),
    ).toBe('3 remove · 4 shield · 14 will reflow · 62 leave');
  });
});
