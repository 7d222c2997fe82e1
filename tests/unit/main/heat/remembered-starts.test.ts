import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../../main/heat/evaluate.ts';
import { prepareRun, type TicketRun } from '../../../../main/heat/heat-run.ts';
import { presences } from '../../../../main/heat/presence.ts';
import { rememberedStarts } from '../../../../main/heat/remembered-starts.ts';
import { createRunMemory, type RunMemory } from '../../../../main/heat/run-memory.ts';
import type { Board } from '../../../../shared-types/board.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { evaluated, run, SHORT_PROFILE, segment, site, smallBoard, smallPlan } from './support.ts';

/** 60 + 120 steps before the gas, 70 with it, 30 after; two of each segment in halves. */
const QUIET_STEPS = 184;
const ALL_STEPS = 288;
/** The site preparation: 60 + 60 steps. */
const PREPARATION_STEPS = 124;

const board = smallBoard();
const dressing = [segment('Preheat', 60, [25, 300], null), segment('Dress', 60, [300, 300], null)];
const plan = smallPlan(board, {
  heatRuns: [
    run('removal', 'off'),
    run('site-preparation', 'dress', { segments: dressing }),
    run('installation', 'on'),
  ],
});

type Ticket = { board: Board; plan: Plan };
const original: Ticket = { board, plan };

function runsOf({ board, plan }: Ticket): TicketRun[] {
  return presences(board, plan).map((presence) => {
    const prepared = prepareRun(board, plan, presence, 0.002, 1, new Map());
    if (!prepared.ok) throw new Error('did not fit');
    return prepared.value;
  });
}

/** Steps of each run that a memory has ready. */
function known(memory: RunMemory, ticket: Ticket): number[] {
  const runs = runsOf(ticket);
  const starts = rememberedStarts(runs, memory);
  return runs.map(({ simulation }, index) => {
    starts.begin(index);
    return simulation.stepsDone;
  });
}

/** A memory that has seen the original ticket. */
function remembering(mostBytes?: number): RunMemory {
  const memory = createRunMemory(mostBytes);
  evaluated(original.board, original.plan, { memory });
  return memory;
}

const withSite = (dx: number): Ticket => {
  const [first] = plan.sites;
  return { board, plan: { ...plan, sites: [{ ...first!, area: { ...first!.area, x: first!.area.x + dx, y: 20.3 } }] } };
};
const withTag = (tag: Tag): Ticket => ({ board, plan: { ...plan, tags: [tag] } });
const withParts = (change: (refdes: string) => object): Ticket => ({
  plan,
  board: { ...board, parts: board.parts.map((part) => ({ ...part, ...change(part.refdes) })) },
});
const withStation = (more: Partial<Plan['station']>): Ticket => ({
  board,
  plan: { ...plan, station: { ...plan.station, ...more } },
});
const withSegment = (at: number, more: object): Ticket => ({
  board,
  plan: {
    ...plan,
    heatRuns: plan.heatRuns.map((heatRun) =>
      heatRun.kind === 'site-preparation'
        ? heatRun
        : { ...heatRun, segments: SHORT_PROFILE.map((one, index) => (index === at ? { ...one, ...more } : one)) },
    ),
  },
});
const tagged = { id: 't', order: null, note: '' } as const;
const outline = smallBoard().outline.map((point) => (point.x > 50 ? { ...point, x: point.x - 2 } : point));

const WHOLE = [ALL_STEPS, PREPARATION_STEPS, ALL_STEPS];
const BEFORE_GAS = [QUIET_STEPS, PREPARATION_STEPS, QUIET_STEPS];
const NOTHING = [0, 0, 0];

