import type { Chart, Series } from './record.ts';

const WIDTH = 400;
const HEIGHT = 230;
const LEFT = 52;
const BOTTOM = 40;
const TOP = 22;
const RIGHT = 14;

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Round numbers that divide a range into four to seven parts; on a logarithmic axis decades, or 1, 2 and 5 of each. */
function ticks(low: number, high: number, log: boolean): number[] {
  if (log) {
    const each = (steps: number[]) =>
      Array.from({ length: 40 }, (_, i) => 10 ** (i - 20))
        .flatMap((decade) => steps.map((step) => step * decade))
        .filter((v) => v >= low && v <= high);
    const decades = each([1]);
    return decades.length >= 3 ? decades : each([1, 2, 5]);
  }
  const rough = (high - low) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough)!;
  const first = Math.ceil(low / step - 1e-9) * step;
  return Array.from({ length: 12 }, (_, i) => Number((first + i * step).toPrecision(12))).filter(
    (v) => v <= high + step * 1e-6,
  );
}

function range(values: number[], log: boolean): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (log) return [low / 1.25, high * 1.25];
  const spare = (high - low || 1) * 0.06;
  return [low >= 0 && low < (high - low) * 0.4 ? 0 : low - spare, high + spare];
}

const label = (value: number): string =>
  value !== 0 && (Math.abs(value) < 0.01 || Math.abs(value) >= 1e5)
    ? value.toExponential(0)
    : String(Number(value.toPrecision(4)));

/** One drawing: lines are exact curves, dots what the program gave; the inks come from the page's style sheet. */
export function chartSvg(chart: Chart): string {
  const log = chart.log ?? false;
  const all = chart.series.flatMap((one) => one.points);
  const [x0, x1] = range(
    all.map(([x]) => x),
    log,
  );
  const [y0, y1] = range(
    all.map(([, y]) => y),
    log,
  );
  const share = (value: number, low: number, high: number) =>
    log ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
  const px = (x: number) => (LEFT + share(x, x0, x1) * (WIDTH - LEFT - RIGHT)).toFixed(1);
  const py = (y: number) => (HEIGHT - BOTTOM - share(y, y0, y1) * (HEIGHT - BOTTOM - TOP)).toFixed(1);
  const grid = [
    ...ticks(y0, y1, log).map((y) => {
      return `<path class="grid" d="M${LEFT} ${py(y)}H${WIDTH - RIGHT}"/><text x="${LEFT - 6}" y="${Number(py(y)) + 4}" text-anchor="end">${label(y)}</text>`;
    }),
    ...ticks(x0, x1, log).map((x) => {
      return `<path class="grid" d="M${px(x)} ${TOP}V${HEIGHT - BOTTOM}"/><text x="${px(x)}" y="${HEIGHT - BOTTOM + 15}" text-anchor="middle">${label(x)}</text>`;
    }),
  ];
  const drawn = (one: Series, index: number) =>
    one.style === 'line'
      ? `<path class="line n${index}" d="M${one.points.map(([x, y]) => `${px(x)} ${py(y)}`).join('L')}"/>`
      : one.points.map(([x, y]) => `<circle class="dot n${index}" cx="${px(x)}" cy="${py(y)}" r="3.4"/>`).join('');
  const key = chart.series.map((one, index) => {
    const mark =
      one.style === 'line'
        ? `<svg width="22" height="10"><path class="line n${index}" d="M1 5H21"/></svg>`
        : `<svg width="22" height="10"><circle class="dot n${index}" cx="11" cy="5" r="3.4"/></svg>`;
    return `<span>${mark} ${escaped(one.name)}</span>`;
  });
  return `<figure><figcaption>${escaped(chart.title)}</figcaption>
<svg class="chart" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escaped(chart.title)}">
${grid.join('\n')}
<path class="axis" d="M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}"/>
${chart.series.map(drawn).join('\n')}
<text class="name" x="${WIDTH - RIGHT}" y="${HEIGHT - 6}" text-anchor="end">${escaped(chart.x)}</text>
<text class="name" x="4" y="11">${escaped(chart.y)}</text>
</svg><p class="key">${key.join('')}</p></figure>`;
}
