import { useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useAppState } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import type { CurveStyle } from '../curve-lines.ts';

/** A line over time: s and C. */
export type ChartLine = { name: string; seconds: ArrayLike<number>; celsius: ArrayLike<number>; style: CurveStyle };

type LineChartProps = {
  label: string;
  lines: readonly ChartLine[];
  /** Upright lines at these seconds. */
  at?: readonly number[];
  height?: number;
};

/** Lines of temperature over time, to look at. */
export function LineChart({ label, lines, at, height = 200 }: LineChartProps) {
  const host = useRef<HTMLDivElement>(null);
  const theme = useAppState((state) => `${state.settings.theme} ${state.systemDark}`);
  const { showC } = useUnits();
  // biome-ignore lint/correctness/useExhaustiveDependencies: `theme` is read out of the style sheet
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const data = dataOf(lines, showC);
    const made = new uPlot(optionsOf(element, lines, at ?? [], height), data, element);
    const watcher = new ResizeObserver(() => made.setSize({ width: element.clientWidth, height }));
    watcher.observe(element);
    return () => {
      watcher.disconnect();
      made.destroy();
    };
  }, [lines, at, height, showC, theme]);
  return <div ref={host} className="line-chart" role="img" aria-label={label} />;
}

/** Lines with times of their own on one common row of times; where a line has no value it is joined over. */
function dataOf(lines: readonly ChartLine[], showC: (celsius: number) => number): uPlot.AlignedData {
  if (lines.length === 0) return [[]];
  return uPlot.join(
    lines.map(({ seconds, celsius }): uPlot.AlignedData => [Array.from(seconds), Array.from(celsius, showC)]),
  );
}

function optionsOf(
  element: HTMLElement,
  lines: readonly ChartLine[],
  at: readonly number[],
  height: number,
): uPlot.Options {
  const style = getComputedStyle(element);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const inks = { ink: colour('--ink'), accent: colour('--accent'), soft: colour('--soft-ink') };
  const axis: uPlot.Axis = {
    ...{ stroke: inks.soft, font: `12px ${colour('--mono')}`, gap: 4 },
    grid: { stroke: colour('--rule'), width: 1 },
    ticks: { stroke: colour('--control-edge'), width: 1, size: 4 },
  };
  return {
    ...{ width: element.clientWidth || 300, height, padding: [8, 8, 0, 0] },
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false } },
    axes: [
      { ...axis, size: 24, values: (_, ticks) => ticks.map((tick) => `${tick}`) },
      { ...axis, size: 38 },
    ],
    series: [
      {},
      ...lines.map(({ name, style: { ink, width, dash } }) => ({
        ...{ label: name, stroke: inks[ink], width, dash: [...dash], spanGaps: true },
        points: { show: false },
      })),
    ],
    hooks: { draw: [(chart) => drawUprights(chart, at, inks.ink)] },
  };
}

function drawUprights(chart: uPlot, at: readonly number[], ink: string): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.strokeStyle = ink;
  ctx.lineWidth = uPlot.pxRatio;
  for (const seconds of at) {
    const x = Math.round(chart.valToPos(seconds, 'x', true)) + 0.5;
    if (x < bbox.left || x > bbox.left + bbox.width) continue;
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
  }
  ctx.restore();
}
