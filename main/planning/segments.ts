import type { HeatRun } from '../../shared-types/plan.ts';

/** A stretch of a run in which the gas blows at one site, s from the run's start. */
export type GasStretch = { firstSegment: number; fromS: number; untilS: number };

/** Site that the nozzle stands over in a segment: its own, else the run's first. */
export const siteOfSegment = (run: HeatRun, index: number): string | undefined =>
  run.segments[index].siteId ?? run.siteIds[0];

/** When the gas blows at a site: from its first gas segment there to the end of its last. Null: never. */
export function gasAt(run: HeatRun, siteId: string): GasStretch | null {
  let start = 0;
  let stretch: GasStretch | null = null;
  run.segments.forEach((segment, index) => {
    const end = start + segment.seconds;
    if (segment.gas && siteOfSegment(run, index) === siteId)
      stretch = { firstSegment: stretch?.firstSegment ?? index, fromS: stretch?.fromS ?? start, untilS: end };
    start = end;
  });
  return stretch;
}

/** Index of the run's first segment with gas, or null. */
export function firstGasSegment(run: HeatRun): number | null {
  const index = run.segments.findIndex((segment) => segment.gas !== null);
  return index < 0 ? null : index;
}
