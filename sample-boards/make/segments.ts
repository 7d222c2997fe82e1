import type { Segment } from '../../shared-types/profile.ts';

/** One stretch: name, seconds, preheater source from and to (C), gas from and to (C, null: off), flow (L/min), site. */
export type Stretch = readonly [
  name: string,
  seconds: number,
  preheater: readonly [number, number],
  gas: readonly [number, number] | null,
  flowLMin: number,
  siteId: string | null,
];

export const segments = (stretches: readonly Stretch[]): Segment[] =>
  stretches.map(([name, seconds, preheater, gas, flowLMin, siteId]) => ({
    name,
    seconds,
    preheater: { startC: preheater[0], endC: preheater[1] },
    gas: gas && { startC: gas[0], endC: gas[1] },
    flowLMin,
    siteId,
  }));
