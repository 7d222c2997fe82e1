import { describe, expect, it } from 'vitest';
import { prepareRun } from '../../../../main/heat/heat-run.ts';
import { presences } from '../../../../main/heat/presence.ts';
import { sharedStarts } from '../../../../main/heat/shared-starts.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { evaluated, exposure, run, SHORT_PROFILE, segment, site, smallBoard, smallPlan } from './support.ts';

const board = smallBoard();
const longer = [...SHORT_PROFILE.slice(0, 3), segment('Hold', 20, [330, 330], [345, 345]), SHORT_PROFILE[3]!];

function plan(...kinds: [kind: 'removal' | 'installation', id: string, segments: typeof longer][]): Plan {
  return smallPlan(board, { heatRuns: kinds.map(([kind, id, segments]) => run(kind, id, { segments })) });
}

/** Steps that each run of a plan did not have to take itself. */
function taken(given: Plan): number[] {
  const runs = presences(board, given).map((presence) => {
    const prepared = prepareRun(board, given, presence, 0.002, 1, new Map());
    if (!prepared.ok) throw new Error('did not fit');
    return prepared.value;
  });
  const starts = sharedStarts(runs);
  return runs.map(({ simulation }, index) => {
    starts.begin(index);
    const from = simulation.stepsDone;
    while (!simulation.advance(starts.stepsToTake(index, 8))) starts.keep(index);
    return from;
  });
}

describe('runs that begin alike', () => {
  it('share their common segments', () => {
    const [first, second] = taken(plan(['removal', 'off', SHORT_PROFILE], ['installation', 'on', longer]));
    expect(first).toBe(0);
    // 60 + 120 + 70 steps, two of each segment in halves.
    expect(second).toBe(250 + 6);
  });

  it('come out the same to the last bit as each alone', () => {
    const both = evaluated(board, plan(['removal', 'off', SHORT_PROFILE], ['installation', 'on', longer]));
    const alone = evaluated(board, plan(['installation', 'on', longer]));
    expect(both.runs[1]).toEqual(alone.runs[0]);
    const [together, single] = [exposure(both, 'C1'), exposure(alone, 'C1')];
    expect({ ...together, reflows: 1 }).toEqual(single);
    expect(together.reflows).toBe(2);
  });

  it('share nothing where the board differs: another shield, another side', () => {
    const tag = { id: 't', kind: 'shield', order: null, note: '', refdes: 'C1', shield: 'tape' } as const;
    const base = plan(['removal', 'off', SHORT_PROFILE], ['installation', 'on', longer]);
    expect(taken({ ...base, tags: [tag] })).toEqual([0, 256]);
    const turned = { ...base, heatRuns: [base.heatRuns[0]!, { ...base.heatRuns[1]!, side: 'bottom' as const }] };
    expect(taken(turned)).toEqual([0, 0]);
    const between = run('removal', 'other', { siteIds: ['site-2'], segments: longer.slice(1) });
    const lifted = {
      ...base,
      sites: [...base.sites, site(board, 'U2', 'site-2')],
      heatRuns: [base.heatRuns[0]!, between, base.heatRuns[1]!],
    };
    expect(taken(lifted), 'a neighbour was lifted in between').toEqual([0, 0, 0]);
    const sooner = { ...base, heatRuns: [base.heatRuns[0]!, { ...base.heatRuns[1]!, segments: longer.slice(1) }] };
    expect(taken(sooner)).toEqual([0, 0]);
  });
});
