import { Radio, RadioGroup } from 'react-aria-components';
import type { SearchPoint } from '../../../../shared-types/profile-search.ts';
import { searchWords } from '../../../../shared-types/words/profile-search.ts';
import { searchSectionWords as words } from '../../../../shared-types/words/window/search.ts';
import { useUnits } from '../../../state/use-units.ts';
import { useWidth } from '../../../widgets/use-width.ts';
import { spanOf, ticksIn } from './front-scale.ts';

const HEIGHT = 176;
const LEFT = 40;
const RIGHT = 12;
const TOP = 22;
const FOOT = 34;

type FrontProps = {
  present: SearchPoint;
  /** Quickest first. */
  points: readonly SearchPoint[];
  best: SearchPoint | null;
  picked: SearchPoint;
  onPick: (point: SearchPoint) => void;
};

/** Margin over time: a point for each profile that no other beats in both. They are picked by pointer or arrow keys. */
export function FrontChart({ present, points, best, picked, onPick }: FrontProps) {
  const { measures: m, temperatureSign } = useUnits();
  const perK = temperatureSign === '°F' ? 1.8 : 1;
  const [frame, width] = useWidth(320);
  const shown = (point: SearchPoint) => (point.marginK ?? 0) * perK;
  const all = [present, ...points];
  const xs = spanOf(all.map(({ toPeakS }) => toPeakS));
  const ys = spanOf([0, ...all.map(shown)]);
  const x = (seconds: number) => LEFT + ((seconds - xs.from) / (xs.to - xs.from)) * (width - LEFT - RIGHT);
  const y = (value: number) => TOP + (1 - (value - ys.from) / (ys.to - ys.from)) * (HEIGHT - TOP - FOOT);
  return (
    <div className="front-chart">
      <svg ref={frame} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} aria-hidden="true">
        {ticksIn(ys).map((tick) => (
          <g key={tick}>
            <line className={tick === 0 ? 'axis' : 'grid'} x1={LEFT} x2={width - RIGHT} y1={y(tick)} y2={y(tick)} />
            <text className="figure" x={LEFT - 5} y={y(tick) + 4} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        {ticksIn(xs).map((tick) => (
          <text key={tick} className="figure" x={x(tick)} y={HEIGHT - FOOT + 16} textAnchor="middle">
            {tick}
          </text>
        ))}
        <text x={width - RIGHT} y={HEIGHT - 2} textAnchor="end">
          {words.axisTime}
        </text>
        <text x={0} y={12}>
          {words.axisMargin(temperatureSign)}
        </text>
        <path
          className="front-line"
          d={`M${points.map((point) => `${x(point.toPeakS).toFixed(1)} ${y(shown(point)).toFixed(1)}`).join('L')}`}
        />
        <Present x={x(present.toPeakS)} y={y(shown(present))} />
      </svg>
      <RadioGroup
        className="front-points"
        orientation="horizontal"
        aria-label={words.chart}
        value={String(points.indexOf(picked))}
        onChange={(index) => onPick(points[Number(index)]!)}
      >
        {points.map((point, index) => (
          <Radio
            key={`${point.toPeakS} ${point.grid}`}
            value={String(index)}
            className={`front-point${point === best ? ' best' : ''}`}
            style={{ left: x(point.toPeakS), top: y(shown(point)) }}
            aria-label={words.point(
              m.seconds(point.toPeakS),
              searchWords.margin(point, m),
              point.grid === 'fine' ? searchWords.fine : searchWords.coarse,
            )}
          >
            <span className="dot" />
          </Radio>
        ))}
      </RadioGroup>
    </div>
  );
}

/** The profile as it is, a cross: it is not among those to pick. */
function Present({ x, y }: { x: number; y: number }) {
  return (
    <g className="present">
      <path d={`M${x - 5} ${y - 5}L${x + 5} ${y + 5}M${x - 5} ${y + 5}L${x + 5} ${y - 5}`} />
      <text x={x} y={y - 9} textAnchor="middle">
        {words.present}
      </text>
    </g>
  );
}
