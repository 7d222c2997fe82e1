import type { z } from 'zod';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { fieldFault } from '../../shared-types/words/field-faults.ts';
import { type ExampleCase, exampleCaseSchema } from './example-case-schema.ts';
import { buildGrid, cellAt } from './grid.ts';
import { jetStrength, plateauShape } from './nozzle.ts';
import type { HeatScene, SceneBody, SceneNozzle, ScenePreheater, SceneSegment } from './scene.ts';
import { createSimulation, type Simulation } from './simulation.ts';

/** Peaks of one part over the cells that it covers, °C. */
export type CasePartResult = {
  peakBodyMax: number;
  peakBodyMean: number;
  peakSkinMax: number;
  peakJointMax: number;
  peakJointMin: number;
};

export type CaseResult = {
  /** Of the segment that ends with the hottest gas; null where no gas blows. */
  nozzle: { Re: number; hPlateau: number } | null;
  parts: Record<string, CasePartResult>;
  /** Parts that lie on no cell of the board: reported, not evaluated. */
  notEvaluated: string[];
};

export type CaseGrid = { cellMm: number; stepS: number };

/** The case's nozzle, or null; a hood may stand beside the nozzle or inside it. */
function nozzleOf(example: ExampleCase): SceneNozzle | null {
  const given = example.nozzle;
  if (!given) return null;
  const hood = given.hood ?? example.hood;
  return {
    mouth:
      given.shape === 'round'
        ? { shape: 'round', diameterM: given.D }
        : { shape: 'rect', lengthM: given.l, widthM: given.w, turnDeg: given.turn },
    standOffM: given.H,
    sweepRadiusM: given.sweep,
    tiltDeg: given.tilt,
    headingDeg: given.heading,
    hood: hood ? { filmAt30: hood.h, rimGapM: hood.gap, leak: hood.leak } : null,
  };
}

function preheaterOf(example: ExampleCase): ScenePreheater | null {
  const given = example.preheater;
  if (!given) return null;
  const sensor = given.sensor;
  return {
    xM: given.x,
    yM: given.y,
    lengthM: given.l,
    widthM: given.w,
    turnDeg: given.turn,
    film: given.h,
    lagS: given.lag,
    sensor: sensor ? { xM: sensor[0], yM: sensor[1], sourceMaxC: given.max ?? Number.POSITIVE_INFINITY } : null,
  };
}

function bodiesOf(example: ExampleCase): SceneBody[] {
  return example.parts.map((part) => {
    const shields = example.shields.filter((shield) => shield.ref === part.ref);
    return {
      id: part.ref,
      side: part.side,
      xM: part.x,
      yM: part.y,
      lengthM: part.l,
      widthM: part.w,
      turnDeg: part.turn,
      shape: 'rect',
      wallM: 0,
      heightM: part.height,
      jointConductance: part.g,
      gapConductance: 0,
      volumetricHeat: part.rhoc,
      conductivity: part.k,
      emissivity: part.eps ?? example.board.eps,
      shieldResistance: shields.reduce((sum, shield) => sum + shield.R, 0),
      shieldArealHeat: shields.reduce((sum, shield) => sum + shield.mc, 0),
      metal: false,
      trialShield: null,
    };
  });
}

function segmentsOf(example: ExampleCase): SceneSegment[] {
  return example.profile.map((segment, index) => {
    const at = segment.at ?? [example.site?.x ?? 0, example.site?.y ?? 0];
    const [preheaterStartC, preheaterEndC] = segment.pre ?? [example.room, example.room];
    const flow = segment.flow ?? 0;
    return {
      name: String(index + 1),
      seconds: segment.s,
      preheaterStartC,
      preheaterEndC,
      gas: segment.gas ? { startC: segment.gas[0], endC: segment.gas[1], flowStart: flow, flowEnd: flow } : null,
      nozzleXM: at[0],
      nozzleYM: at[1],
    };
  });
}

/** The scene of a valid case. */
export function sceneOfCase(example: ExampleCase): HeatScene {
  const { W, H, t, rhoc, kpar, kthru, eps, cutouts } = example.board;
  const rectangle = (x0: number, y0: number, x1: number, y1: number) =>
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ] as const;
  return {
    roomC: example.room,
    entrainedC: example.entrained ?? example.room,
    workedSide: example.side,
    fumeFilm: 0,
    board: {
      outlines: [rectangle(0, 0, W, H)],
      cutouts: cutouts.map((corners) => rectangle(...corners)),
      thicknessM: t,
      volumetricHeat: rhoc,
      inPlane: kpar,
      throughPlane: kthru,
      emissivity: eps,
    },
    bodies: bodiesOf(example),
    nozzle: nozzleOf(example),
    preheater: preheaterOf(example),
    segments: segmentsOf(example),
  };
}

