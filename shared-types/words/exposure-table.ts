import type { PartExposure, TargetResult } from '../evaluation.ts';
import { BANDS_NOT_COMPUTED } from './heat.ts';
import { bandWords } from './uncertainty.ts';

const whole = (celsius: number): string => celsius.toFixed(0);
const band = (kelvin: number | undefined): string =>
  kelvin === undefined ? '' : ` ${bandWords.plusMinus(whole(kelvin))}`;
const VERDICTS = { melts: 'melts', partly: 'melts only in part', solid: 'stays solid' } as const;

/** One line about a target in one heat run. */
export function targetLine(target: TargetResult, runName: string): string {
  const window = target.windowC ? `, window ${whole(target.windowC.from)}-${whole(target.windowC.to)} °C` : '';
  return (
    `${runName}: ${target.refdes} ${VERDICTS[target.verdict]}; coldest joint ${whole(target.coldestJointC)}${band(target.bands?.coldestK)}, hottest ${whole(target.hottestJointC)} °C` +
    `${window}, ${whole(target.secondsAllAbove)} s above liquidus, skin ${whole(target.skinMaxC)} of ${whole(target.skinLimitC)} °C`
  );
}

const cells = (words: readonly string[]): string =>
  words.map((word, index) => (index === 0 ? word.padEnd(8) : word.padStart(9))).join(' ');

/** Head of the table of exposures. */
export const exposureHead = (): string =>
  `${cells(['part', 'side', 'gap mm', 'body °C', 'skin °C', 'joint °C', 'margin K', 'band K', 'judged on', 'state'])}`;

/** One part of the table of exposures. */
export function exposureRow(part: PartExposure): string {
  const peaks = [part.body, part.skin, part.joint].map((peak) => whole(peak.maxC));
  const reflow = part.reflow === 'none' ? '' : part.reflow === 'whole' ? '  will reflow' : '  reflows in part';
  return `${cells([part.refdes, part.side, part.clearanceMm.toFixed(1), ...peaks, whole(part.marginK), part.bandK === null ? BANDS_NOT_COMPUTED : whole(part.bandK), part.governedBy, part.state])}${reflow}`;
}
