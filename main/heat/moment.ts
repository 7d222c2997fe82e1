import type { HeatState } from './heat-state.ts';
import { emitterFlux, type Footprint, jetStrength } from './nozzle.ts';
import type { HeatScene, ScenePreheater, SceneSegment } from './scene.ts';

/** What acts on the board during one sub-step. Rewritten in place each time. */
export type Moment = {
  /** Nozzle film = strength x footprint shape, W/m2K; 0: gas off. */
  strength: number;
  /** Infrared from the emitter, W/m2 before view factor and absorption; 0: none. */
  flux: number;
  gasC: number;
  /** The same three at the end of the sub-step: a ramp has gone on by half of it. */
  strengthAtEnd: number;
  fluxAtEnd: number;
  gasAtEndC: number;
  footprint: Footprint | null;
  preheaterFilm: number;
  /** Source temperature as the films see it: mean over the sub-step. */
  preheaterC: number;
  /** Source temperature at the end of the sub-step. */
  sourceC: number;
};

export function initialMoment(scene: HeatScene): Moment {
  return {
    strength: 0,
    flux: 0,
    gasC: scene.roomC,
    strengthAtEnd: 0,
    fluxAtEnd: 0,
    gasAtEndC: scene.roomC,
    footprint: null,
    preheaterFilm: scene.preheater?.film ?? 0,
    preheaterC: scene.roomC,
    sourceC: scene.roomC,
  };
}

/** Gain of the board sensor's controller (heat-model.md, section 3). */
const SENSOR_GAIN = 8;

/** What the profile wants of the preheater at a time of a segment, °C. */
export function wantedOfPreheater(segment: SceneSegment, middleS: number): number {
  const share = middleS / segment.seconds;
  return segment.preheaterStartC + share * (segment.preheaterEndC - segment.preheaterStartC);
}

/** How much of its distance to the command the source keeps over a sub-step. */
export const preheaterDecay = ({ lagS }: ScenePreheater, dt: number): number => Math.exp(-dt / lagS);

function preheaterCommand(scene: HeatScene, state: HeatState, wanted: number): number {
  const sensor = scene.preheater?.sensor;
  if (!sensor) return wanted;
  const read = state.temperature[state.sensorFace]!;
  return Math.min(sensor.sourceMaxC, Math.max(scene.roomC, wanted + SENSOR_GAIN * (wanted - read)));
}

/** Strength of the nozzle's film for gas of this temperature and flow, W/m2K; 0 for infrared. */
function strengthOf({ nozzle }: HeatScene, celsius: number, flow: number): number {
  return nozzle && !nozzle.infrared && flow > 0 ? jetStrength(nozzle, celsius, flow).strength : 0;
}

const fluxOf = ({ nozzle, roomC }: HeatScene, celsius: number): number =>
  nozzle?.infrared ? emitterFlux(nozzle.infrared.emissivity, celsius, roomC) : 0;

/** The gas at two times of its segment: at the middle of the sub-step for the films, at its end for the skins. */
export function setGas(moment: Moment, scene: HeatScene, segment: SceneSegment, middleS: number, dt: number): void {
  const { gas, seconds } = segment;
  const middle = middleS / seconds;
  const end = (middleS + dt / 2) / seconds;
  moment.strength = 0;
  moment.flux = 0;
  moment.strengthAtEnd = 0;
  moment.fluxAtEnd = 0;
  if (!gas || !scene.nozzle) return;
  const flowRise = gas.flowEnd - gas.flowStart;
  moment.gasC = gas.startC + middle * (gas.endC - gas.startC);
  moment.gasAtEndC = gas.startC + end * (gas.endC - gas.startC);
  moment.strength = strengthOf(scene, moment.gasC, gas.flowStart + middle * flowRise);
  moment.strengthAtEnd = strengthOf(scene, moment.gasAtEndC, gas.flowStart + end * flowRise);
  moment.flux = fluxOf(scene, moment.gasC);
  moment.fluxAtEnd = fluxOf(scene, moment.gasAtEndC);
}

/**
 * Sets the moment for a sub-step: profile values at its middle, the source through its lag.
 * @param middleS seconds from the segment's start to the middle of the sub-step
 */
export function setMoment(
  moment: Moment,
  scene: HeatScene,
  state: HeatState,
  segment: SceneSegment,
  middleS: number,
  dt: number,
): void {
  if (scene.preheater) {
    const command = preheaterCommand(scene, state, wantedOfPreheater(segment, middleS));
    const after = command + (moment.sourceC - command) * preheaterDecay(scene.preheater, dt);
    moment.preheaterC = (moment.sourceC + after) / 2;
    moment.sourceC = after;
  }
  setGas(moment, scene, segment, middleS, dt);
}
