import type { RunResult } from '../../../shared-types/evaluation.ts';
import type { HeatRun } from '../../../shared-types/plan.ts';

export type ChartPoint = { s: number; c: number };

/** What a profile chart draws, in seconds and C. Pieces of gas are apart where the gas is off. */
export type ProfileLines = {
  seconds: number;
  below: ChartPoint[];
  gas: ChartPoint[][];
  /** Expected board temperature at the site at the end of each segment. */
  site: ChartPoint[];
  /** Ends of the segments. */
  ends: number[];
  highestC: number;
};

export function profileLines(run: HeatRun, result: RunResult | undefined, roomC: number): ProfileLines {
  const lines: ProfileLines = { seconds: 0, below: [], gas: [], site: [], ends: [], highestC: roomC };
  let wasOn = false;
  for (const segment of run.segments) {
    const [from, to] = [lines.seconds, lines.seconds + segment.seconds];
    lines.below.push({ s: from, c: segment.preheater.startC }, { s: to, c: segment.preheater.endC });
    if (segment.gas) {
      if (!wasOn) lines.gas.push([]);
      lines.gas.at(-1)?.push({ s: from, c: segment.gas.startC }, { s: to, c: segment.gas.endC });
    }
    wasOn = segment.gas !== null;
    lines.seconds = to;
    lines.ends.push(to);
  }
  if (result && result.segments.length === run.segments.length)
    lines.site = [{ s: 0, c: roomC }, ...result.segments.map((reading) => ({ s: reading.endsAtS, c: reading.siteC }))];
  const all = [...lines.below, ...lines.gas.flat(), ...lines.site].map((point) => point.c);
  lines.highestC = Math.max(roomC, ...all);
  return lines;
}

/** Round ticks from 0 up to the highest figure, in the user's unit: four to six of them. */
export function chartScale(highest: number): { top: number; ticks: number[] } {
  const step = [50, 100, 200, 500].find((one) => highest / one <= 5) ?? 1000;
  const top = Math.ceil(highest / step) * step;
  return { top, ticks: Array.from({ length: top / step + 1 }, (_, index) => index * step) };
}
