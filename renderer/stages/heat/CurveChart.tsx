import { type KeyboardEvent, useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import type { CurvePicture } from './curve-lines.ts';

const HEIGHT = 216;

type ChartProps = {
  picture: CurvePicture;
  label: string;
  /** What is read at the time, in words. */
  said: string;
  /** Time that the readout stands at, s; null: nowhere. */
  atS: number | null;
  onTime: (seconds: number | null) => void;
  /** A press on the chart puts the map at that time. */
  onPick: (seconds: number) => void;
};

/** The curves of a run as a chart; the pointer or the arrow keys say at which time they are read. */
export function CurveChart({ picture, label, said, atS, onTime, onPick }: ChartProps) {
  const host = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  const latest = useRef({ onTime, onPick });
  latest.current = { onTime, onPick };
  const theme = useAppState((state) => `${state.settings.theme} ${state.systemDark}`);
  const { showC } = useUnits();
  // biome-ignore lint/correctness/useExhaustiveDependencies: `theme` is read out of the style sheet
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const made = new uPlot(optionsOf(picture, showC, element, latest), dataOf(picture, showC), element);
    plot.current = made;
    const watcher = new ResizeObserver(() => made.setSize({ width: element.clientWidth, height: HEIGHT }));
    watcher.observe(element);
    return () => {
      watcher.disconnect();
      made.destroy();
      plot.current = null;
    };
  }, [picture, showC, theme]);
  useEffect(() => {
    const made = plot.current;
    if (made) made.setCursor({ left: atS === null ? -10 : made.valToPos(atS, 'x'), top: -10 }, false);
  }, [atS]);
  const last = picture.seconds.at(-1) ?? 0;
  const byKey = (event: KeyboardEvent) => {
    const step = event.shiftKey ? 10 : 1;
    const from = atS ?? 0;
    const moved: Record<string, number> = {
      ...{ ArrowLeft: from - step, ArrowRight: from + step, PageUp: from + 30, PageDown: from - 30 },
      ...{ Home: 0, End: last },
    };
    if (event.key === 'Enter' && atS !== null) onPick(atS);
    else if (event.key in moved) onTime(Math.min(last, Math.max(0, moved[event.key])));
    else return;
    event.preventDefault();
  };
  return (
    <div
      ref={host}
      className="curve-chart"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={last}
      aria-valuenow={atS ?? 0}
      aria-valuetext={said}
      onKeyDown={byKey}
    />
  );
}

const dataOf = (picture: CurvePicture, showC: (celsius: number) => number): uPlot.AlignedData => [
  picture.seconds,
  ...picture.lines.map((line) => line.celsius.map((value) => (Number.isNaN(value) ? null : showC(value)))),
];

type Calls = { current: Pick<ChartProps, 'onTime' | 'onPick'> };

function optionsOf(
  picture: CurvePicture,
  showC: (celsius: number) => number,
  element: HTMLElement,
  calls: Calls,
): uPlot.Options {
  const style = getComputedStyle(element);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const inks = { ink: colour('--ink'), accent: colour('--accent'), soft: colour('--soft-ink') };
  const font = `12px ${colour('--mono')}`;
  const axis: uPlot.Axis = {
    ...{ stroke: inks.soft, font, gap: 4 },
    grid: { stroke: colour('--rule'), width: 1 },
    ticks: { stroke: colour('--control-edge'), width: 1, size: 4 },
  };
  const secondsOf = (chart: uPlot) =>
    chart.cursor.left! < 0 ? null : Math.round(chart.posToVal(chart.cursor.left!, 'x'));
  return {
    ...{ width: element.clientWidth || 300, height: HEIGHT, padding: [8, 8, 0, 0] },
    legend: { show: false },
    scales: { x: { time: false }, y: { range: (_, low, high) => [Math.min(0, low), heightOf(picture, high, showC)] } },
    axes: [
      { ...axis, size: 24, values: (_, ticks) => ticks.map((tick) => `${tick}`) },
      { ...axis, size: 38 },
    ],
    cursor: { y: false, points: { size: 6 }, drag: { x: false, y: false } },
    series: [
      {},
      ...picture.lines.map(({ name, style: { ink, width, dash } }) => ({
        ...{ label: name, stroke: inks[ink], width, dash: [...dash] },
        points: { show: false },
      })),
    ],
    hooks: {
      draw: [(chart) => drawMarks(chart, picture, showC, inks.ink, `12px ${colour('--sans')}`)],
      setCursor: [(chart) => chart.cursor.event && calls.current.onTime(secondsOf(chart))],
      ready: [
        (chart) =>
          chart.over.addEventListener('click', () => {
            const seconds = secondsOf(chart);
            if (seconds !== null) calls.current.onPick(seconds);
          }),
      ],
    },
  };
}

/** Room above the highest line and the highest limit. */
function heightOf(picture: CurvePicture, high: number, showC: (celsius: number) => number): number {
  return Math.max(high, ...picture.marks.map((mark) => showC(mark.celsius))) + showC(20) - showC(0);
}

/** Limits as lines across with their names over them; names that would touch give way to the higher one. */
function drawMarks(
  chart: uPlot,
  picture: CurvePicture,
  showC: (celsius: number) => number,
  ink: string,
  font: string,
): void {
  const { ctx, bbox } = chart;
  const ratio = uPlot.pxRatio;
  ctx.save();
  ctx.strokeStyle = ctx.fillStyle = ink;
  ctx.lineWidth = ratio;
  ctx.setLineDash([ratio, 3 * ratio]);
  ctx.font = font.replace('12px', `${12 * ratio}px`);
  ctx.textAlign = 'left';
  ctx.textBaseline = 'bottom';
  let above = Number.NEGATIVE_INFINITY;
  for (const mark of [...picture.marks].sort((a, b) => b.celsius - a.celsius)) {
    const y = Math.round(chart.valToPos(showC(mark.celsius), 'y', true)) + 0.5;
    ctx.beginPath();
    ctx.moveTo(bbox.left, y);
    ctx.lineTo(bbox.left + bbox.width, y);
    ctx.stroke();
    if (y - above < 13 * ratio) continue;
    above = y;
    ctx.fillText(`${mark.text} ${Math.round(showC(mark.celsius))}`, bbox.left + 4 * ratio, y - ratio);
  }
  ctx.restore();
}
