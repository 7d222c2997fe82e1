import type { JudgedOn, PartExposure } from '../../shared-types/evaluation.ts';
import type { Measures } from '../../shared-types/words/measures.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';

/** '14 under its skin limit', or that none is known. */
export function marginWords(exposure: PartExposure, measures: Measures): string {
  if (exposure.limits[exposure.governedBy] === null) return words.noLimit;
  const judged = words.judged[exposure.governedBy];
  const difference = measures.difference(Math.abs(exposure.marginK));
  return exposure.marginK >= 0 ? words.under(difference, judged) : words.over(difference, judged);
}

/** Where most of the heat comes from. One way leads when it brings more than half. */
export function shareWords({ shares }: PartExposure): string {
  const ways = ['gas', 'preheater', 'joints'] as const;
  const most = ways.toSorted((a, b) => shares[b] - shares[a])[0];
  return words.heatFrom[shares[most] > 0.5 ? most : 'mixed'];
}

export const shareTip = ({ shares }: PartExposure): string =>
  words.shareWords(percent(shares.gas), percent(shares.preheater), percent(shares.joints));

const percent = (share: number): number => Math.round(share * 100);

/** How a body, skin or joint stands against its limit, for a bar. C. */
export type BarFigures = { judged: JudgedOn; peakC: number; limitC: number | null; shieldedC: number };

export function barsOf(exposure: PartExposure): BarFigures[] {
  const { limits, ifShielded } = exposure;
  return [
    { judged: 'body', peakC: exposure.body.maxC, limitC: limits.body?.celsius ?? null, shieldedC: ifShielded.bodyMaxC },
    { judged: 'skin', peakC: exposure.skin.maxC, limitC: limits.skin?.celsius ?? null, shieldedC: ifShielded.skinMaxC },
    {
      judged: 'joint',
      peakC: exposure.joint.maxC,
      limitC: limits.joint?.celsius ?? null,
      shieldedC: ifShielded.jointMaxC,
    },
  ];
}

/** One scale for the bars of a part, C: from cold to a little above the highest figure. */
export function barScale(bars: readonly BarFigures[]): { fromC: number; toC: number } {
  const highest = Math.max(...bars.flatMap((bar) => [bar.peakC, bar.limitC ?? 0]));
  return { fromC: 20, toC: Math.max(120, highest + 12) };
}
