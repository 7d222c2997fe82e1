import type { HeatScene } from './scene.ts';
import type { SubStep } from './stepping.ts';

/** Steps at the start of each segment that are run as two damped half steps, else thin bodies ring. */
const DAMPED_STEPS = 2;

export type PlannedStep = SubStep & {
  segment: number;
  /** Seconds from the segment's start to the middle of this sub-step. */
  middleS: number;
  /** Which of the run's theta x dt it has: factors are made anew when that changes. */
  factors: number;
  /** Seconds from the run's start to the end of this sub-step. */
  endS: number;
};

/** How many equal steps a segment has: ceil(seconds / step). */
export function stepsOf(seconds: number, stepS: number): number {
  return Math.max(1, Math.ceil(seconds / stepS - 1e-9));
}

/** All sub-steps of a run in order (heat-model.md, section 6). */
export function planSteps(scene: HeatScene, stepS: number): PlannedStep[] {
  const planned: PlannedStep[] = [];
  const taus: number[] = [];
  let startS = 0;
  scene.segments.forEach((segment, index) => {
    if (segment.seconds <= 0) return;
    const count = stepsOf(segment.seconds, stepS);
    const full = segment.seconds / count;
    for (let step = 0; step < count; step++) {
      const damped = step < DAMPED_STEPS;
      for (let half = 0; half < (damped ? 2 : 1); half++) {
        const dt = damped ? full / 2 : full;
        const fromS = step * full + half * dt;
        const theta = damped ? 1 : 0.5;
        if (!taus.includes(theta * dt)) taus.push(theta * dt);
        planned.push({
          dt,
          theta,
          factors: taus.indexOf(theta * dt),
          fresh: step === 0 && half === 0,
          segment: index,
          middleS: fromS + dt / 2,
          endS: startS + fromS + dt,
        });
      }
    }
    startS += segment.seconds;
  });
  return planned;
}

/** Number of sub-steps up to the first that ends at this time or later. */
export function stepsUntil(steps: readonly PlannedStep[], seconds: number): number {
  const ends = steps.findIndex((step) => step.endS >= seconds - 1e-9);
  return ends < 0 ? steps.length : ends + 1;
}
