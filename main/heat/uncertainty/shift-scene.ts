import type { TermSteps } from '../../../shared-types/uncertainty.ts';
import { DILUTION_EXPONENT } from '../nozzle.ts';
import type { HeatScene, SceneNozzle, SceneSegment } from '../scene.ts';

/** The jet draws no air in backwards: an exponent below 0 would heat it on its way. */
const LEAST_EXPONENT = 0.05;

function shiftNozzle(nozzle: SceneNozzle, { nozzle: film = 0, dilution = 0 }: TermSteps): SceneNozzle {
  const exponent = (nozzle.dilutionExponent ?? DILUTION_EXPONENT) + dilution;
  return {
    ...nozzle,
    ...(film !== 0 && { filmFactor: (nozzle.filmFactor ?? 1) * Math.exp(film) }),
    ...(dilution !== 0 && { dilutionExponent: Math.max(LEAST_EXPONENT, exponent) }),
  };
}

/** Gas that leaves the outlet so much hotter (K), but never colder than the room. */
function shiftGas(segment: SceneSegment, outlet: number, roomC: number): SceneSegment {
  const { gas } = segment;
  if (!gas) return segment;
  const startC = Math.max(roomC, gas.startC + outlet);
  const endC = Math.max(roomC, gas.endC + outlet);
  return { ...segment, gas: { ...gas, startC, endC } };
}

/**
 * The scene with the model's terms moved by these steps (each in its own coordinate: logarithm of a factor, exponent,
 * K at the outlet). No step: the scene itself, so that its numbers stay the same to the last bit.
 */
export function shiftScene(scene: HeatScene, steps: TermSteps): HeatScene {
  const { outlet = 0, preheater = 0, inPlane = 0, joints = 0, idle = 0 } = steps;
  const scaled = Math.exp(joints);
  return {
    ...scene,
    ...(idle !== 0 && { idleFactor: (scene.idleFactor ?? 1) * Math.exp(idle) }),
    board: inPlane === 0 ? scene.board : { ...scene.board, inPlane: scene.board.inPlane * Math.exp(inPlane) },
    bodies:
      joints === 0
        ? scene.bodies
        : scene.bodies.map((body) => ({ ...body, jointConductance: body.jointConductance * scaled })),
    nozzle: scene.nozzle && shiftNozzle(scene.nozzle, steps),
    preheater:
      scene.preheater && preheater !== 0
        ? { ...scene.preheater, film: scene.preheater.film * Math.exp(preheater) }
        : scene.preheater,
    segments: outlet === 0 ? scene.segments : scene.segments.map((segment) => shiftGas(segment, outlet, scene.roomC)),
  };
}
