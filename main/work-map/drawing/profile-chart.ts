import type { RunResult } from '../../../shared-types/evaluation.ts';
import type { HeatRun } from '../../../shared-types/plan.ts';
import type { SheetFigures } from '../../../shared-types/words/sheet-figures.ts';
import type { SheetWords } from '../../../shared-types/words/sheet-run.ts';
import { clock } from '../../../shared-types/words/work-map.ts';
import { INK, type PageBox, type PagePoint } from '../paper.ts';
import type { Ink } from './ink.ts';

const AXIS_LEFT = 30;
const AXIS_BELOW = 20;
const FIGURE = { face: 'mono', size: 10 } as const;

type Series = { seconds: number; celsius: number }[];

/** Set temperatures along a run; each segment's ramp as it is set, a gap where the gas is off. */
function setSeries(run: HeatRun, of: 'preheater' | 'gas'): Series[] {
  const stretches: Series[] = [];
  let at = 0;
  let open: Series | null = null;
  for (const segment of run.segments) {
    const ramp = segment[of];
    if (ramp) {
      if (!open) {
        open = [];
        stretches.push(open);
      }
      open.push({ seconds: at, celsius: ramp.startC }, { seconds: at + segment.seconds, celsius: ramp.endC });
    } else open = null;
    at += segment.seconds;
  }
  return stretches;
}

/** Predicted board temperature at the site: all along where it is told, else at the segments' ends. */
function predicted(result: RunResult | null): { line: Series; ends: Series } {
  if (!result) return { line: [], ends: [] };
  const ends = result.segments.map(({ endsAtS, siteC }) => ({ seconds: endsAtS, celsius: siteC }));
  const { siteSeries } = result;
  const line = (siteSeries?.celsius ?? []).map((celsius, index) => ({
    seconds: index * (siteSeries?.stepS ?? 1),
    celsius,
  }));
  return { line, ends };
}

/** A graph to compare with and to pencil into: set preheater and gas, predicted board, a fine grid. */
export function drawProfileChart(
  ink: Ink,
  { figures }: SheetWords,
  run: HeatRun,
  result: RunResult | null,
  box: PageBox,
): void {
  const sets = { preheater: setSeries(run, 'preheater'), gas: setSeries(run, 'gas') };
  const { line, ends } = predicted(result);
  const total = run.segments.reduce((sum, segment) => sum + segment.seconds, 0);
  const all = [...sets.preheater, ...sets.gas, line, ends].flat().map((point) => point.celsius);
  const topC = Math.max(50, Math.ceil((Math.max(...all) + 10) / 50) * 50);
  const plot = { x0: box.x0 + AXIS_LEFT, x1: box.x1 - 8, y0: box.y0 + 4, y1: box.y1 - AXIS_BELOW };
  const at = ({ seconds, celsius }: { seconds: number; celsius: number }): PagePoint => ({
    x: plot.x0 + ((plot.x1 - plot.x0) * seconds) / total,
    y: plot.y1 - ((plot.y1 - plot.y0) * Math.max(0, celsius)) / topC,
  });
  drawGrid(ink, figures, plot, total, topC);
  for (const stretch of sets.preheater) ink.polyline(stretch.map(at), { width: 0.9, dash: [5, 2.5] });
  for (const stretch of sets.gas) ink.polyline(stretch.map(at), { width: 0.9, dash: [1.2, 1.8] });
  ink.polyline(line.map(at), { width: 1.5 });
  for (const end of ends) ink.circle(at(end), 1.8, { width: 0.8 }, INK.white);
  ink.box(plot, { width: 0.7 });
}

/** The step of an axis: the smallest of the round steps that leaves room for its figures. */
const axisStep = (total: number, room: number, least: number, steps: readonly number[]): number =>
  steps.find((step) => (room * step) / total >= least) ?? steps[steps.length - 1];

function drawGrid(ink: Ink, figures: SheetFigures, plot: PageBox, total: number, topC: number): void {
  const width = plot.x1 - plot.x0;
  const height = plot.y1 - plot.y0;
  const stepS = axisStep(total, width, 40, [10, 30, 60, 120, 300, 600, 1200, 3600, 7200, 36000]);
  const ticks = figures.axis(topC, (share) => share * height >= 15).filter(({ celsius }) => celsius >= 0);
  const fineC = (ticks[1].celsius - ticks[0].celsius) / 5;
  const x = (seconds: number) => plot.x0 + (width * seconds) / total;
  const y = (celsius: number) => plot.y1 - (height * celsius) / topC;
  const fine = { width: 0.3, colour: INK.graph };
  for (let s = 0; s <= total; s += stepS / 2) ink.segment({ x: x(s), y: plot.y0 }, { x: x(s), y: plot.y1 }, fine);
  for (let c = ticks[0].celsius % fineC; c <= topC; c += fineC)
    ink.segment({ x: plot.x0, y: y(c) }, { x: plot.x1, y: y(c) }, fine);
  for (let s = 0; s <= total; s += stepS) {
    ink.segment({ x: x(s), y: plot.y1 }, { x: x(s), y: plot.y1 + 3 }, { width: 0.7 });
    const text = clock(s);
    const half = ink.type.width(text, FIGURE.face, FIGURE.size) / 2;
    if (x(s) + half <= plot.x1 + 8) ink.text(x(s) - half, plot.y1 + 17, text, FIGURE);
  }
  for (const { celsius, text } of ticks) {
    ink.segment({ x: plot.x0 - 3, y: y(celsius) }, { x: plot.x0, y: y(celsius) }, { width: 0.7 });
    ink.text(plot.x0 - 5 - ink.type.width(text, FIGURE.face, FIGURE.size), y(celsius) + 3.5, text, FIGURE);
  }
}

/** Height of the key line below the graph. */
export const CHART_KEY_HEIGHT = 17;

/** The keys of the graph's lines in a row. */
export function drawChartKey(ink: Ink, { chart }: SheetWords, x: number, y: number): void {
  const middle = y + CHART_KEY_HEIGHT / 2;
  let left = x + AXIS_LEFT;
  for (const [words, stroke] of [
    [chart.board, { width: 1.5 }],
    [chart.preheater, { width: 0.9, dash: [5, 2.5] }],
    [chart.gas, { width: 0.9, dash: [1.2, 1.8] }],
  ] as const) {
    ink.segment({ x: left, y: middle }, { x: left + 22, y: middle }, stroke);
    ink.text(left + 27, middle + 3.5, words, { face: 'sans', size: 10 });
    left += 27 + ink.type.width(words, 'sans', 10) + 18;
  }
}