function pathText(path: readonly PropertyKey[]): string {
  return path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`)).join('');
}

function issueProblem(issue: z.core.$ZodIssue, document: unknown): Problem {
  return {
    code: 'invalid-field',
    where: pathText(issue.path).replace(/^\./, '') || 'the whole case',
    detail: { reason: fieldFault(issue, document) },
  };
}

const fault = (where: string, reason: string, todo: string) =>
  fail('invalid-field', { where, detail: { reason, todo } });

/** What the schema cannot see: names that do not fit together, points off the board, gas without a nozzle. */
function crossFault(example: ExampleCase, scene: HeatScene, cellM: number): { ok: false; problem: Problem } | null {
  const refs = example.parts.map((part) => part.ref);
  const twice = refs.findIndex((ref, index) => refs.indexOf(ref) !== index);
  if (twice >= 0) return fault(`parts[${twice}].ref`, `${refs[twice]} is used twice`, 'Give each part its own ref.');
  const lost = example.shields.findIndex((shield) => !refs.includes(shield.ref));
  if (lost >= 0) {
    return fault(`shields[${lost}].ref`, `no part is called ${example.shields[lost]!.ref}`, 'Name a part of the case.');
  }
  for (const [index, segment] of example.profile.entries()) {
    if (!segment.gas) continue;
    const where = `profile[${index}]`;
    if (!example.nozzle) return fault(`${where}.gas`, 'gas is on but the case has no nozzle', 'Add a nozzle.');
    if (segment.flow == null) return fault(`${where}.flow`, 'gas is on but its flow is missing', 'Add flow in L/min.');
    if (!segment.at && !example.site) return fault(`${where}.at`, 'the nozzle has no place', 'Add at or a site.');
  }
  const sensor = scene.preheater?.sensor;
  if (sensor && cellAt(buildGrid(scene.board, cellM), sensor.xM, sensor.yM) < 0) {
    return fault('preheater.sensor', 'the sensor is not on the board', 'Move it onto the board.');
  }
  return null;
}

/** Re and plateau film of the segment that ends with the hottest gas. */
function nozzleFigures(scene: HeatScene): CaseResult['nozzle'] {
  const blowing = scene.segments.filter((segment) => segment.gas !== null);
  const [first, ...others] = blowing;
  if (!scene.nozzle || !first) return null;
  const hottest = others.reduce((best, next) => (next.gas!.endC > best.gas!.endC ? next : best), first).gas!;
  const jet = jetStrength(scene.nozzle, hottest.endC, hottest.flowEnd);
  return { Re: jet.reynolds, hPlateau: jet.strength * plateauShape(scene.nozzle) };
}

function partFigures(simulation: Simulation, order: number): CasePartResult {
  const { entries, body, peak } = simulation.state;
  const result: CasePartResult = {
    peakBodyMax: -Infinity,
    peakBodyMean: 0,
    peakSkinMax: -Infinity,
    peakJointMax: -Infinity,
    peakJointMin: Infinity,
  };
  let weight = 0;
  for (let entry = entries.bodyStart[order]!; entry < entries.bodyStart[order + 1]!; entry++) {
    const share = entries.share[entry]!;
    const joint = peak[entries.face[entry]!]!;
    result.peakBodyMax = Math.max(result.peakBodyMax, body.peak[entry]!);
    result.peakBodyMean += share * body.peak[entry]!;
    result.peakSkinMax = Math.max(result.peakSkinMax, body.peakSkin[entry]!);
    result.peakJointMax = Math.max(result.peakJointMax, joint);
    result.peakJointMin = Math.min(result.peakJointMin, joint);
    weight += share;
  }
  result.peakBodyMean /= weight;
  return result;
}

/** Peaks per part of a finished run, extremes taken over the cells that a part covers. */
export function caseFigures(scene: HeatScene, simulation: Simulation): CaseResult {
  const { entries } = simulation.state;
  const parts: Record<string, CasePartResult> = {};
  scene.bodies.forEach((body, index) => {
    const order = entries.bodyOfScene.indexOf(index);
    if (order >= 0) parts[body.id] = partFigures(simulation, order);
  });
  return {
    nozzle: nozzleFigures(scene),
    parts,
    notEvaluated: entries.offBoard.map((index) => scene.bodies[index]!.id),
  };
}

/**
 * Runs a case of the worked example's form on a grid of `cellMm` with steps of `stepS`.
 * A case that does not fit comes back as a problem with the path of the field; `expected` is never read.
 */
export function runExampleCase(caseJson: unknown, { cellMm, stepS }: CaseGrid): Result<CaseResult> {
  if (!(cellMm > 0 && stepS > 0)) return fault('cell and step', 'must be above 0', 'Give millimetres and seconds.');
  const read = exampleCaseSchema.safeParse(caseJson);
  if (!read.success) return { ok: false, problem: issueProblem(read.error.issues[0]!, caseJson) };
  const scene = sceneOfCase(read.data);
  const wrong = crossFault(read.data, scene, cellMm / 1000);
  if (wrong) return wrong;
  const simulation = createSimulation(scene, cellMm / 1000, stepS);
  simulation.advance(simulation.stepCount);
  const figures = caseFigures(scene, simulation);
  simulation.release();
  return succeed(figures);
}
