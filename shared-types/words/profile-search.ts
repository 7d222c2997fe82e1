import type { MissCode, SearchAnswer, SearchKey, SearchPoint } from '../profile-search.ts';
import type { Measures } from './measures.ts';

const BOUND: Record<SearchKey, string> = {
  belowC: 'preheater',
  leadS: 'preheat and soak',
  gasC: 'gas',
  gasS: 'seconds of gas',
};

type Miss = SearchPoint['misses'][number];

const MISS: Record<MissCode, (miss: Miss, m: Measures) => string> = {
  cold: ({ refdes, by }, m) => `the coldest joint of ${refdes} stays ${m.difference(by)} below its window`,
  hot: ({ refdes, by }, m) =>
    `the coldest joint of ${refdes} is ${m.difference(by)} above its window once it is molten long enough`,
  short: ({ refdes, by }, m) => `${refdes} is above liquidus ${m.seconds(Math.ceil(by))} too short`,
  long: ({ refdes, by }, m) => `${refdes} is above liquidus ${m.seconds(Math.ceil(by))} too long`,
  skin: ({ refdes, by }, m) => `the package of ${refdes} gets ${m.difference(by)} too hot`,
  rise: ({ refdes, by }, m) => `${refdes} rises ${m.rate(by)} too fast`,
  late: ({ by }, m) => `the gas ends ${m.seconds(Math.ceil(by))} too late`,
};

/** J-STD-020 Table 5-2: ramp up to the peak. */
const STANDARD_RISE_K_PER_S = 3;

/** Words of the search for a better profile, for window and command line. */
export const searchWords = {
  noShape: 'has no preheat with gas after it: there is no profile to search',
  addGas: 'Choose a removal or installation run with gas.',
  notCalibrated:
    'This station is not calibrated: the search goes by the assumptions of the model, and its margins by no band. Take what it finds as a direction, not as figures.',
  banded: 'Margins are counted after the bands of the calibrated station.',
  coarse: 'coarse map only',
  fine: 'fine map',
  bound: (key: SearchKey) => BOUND[key],
  miss: (miss: Miss, m: Measures): string => MISS[miss.code](miss, m),
  profile: ({ belowC, leadS, gasC, gasS }: SearchPoint, m: Measures): string =>
    `preheater ${m.degrees(belowC)}, ${m.seconds(leadS)} before the gas, gas ${m.temperature(gasC)} for ${gasS.map((one) => m.seconds(one)).join(' + ')}`,
  margin: ({ marginK, worst }: SearchPoint, m: Measures): string => {
    if (marginK === null || !worst) return 'no neighbour has a known limit';
    const what = `${worst.refdes}, ${worst.judgedOn} ${m.degrees(worst.peakC)} of ${m.temperature(worst.limitC)}`;
    return marginK >= 0 ? `${m.difference(marginK)} to spare (${what})` : `${m.difference(marginK)} over (${what})`;
  },
  none: 'No profile in these bounds does its work. The nearest:',
  atBounds: (keys: readonly SearchKey[]): string =>
    `It lies at the end of the bounds of ${keys.map((key) => BOUND[key]).join(', ')}: wider ones may bring more.`,
  notFine:
    'The coarse map has profiles that do their work, the fine map confirms none of the best: widen the bounds a little.',
  leftOut: (refdes: readonly string[]): string =>
    `Not judged, because they come off before any heat: ${refdes.slice(0, 8).join(', ')}${refdes.length > 8 ? ` and ${refdes.length - 8} more` : ''}.`,
  riseLimit: (limitKPerS: number, m: Measures): string =>
    limitKPerS <= STANDARD_RISE_K_PER_S
      ? `Packages may rise by ${m.rate(limitKPerS)} (J-STD-020 Table 5-2).`
      : `Packages may rise by ${m.rate(limitKPerS)}, as they do in the present profile; J-STD-020 says ${m.rate(STANDARD_RISE_K_PER_S)}.`,
  boundsForm: (name: string) => `--${name} takes two figures, as in --${name} 280-340.`,
};

/** The answer as lines of text. */
export function searchLines(answer: SearchAnswer, m: Measures): string[] {
  const { present, best, nearest, front, banded, leftOut, riseLimitKPerS, tried } = answer;
  const line = (point: SearchPoint) =>
    `${m.seconds(point.toPeakS)} to the end of the gas: ${searchWords.profile(point, m)}; ${searchWords.margin(point, m)}`;
  return [
    banded ? searchWords.banded : searchWords.notCalibrated,
    `Present: ${line(present)}`,
    ...present.misses.map((miss) => `  ${searchWords.miss(miss, m)}`),
    ...(best ? [`Best (${searchWords.fine}): ${line(best)}`] : []),
    ...(best && best.atBounds.length > 0 ? [`  ${searchWords.atBounds(best.atBounds)}`] : []),
    ...(nearest
      ? [searchWords.none, `  ${line(nearest)}`, ...nearest.misses.map((miss) => `  ${searchWords.miss(miss, m)}`)]
      : []),
    ...(nearest && nearest.atBounds.length > 0 ? [`  ${searchWords.atBounds(nearest.atBounds)}`] : []),
    ...(!best && !nearest ? [searchWords.notFine] : []),
    ...(front.length > 0 ? [`Time against margin (${searchWords.coarse}):`] : []),
    ...front.map((point) => `  ${line(point)}`),
    searchWords.riseLimit(riseLimitKPerS, m),
    ...(leftOut.length > 0 ? [searchWords.leftOut(leftOut)] : []),
    `${tried} runs of the model.`,
  ];
}
