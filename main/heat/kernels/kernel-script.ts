import type { HeatState } from '../heat-state.ts';
import { initialMoment, type Moment, preheaterDecay, setGas, wantedOfPreheater } from '../moment.ts';
import type { HeatScene } from '../scene.ts';
import type { PlannedStep } from '../step-plan.ts';
import * as slots from './assembly/slots.ts';

/** All that is known of a run's sub-steps before it begins, for the kernels: they then set out on one by its number alone. */
export type KernelScript = {
  begin: (step: number) => void;
  /** Temperature of the preheater's source now, which a snapshot keeps. */
  sourceC: () => number;
  setSourceC: (celsius: number) => void;
};

function writeStep(script: Float64Array, step: number, { dt, theta, fresh, endS }: PlannedStep): number {
  const at = step * slots.SCRIPT_ROW - slots.STEP_NUMBERS;
  script[at + slots.DT] = dt;
  script[at + slots.TAU] = theta * dt;
  script[at + slots.THETA] = theta;
  script[at + slots.NOW] = fresh ? 1 : 1.5;
  script[at + slots.EARLIER] = fresh ? 0 : -0.5;
  script[at + slots.END_S] = endS;
  return at;
}

function writeGas(script: Float64Array, at: number, moment: Moment): void {
  script[at + slots.STRENGTH] = moment.strength;
  script[at + slots.GAS_C] = moment.gasC;
  script[at + slots.FLUX] = moment.flux;
  script[at + slots.STRENGTH_AT_END] = moment.strengthAtEnd;
  script[at + slots.GAS_AT_END_C] = moment.gasAtEndC;
  script[at + slots.FLUX_AT_END] = moment.fluxAtEnd;
}

/** Writes the script of a run; null where it lies in no memory of the kernels'. */
export function writeScript(scene: HeatScene, state: HeatState, steps: readonly PlannedStep[]): KernelScript | null {
  const { kernels, numbers } = state.room;
  if (!kernels) return null;
  const { script } = state.tables;
  const { preheater, segments, nozzle } = scene;
  const moment = initialMoment(scene);
  for (const [index, step] of steps.entries()) {
    const segment = segments[step.segment]!;
    const at = writeStep(script, index, step);
    setGas(moment, scene, segment, step.middleS, step.dt);
    writeGas(script, at, moment);
    script[at + slots.HAS_FOOTPRINT] = segment.gas && nozzle ? 1 : 0;
    script[at + slots.WANTED_C] = wantedOfPreheater(segment, step.middleS);
    script[at + slots.DECAY] = preheater ? preheaterDecay(preheater, step.dt) : 0;
  }
  numbers[slots.HAS_PREHEATER] = preheater ? 1 : 0;
  numbers[slots.PREHEATER_FILM] = moment.preheaterFilm;
  numbers[slots.PREHEATER_C] = moment.preheaterC;
  numbers[slots.SOURCE_C] = moment.sourceC;
  numbers[slots.SENSOR_FACE] = state.sensorFace;
  numbers[slots.SOURCE_MOST_C] = preheater?.sensor?.sourceMaxC ?? 0;
  return {
    begin: kernels.beginStep,
    sourceC: () => numbers[slots.SOURCE_C]!,
    setSourceC(celsius) {
      numbers[slots.SOURCE_C] = celsius;
    },
  };
}
