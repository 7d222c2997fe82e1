import type { HeatRun } from '../../../shared-types/plan.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { useWidth } from '../../widgets/use-width.ts';
import { type ChartPoint, chartScale, profileLines } from './profile-lines.ts';

const HEIGHT = 132;
const LEFT = 30;
const RIGHT = 44;
const TOP = 10;
const FOOT = 18;

/** The run as a picture: gas, preheater, and the board at the site as far as it is worked out. */
export function ProfileChart({ run }: { run: HeatRun }) {
  const { roomC } = useDocument().plan.station;
  const result = useAppState((state) =>
    state.evaluation.assessment?.evaluation.runs.find((one) => one.runId === run.id),
  );
  const { showC, readC } = useUnits();
  const lines = profileLines(run, result, roomC);
  const scale = chartScale(showC(lines.highestC + 20));
  const [foot, top] = [readC(0), readC(scale.top)];
  const [frame, width] = useWidth(320);
  const x = (s: number) => LEFT + (s / lines.seconds) * (width - LEFT - RIGHT);
  const y = (c: number) => TOP + (1 - (c - foot) / (top - foot)) * (HEIGHT - TOP - FOOT);
  const path = (points: readonly ChartPoint[]) =>
    `M${points.map((p) => `${x(p.s).toFixed(1)} ${y(p.c).toFixed(1)}`).join('L')}`;
  const ticks = scale.ticks.map((shown) => ({ shown, c: readC(shown) }));
  const gas = lines.gas.at(-1)?.at(-1);
  const site = lines.site.at(-1);
  const plateau = lines.below.reduce((high, point) => (point.c > high.c ? point : high));
  return (
    <svg
      ref={frame}
      className="chart"
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={words.chart(run.name)}
    >
      {ticks.map(({ shown, c }) => (
        <g key={shown}>
          <line className={shown === 0 ? 'axis' : 'grid'} x1={LEFT} x2={width - RIGHT} y1={y(c)} y2={y(c)} />
          <text className="figure" x={LEFT - 5} y={y(c) + 4} textAnchor="end">
            {shown}
          </text>
        </g>
      ))}
      {lines.ends.map((s, index) => (
        <g key={s}>
          <line className="grid" x1={x(s)} x2={x(s)} y1={y(foot)} y2={y(foot) + 4} />
          {shownEnd(lines.ends, index, lines.seconds) && (
            <text className="figure" x={x(s)} y={HEIGHT - 2} textAnchor="middle">
              {Math.round(s)}
            </text>
          )}
        </g>
      ))}
      <path className="below" d={path(lines.below)} />
      {lines.gas.map((piece) => (
        <path key={piece[0].s} className="gas" d={path(piece)} />
      ))}
      {lines.site.length > 0 && <path className="site-line" d={path(lines.site)} />}
      {lines.site.slice(1).map((point) => (
        <circle key={point.s} className="site" cx={x(point.s)} cy={y(point.c)} r="2.500" />
      ))}
      {gas && (
        <text className="name" x={x(gas.s) + 4} y={y(gas.c) + 4}>
          {words.chartGas}
        </text>
      )}
      <text x={x(plateau.s) + 5} y={y(plateau.c) + 14}>
        {words.chartBelow}
      </text>
      {site && (
        <text className="site-name" x={x(site.s) + 5} y={y(site.c) + 4}>
          {words.chartSite}
        </text>
      )}
    </svg>
  );
}

/** Ends whose figures would lie on each other are left out; the last one always stands. */
function shownEnd(ends: readonly number[], index: number, seconds: number): boolean {
  if (index === ends.length - 1) return true;
  const apart = seconds * 0.11;
  const before = ends.slice(0, index).findLast((_, other) => shownEnd(ends, other, seconds)) ?? -Infinity;
  return ends[index] - before > apart && seconds - ends[index] > apart;
}
