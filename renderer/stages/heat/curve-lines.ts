import type { Assessment, CurveSet, JudgedOn } from '../../../shared-types/evaluation.ts';
import type { HeatRun } from '../../../shared-types/plan.ts';
import { playbackWords } from '../../../shared-types/words/window/playback.ts';

const words = playbackWords.curves;

/** How a line is drawn: which ink, how thick, broken or not. */
export type CurveStyle = { ink: 'ink' | 'accent' | 'soft'; width: number; dash: readonly number[] };

export type CurveLine = {
  key: string;
  name: string;
  /** A value a step, C; NaN where there is none. */
  celsius: readonly number[];
  style: CurveStyle;
  /** Limit it is judged by, C. */
  limitC: number | null;
};

/** A line across the chart: a limit or a liquidus, C. */
export type CurveMark = { celsius: number; text: string };

export type CurvePicture = { seconds: number[]; lines: CurveLine[]; marks: CurveMark[] };

/** Parts are told apart by ink and dash, so that they stay apart in grey and for every kind of colour vision. */
const PART_STYLES: readonly Pick<CurveStyle, 'ink' | 'dash'>[] = [
  { ink: 'ink', dash: [] },
  { ink: 'accent', dash: [] },
  { ink: 'ink', dash: [7, 3] },
  { ink: 'accent', dash: [7, 3] },
];
export const MOST_PARTS = PART_STYLES.length;

const POINT: CurveStyle = { ink: 'soft', width: 1.25, dash: [2, 3] };
const PROFILE: CurveStyle = { ink: 'soft', width: 1, dash: [10, 4] };

export type CurveChoice = { measure: JudgedOn; points: boolean; profile: boolean };

/** Everything that the chart of one heat run shows. */
export function curvePicture(
  curves: CurveSet,
  run: HeatRun,
  { evaluation }: Pick<Assessment, 'evaluation'>,
  choice: CurveChoice,
): CurvePicture {
  const seconds = Array.from(curves.preheater, (_, index) => index * curves.stepS);
  const targets = evaluation.runs.find((one) => one.runId === run.id)?.targets ?? [];
  const marks = new Map<number, string[]>();
  const mark = (celsius: number, name: string) => marks.set(celsius, [...(marks.get(celsius) ?? []), name]);
  const lines: CurveLine[] = [];
  for (const [index, part] of curves.parts.slice(0, MOST_PARTS).entries()) {
    const style = { ...PART_STYLES[index], width: 1.75 };
    const exposure = evaluation.parts.find((one) => one.refdes === part.refdes);
    const limitC = exposure?.limits[choice.measure]?.celsius ?? null;
    const line = (key: string, name: string, values: Float32Array, width = style.width): CurveLine => ({
      ...{ key: `${part.refdes} ${key}`, name, limitC },
      celsius: Array.from(values),
      style: { ...style, width },
    });
    if (limitC !== null) mark(limitC, part.refdes);
    if (choice.measure === 'joint') {
      lines.push(line('max', words.hottest(part.refdes), part.jointMax));
      lines.push(line('min', words.coldest(part.refdes), part.jointMin, 1));
    } else lines.push(line(choice.measure, part.refdes, part[choice.measure]));
  }
  if (choice.points)
    for (const { tagId, name, celsius } of curves.points)
      lines.push({ key: tagId, name, celsius: Array.from(celsius), style: POINT, limitC: null });
  if (choice.profile) lines.push(...profileCurves(curves, run, seconds));
  const limits = [...marks].map(([celsius, names]) => ({ celsius, text: words.limitOf(names.join(', ')) }));
  const liquidus = choice.measure === 'joint' ? targets.filter((one) => hasPart(curves, one.refdes)) : [];
  const melting = liquidus.map((one) => ({ celsius: one.liquidusC, text: words.liquidus }));
  return { seconds, lines, marks: [...limits, ...melting.filter(firstAtItsHeight)] };
}

const hasPart = (curves: CurveSet, refdes: string) => curves.parts.some((part) => part.refdes === refdes);
const firstAtItsHeight = (one: CurveMark, index: number, all: readonly CurveMark[]) =>
  all.findIndex((other) => other.celsius === one.celsius) === index;

/** The gas as set, the source as it really follows, the board at the site. */
function profileCurves(curves: CurveSet, run: HeatRun, seconds: readonly number[]): CurveLine[] {
  const line = (key: string, name: string, celsius: readonly number[]): CurveLine => ({
    ...{ key, name, celsius, limitC: null },
    style: PROFILE,
  });
  const gas = seconds.map((at) => gasAt(run, at));
  return [
    ...(gas.some((value) => !Number.isNaN(value)) ? [line('gas', words.gas, gas)] : []),
    line('source', words.source, Array.from(curves.preheater)),
    ...(curves.site ? [line('site', words.site, Array.from(curves.site))] : []),
  ];
}

/** Gas figure of the profile at a time, C; NaN while it is off. */
export function gasAt(run: HeatRun, seconds: number): number {
  let fromS = 0;
  for (const { gas, seconds: lasts } of run.segments) {
    const share = (seconds - fromS) / lasts;
    if (share >= 0 && share <= 1 && gas) return gas.startC + share * (gas.endC - gas.startC);
    fromS += lasts;
  }
  return Number.NaN;
}

/** Value of a line at a time, C; NaN where it has none. */
export const lineAt = (line: CurveLine, seconds: number, stepS: number): number =>
  line.celsius[Math.round(seconds / stepS)] ?? Number.NaN;

/** Highest value of a line, C. */
export const lineHigh = (line: CurveLine): number => Math.max(...line.celsius.filter((value) => !Number.isNaN(value)));
