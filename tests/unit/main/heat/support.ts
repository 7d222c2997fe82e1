import { type EvaluateOptions, evaluate } from '../../../../main/heat/evaluate.ts';
import type { HeatScene, SceneBody } from '../../../../main/heat/scene.ts';
import type { Board, Part } from '../../../../shared-types/board.ts';
import { emptyBoard } from '../../../../shared-types/board.ts';
import type { Evaluation, PartExposure } from '../../../../shared-types/evaluation.ts';
import type { HeatRun, Plan, Site } from '../../../../shared-types/plan.ts';
import type { Segment } from '../../../../shared-types/profile.ts';
import { emptyPlan, siteOn } from '../../../../shared-types/rules/new-plan.ts';

export function part(
  refdes: string,
  x: number,
  y: number,
  size: [l: number, w: number, h: number],
  more: Partial<Part> = {},
): Part {
  return {
    refdes,
    side: 'top',
    x,
    y,
    turn: 0,
    package: { name: 'drawn', shape: 'rectangle', lengthMm: size[0], widthMm: size[1], heightMm: size[2] },
    class: 'chip-capacitor',
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

export function segment(
  name: string,
  seconds: number,
  source: [number, number],
  gas: [number, number] | null,
): Segment {
  return {
    name,
    seconds,
    preheater: { startC: source[0], endC: source[1] },
    gas: gas && { startC: gas[0], endC: gas[1] },
    flowLMin: gas ? 40 : 0,
    siteId: null,
  };
}

/** Preheat, gas, cool: short enough for a unit test, long enough to melt a small array part. */
export const SHORT_PROFILE: Segment[] = [
  segment('Preheat', 60, [25, 330], null),
  segment('Soak', 120, [330, 330], null),
  segment('Gas', 70, [330, 330], [345, 345]),
  segment('Cool', 30, [25, 25], null),
];

/** A 60 x 44 mm board: an array part in the middle, neighbours near, far, on both sides. */
export function smallBoard(): Board {
  return {
    ...emptyBoard('small', 60, 44),
    parts: [
      part('U1', 30, 22, [13, 13, 1.4], { class: 'bga' }),
      part('U2', 44, 22, [7, 5, 1.1], { class: 'so' }),
      part('C1', 38.5, 22, [1.6, 0.8, 0.8]),
      part('C2', 10, 8, [1.6, 0.8, 0.8], { turn: 90 }),
      part('C9', 30, 22, [2, 1.25, 1.25], { side: 'bottom' }),
      part('E1', 52, 34, [6.3, 6.3, 5.8], {
        class: 'electrolytic-small',
        package: { name: 'can', shape: 'round', lengthMm: 6.3, widthMm: 6.3, heightMm: 5.8 },
      }),
    ],
  };
}

export function site(board: Board, refdes: string, id = 'site-1'): Site {
  return siteOn(board.parts.find((candidate) => candidate.refdes === refdes)!, id);
}

export function run(kind: HeatRun['kind'], id: string, more: Partial<HeatRun> = {}): HeatRun {
  return { id, name: id, kind, side: 'top', siteIds: ['site-1'], segments: SHORT_PROFILE, ...more };
}

/** A plan with one site on U1 and one removal run, outlet measured, everything of the station stated. */
export function smallPlan(board: Board, more: Partial<Plan> = {}): Plan {
  const plan = emptyPlan('T-1');
  return {
    ...plan,
    station: {
      ...plan.station,
      gasReads: 'outlet',
      roomC: 25,
      entrainedC: 50,
      fumeExtraction: 'off',
      nozzle: { kind: 'round', diameterMm: 10, standOffMm: 12, sweepRadiusMm: 5, tiltDeg: 10, headingDeg: 90 },
      preheater: { kind: 'quartz', lengthMm: 50, widthMm: 40, centre: null, sensor: null, largestC: 400 },
    },
    sites: [site(board, 'U1')],
    heatRuns: [run('removal', 'run-1')],
    ...more,
  };
}

export function evaluated(board: Board, plan: Plan, options: Partial<EvaluateOptions> = {}): Evaluation {
  const result = evaluate(board, plan, { phase: 'coarse', ...options });
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

export function exposure(evaluation: Evaluation, refdes: string): PartExposure {
  const found = evaluation.parts.find((candidate) => candidate.refdes === refdes);
  if (!found) throw new Error(`${refdes} was not evaluated`);
  return found;
}

/** A bare scene of a board alone; tests add what they need. */
export function bareScene(more: Partial<HeatScene> = {}): HeatScene {
  return {
    roomC: 25,
    entrainedC: 25,
    workedSide: 'top',
    fumeFilm: 0,
    board: {
      outlines: [
        [
          [0, 0],
          [0.06, 0],
          [0.06, 0.04],
          [0, 0.04],
        ],
      ],
      cutouts: [],
      thicknessM: 0.0016,
      volumetricHeat: 2.28e6,
      inPlane: 16,
      throughPlane: 0.6,
      emissivity: 0.9,
    },
    bodies: [],
    nozzle: null,
    preheater: null,
    segments: [],
    ...more,
  };
}

export function body(id: string, xM: number, yM: number, more: Partial<SceneBody> = {}): SceneBody {
  return {
    id,
    side: 'top',
    xM,
    yM,
    lengthM: 0.01,
    widthM: 0.01,
    turnDeg: 0,
    shape: 'rect',
    wallM: 0,
    heightM: 0.001,
    jointConductance: 20000,
    gapConductance: 0,
    volumetricHeat: 2e6,
    conductivity: 0.9,
    emissivity: 0.9,
    shieldResistance: 0,
    shieldArealHeat: 0,
    metal: false,
    trialShield: null,
    ...more,
  };
}
