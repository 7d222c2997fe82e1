import { type Board, emptyBoard, type Part } from '../../../../shared-types/board.ts';
import type {
  AppliedLimit,
  Evaluation,
  PartExposure,
  PeakC,
  RunResult,
  SegmentReading,
  TargetResult,
} from '../../../../shared-types/evaluation.ts';
import { classById } from '../../../../shared-types/library/classes.ts';
import { limitsOf } from '../../../../shared-types/library/limits.ts';
import type { HeatRun, Plan } from '../../../../shared-types/plan.ts';
import type { Segment } from '../../../../shared-types/profile.ts';
import { planForTargets } from '../../../../shared-types/rules/new-plan.ts';

/** A part of 10 x 10 mm unless told otherwise; confirmed, SAC305, top side. */
export function partOf(refdes: string, classId: string, more: Partial<Part> = {}): Part {
  return {
    refdes,
    side: 'top',
    x: 50,
    y: 40,
    turn: 0,
    package: { name: classId, shape: 'rectangle', lengthMm: 10, widthMm: 10, heightMm: 1.5 },
    class: classId,
    classGuessed: false,
    value: '',
    fitted: true,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...more,
  };
}

/** A board with a target U1 and the given parts. */
export function boardOf(parts: readonly Part[], more: Partial<Board> = {}): Board {
  const board = emptyBoard('Test board', 100, 80);
  const laminate = { ...board.laminate, layersKnown: true };
  return { ...board, laminate, parts: [partOf('U1', 'bga'), ...parts], ...more };
}

/** Preheat 190 s, soak 75 s, gas 75 s, hold 10 s, cool 90 s: a profile of the tests' own. */
function segmentsOf(run: HeatRun): Segment[] {
  const blows = run.kind !== 'site-preparation';
  const stretch = (name: string, seconds: number, gas: boolean): Segment => ({
    name,
    seconds,
    preheater: { startC: 260, endC: 260 },
    gas: gas && blows ? { startC: 345, endC: 345 } : null,
    flowLMin: gas && blows ? 45 : 0,
    siteId: run.siteIds[0],
  });
  return [
    stretch('Preheat', 190, false),
    stretch('Soak', 75, false),
    stretch('Gas', 75, true),
    stretch('Hold', 10, true),
    stretch('Cool', 90, false),
  ];
}

/** A plan for U1 with a watch point, measured gas and a told history, so that nothing is found on an ordinary board. */
export function planOf(board: Board, more: Partial<Plan> = {}): Plan {
  const made = planForTargets(board, 'T-1', ['U1']);
  const told = { exchangedBefore: 0, incoming: { moistureLevel: '1', openH: null, thicknessMm: null } } as const;
  const sites = made.sites.map((site) => ({ ...site, ...told }));
  const plan = { ...made, sites, heatRuns: made.heatRuns.map((run) => ({ ...run, segments: segmentsOf(run) })) };
  const watch = {
    id: 'watch-1',
    kind: 'watchPoint',
    name: 'W1',
    side: 'top',
    x: 45,
    y: 35,
    refdes: 'U1',
    order: null,
    note: '',
  } as const;
  return { ...plan, station: { ...plan.station, gasReads: 'outlet' }, tags: [...plan.tags, watch], ...more };
}

const peak = (celsius: number): PeakC => ({ maxC: celsius, minC: celsius, meanC: celsius });

export type Heat = Partial<Omit<PartExposure, 'body' | 'skin' | 'joint' | 'ifShielded' | 'limits'>> & {
  body?: number;
  skin?: number;
  joint?: number;
  jointMin?: number;
  shieldedBody?: number;
  shieldedSkin?: number;
  shieldedJoint?: number;
  limits?: Partial<PartExposure['limits']>;
};

const SOLDER: AppliedLimit = {
  celsius: 217,
  origin: 'alloy',
  source: { text: 'Published alloy tables', how: 'found', confidence: 'H' },
};

