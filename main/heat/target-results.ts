import type { TargetResult } from '../../shared-types/evaluation.ts';
import { meltingRange } from '../../shared-types/library/alloys.ts';
import { targetSkinLimit } from '../../shared-types/library/limits.ts';
import type { HeatRun, Site } from '../../shared-types/plan.ts';
import { probeSeries, type TicketRun } from './heat-run.ts';
import type { BodyPeaks } from './part-peaks.ts';
import { firstAbove, peakOf, secondsAbove, valueAt } from './series.ts';

/**
 * Window of the coldest joint above liquidus, K: removal and installation of a lead-free array part, 225-230 and
 * 230-245 °C at a liquidus of 220 (common practice, no source); other alloys by the same distances.
 */
const WINDOW_K = { removal: [5, 10], installation: [10, 25] } as const;

function windowOf(kind: HeatRun['kind'], liquidusC: number): { from: number; to: number } | null {
  if (kind !== 'removal' && kind !== 'installation') return null;
  const [from, to] = WINDOW_K[kind];
  return { from: liquidusC + from, to: liquidusC + to };
}

/** The alloy of a site's joints in a run: what comes off, or what goes on. */
export function siteAlloy(site: Site, kind: HeatRun['kind']): string {
  return kind === 'installation' ? site.alloyOn : site.alloyOff;
}

/** What the board reads when the gas first starts at a site; a segment without a site is the first one's. */
function boardAtGas(
  { segments }: HeatRun,
  siteId: string,
  firstId: string,
  read: (atS: number) => number,
): { boardAtGasC?: number } {
  let fromS = 0;
  for (const segment of segments) {
    if (segment.gas && (segment.siteId ?? firstId) === siteId) return { boardAtGasC: read(fromS) };
    fromS += segment.seconds;
  }
  return {};
}

/**
 * What the targets of a finished run go through. `peaksOf` gives a part's peaks, null where it is not on the board.
 */
export function targetResults(run: TicketRun, peaksOf: (refdes: string) => BodyPeaks | null): TargetResult[] {
  const { run: heatRun, sites, parts } = run.presence;
  if (heatRun.kind !== 'removal' && heatRun.kind !== 'installation') return [];
  return sites.flatMap((site, index) => {
    const place = run.places.targets[index]!;
    const part = parts.find((candidate) => candidate.refdes === site.target);
    const peaks = peaksOf(site.target);
    if (!part || !peaks || place < 0) return [];
    const { solidusC, liquidusC } = meltingRange(siteAlloy(site, heatRun.kind), 'target');
    const startC = run.scene.roomC;
    const coldest = probeSeries(run, place, 'low');
    const hottest = probeSeries(run, place, 'high');
    const coldestJointC = peakOf(coldest, startC).celsius;
    const hottestJointC = peakOf(hottest, startC).celsius;
    return {
      siteId: site.id,
      refdes: site.target,
      coldestJointC,
      hottestJointC,
      skinMaxC: peaks.skin.maxC,
      skinLimitC: targetSkinLimit(part) ?? Number.POSITIVE_INFINITY,
      liquidusC,
      secondsAllAbove: secondsAbove(coldest, liquidusC, startC),
      secondsAnyAbove: secondsAbove(hottest, liquidusC, startC),
      moltenAtS: firstAbove(coldest, liquidusC, startC),
      ...boardAtGas(
        heatRun,
        site.id,
        sites[0]!.id,
        (atS) => (valueAt(coldest, atS, startC) + valueAt(hottest, atS, startC)) / 2,
      ),
      windowC: windowOf(heatRun.kind, liquidusC),
      verdict: coldestJointC >= liquidusC ? 'melts' : hottestJointC >= solidusC ? 'partly' : 'solid',
    };
  });
}