/** Edits, and how many steps of the original's three runs stay good. */
const edits: [name: string, edited: Ticket, good: number[]][] = [
  ['nothing', original, WHOLE],
  ['a site dragged', withSite(3.7), BEFORE_GAS],
  ['a site dragged off the board', withSite(300), BEFORE_GAS],
  ['a part to be programmed again', withTag({ ...tagged, kind: 'reprogram', refdes: 'U2', way: 'in-circuit' }), WHOLE],
  ['a shield added', withTag({ ...tagged, kind: 'shield', refdes: 'C1', shield: 'tape' }), NOTHING],
  [
    'a part taken off first',
    withTag({ ...tagged, kind: 'remove', refdes: 'E1', goesBack: true, traySlot: '' }),
    NOTHING,
  ],
  ['a watch point added', withTag(watchPoint()), NOTHING],
  ['the nozzle changed', withStation({ nozzle: { ...plan.station.nozzle, standOffMm: 9 } }), BEFORE_GAS],
  ['the room changed', withStation({ roomC: 21 }), NOTHING],
  ['the preheater changed', withStation({ preheater: { ...plan.station.preheater, widthMm: 30 } }), NOTHING],
  ['fume extraction on', withStation({ fumeExtraction: 'high' }), NOTHING],
  ['a segment before the gas changed', withSegment(0, { seconds: 50 }), [0, PREPARATION_STEPS, 0]],
  ['the gas changed', withSegment(2, { gas: { startC: 320, endC: 330 } }), BEFORE_GAS],
  ['a class changed', withParts((refdes) => (refdes === 'C1' ? { class: 'so' } : {})), NOTHING],
  ["a part's limit stated", withParts((refdes) => (refdes === 'C1' ? { alloy: 'snpb' } : {})), WHOLE],
  ['the outline changed', { plan, board: { ...board, outline } }, NOTHING],
];

function watchPoint(): Tag {
  return { ...tagged, kind: 'watchPoint', name: 'W1', x: 38, y: 20, side: 'top', refdes: null };
}

describe('numbers remembered from one evaluation to the next', () => {
  it.each(edits)('%s: the same to the last bit, and no less is stepped than must be', (_, edited, good) => {
    const memory = remembering();
    expect(known(memory, edited)).toEqual(good);
    const fresh = evaluate(edited.board, edited.plan, { phase: 'coarse' });
    expect(evaluate(edited.board, edited.plan, { phase: 'coarse', memory })).toEqual(fresh);
    const back = evaluate(original.board, original.plan, { phase: 'coarse', memory });
    expect(back).toEqual(evaluate(original.board, original.plan, { phase: 'coarse' }));
  });

  it('a drag over many places, and another grid in between', () => {
    const memory = remembering();
    for (const dx of [-4, 1.3, 2.9, -0.6]) {
      const dragged = withSite(dx);
      expect(evaluated(dragged.board, dragged.plan, { memory })).toEqual(evaluated(dragged.board, dragged.plan));
    }
    const fine = { phase: 'fine', memory } as const;
    expect(evaluated(board, plan, fine)).toEqual(evaluated(board, plan, { phase: 'fine' }));
  });

  it('the second of two sites dragged: what comes before its gas stays good', () => {
    const second = segment('Gas, second', 40, [330, 330], [345, 345]);
    const segments = [...SHORT_PROFILE.slice(0, 3), { ...second, siteId: 'site-2' }, SHORT_PROFILE[3]!];
    const heatRuns = [run('removal', 'off', { siteIds: ['site-1', 'site-2'], segments })];
    const two = { ...plan, sites: [...plan.sites, site(board, 'U2', 'site-2')], heatRuns };
    const memory = createRunMemory();
    evaluated(board, two, { memory });
    const [first, other] = two.sites;
    const dragged = { ...two, sites: [first!, { ...other!, area: { ...other!.area, x: other!.area.x + 2 } }] };
    // 60 + 120 + 70 steps.
    expect(known(memory, { board, plan: dragged })).toEqual([256]);
    expect(evaluated(board, dragged, { memory })).toEqual(evaluated(board, dragged));
  });

  it('a cancelled evaluation leaves nothing wrong behind', () => {
    const memory = createRunMemory();
    let looks = 0;
    const cut = evaluate(board, plan, { phase: 'coarse', memory, isCancelled: () => ++looks > 270 });
    expect(cut).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
    expect(known(memory, original)).toEqual([QUIET_STEPS, 0, QUIET_STEPS]);
    expect(evaluated(board, plan, { memory })).toEqual(evaluated(board, plan));
  });

  it('keeps to its room: what was used longest ago goes', () => {
    const room = 3e6;
    const memory = remembering(room);
    expect(memory.bytes).toBeGreaterThan(0);
    for (const dx of [1, 2, 3, 4]) {
      const dragged = withSite(dx);
      expect(evaluated(dragged.board, dragged.plan, { memory })).toEqual(evaluated(dragged.board, dragged.plan));
      expect(memory.bytes).toBeLessThanOrEqual(room);
    }
    const none = createRunMemory(0);
    expect(evaluated(board, plan, { memory: none })).toEqual(evaluated(board, plan));
    expect(none.bytes).toBe(0);
  });
});