/** What a part goes through: cool unless told otherwise; margins and reflow follow from the temperatures. */
export function exposureOf(part: Part, heat: Heat = {}): PartExposure {
  const { body = 120, skin = body, joint = 120, jointMin = joint, shieldedBody = body, shieldedSkin = skin } = heat;
  const { shieldedJoint = joint, limits: own, ...rest } = heat;
  const limits = { ...limitsOf(part), joint: SOLDER, ...own };
  const marginOf = (limit: AppliedLimit | null, celsius: number) => limit && limit.celsius - celsius;
  const margins = {
    body: marginOf(limits.body, body),
    skin: marginOf(limits.skin, skin),
    joint: marginOf(limits.joint, joint),
  };
  const solidusC = heat.solidusC ?? 217;
  const reflow = joint < solidusC ? 'none' : jointMin < solidusC ? 'partly' : 'whole';
  const marginK = Math.min(...Object.values(margins).flatMap((margin) => margin ?? []));
  return {
    refdes: part.refdes,
    side: part.side,
    worstRunId: 'run-1',
    clearanceMm: 15,
    peakAtS: 330,
    secondsOver: 0,
    riseKPerS: 1,
    acrossK: 2,
    shares: { gas: 0.7, preheater: 0.2, joints: 0.1, losses: 0.1 },
    margins,
    marginK,
    governedBy: marginK === margins.joint ? 'joint' : marginK === margins.skin ? 'skin' : 'body',
    bandK: null,
    state: marginK < 0 ? 'over' : 'clear',
    reflow,
    reflows: reflow === 'none' ? 0 : 1,
    warmCycles: 0,
    solidusC,
    ...rest,
    body: peak(body),
    skin: peak(skin),
    joint: { maxC: joint, minC: jointMin, meanC: (joint + jointMin) / 2 },
    ifShielded: { bodyMaxC: shieldedBody, skinMaxC: shieldedSkin, jointMaxC: shieldedJoint },
    limits,
  };
}

/** A target in the middle of its window. */
export const targetOf = (more: Partial<TargetResult> = {}): TargetResult => ({
  siteId: 'site-1',
  refdes: 'U1',
  coldestJointC: 227,
  hottestJointC: 232,
  skinMaxC: 238,
  skinLimitC: 245,
  liquidusC: 220,
  secondsAllAbove: 20,
  secondsAnyAbove: 60,
  moltenAtS: 320,
  windowC: { from: 225, to: 230 },
  verdict: 'melts',
  ...more,
});

const emptyFields = () => ({ top: new Float32Array(0), bottom: new Float32Array(0) });

/** Results of the plan's runs: the site at 150 C when the gas starts, targets as given for removal and installation. */
export function runsOf(
  plan: Plan,
  targets: Partial<Record<'removal' | 'installation', TargetResult[]>> = {},
): RunResult[] {
  return plan.heatRuns.map((run): RunResult => {
    let endsAtS = 0;
    const segments = run.segments.map((segment): SegmentReading => {
      endsAtS += segment.seconds;
      const siteC = segment.gas ? 230 : segment.name.startsWith('Cool') ? 80 : 150;
      const gasOutletC = segment.gas?.endC ?? null;
      return { name: segment.name, endsAtS, gasSetC: null, gasOutletC, preheaterSourceC: 260, siteC };
    });
    const usual: Record<string, TargetResult[]> = {
      removal: targets.removal ?? [targetOf()],
      installation: targets.installation ?? [
        targetOf({ coldestJointC: 236, secondsAllAbove: 50, secondsAnyAbove: 70, windowC: { from: 230, to: 245 } }),
      ],
    };
    return {
      runId: run.id,
      seconds: endsAtS,
      fields: emptyFields(),
      targets: usual[run.kind] ?? [],
      watch: [],
      segments,
    };
  });
}

/** An evaluation with the given exposures. */
export function evaluationOf(plan: Plan, parts: PartExposure[], more: Partial<Evaluation> = {}): Evaluation {
  return {
    revision: 1,
    phase: 'fine',
    grid: { columns: 0, rows: 0, cellMm: 1, originX: 0, originY: 0, grownFromMm: null },
    fields: emptyFields(),
    runs: runsOf(plan),
    parts,
    notEvaluated: [],
    notices: [],
    bands: 'computed',
    ...more,
  };
}

export const classNameOf = (part: Part): string => classById(part.class).name;
