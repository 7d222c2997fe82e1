import type { Cover } from '../../../shared-types/board.ts';
import type { Finding } from '../../../shared-types/evaluation.ts';
import { gapBetween, rectangleCorners } from '../../../shared-types/geometry.ts';
import type { Site } from '../../../shared-types/plan.ts';
import { type PlanningContext, tagOn } from '../context.ts';
import { commonPractice } from '../published.ts';
import { finding, onSite } from './make.ts';

const NEAR_MM = 10;

const coverCorners = (cover: Cover) =>
  rectangleCorners({
    x: cover.x,
    y: cover.y,
    lengthMm: cover.lengthMm,
    widthMm: cover.widthMm,
    turnDeg: cover.turn,
  });
const gapTo = (cover: Cover, site: Site): number => gapBetween(coverCorners(cover), rectangleCorners(site.area));

/** A stiffener that stays on at or near the site, either side: it takes heat from it. */
export const stiffenerNear = (context: PlanningContext, site: Site): Cover | undefined =>
  context.board.covers.find(
    (cover) => cover.kind === 'stiffener' && gapTo(cover, site) <= NEAR_MM && !tagOn(context, cover.id, 'remove'),
  );

/** A can or frame stands over the target: it comes off first, a soldered one in a heat run of its own. */
export function coverFindings(context: PlanningContext): Finding[] {
  const hasRun = (site: Site) =>
    context.plan.heatRuns.some((run) => run.kind === 'cover-removal' && run.siteIds.includes(site.id));
  const isOff = (cover: Cover) => tagOn(context, cover.id, 'remove') !== undefined;
  return context.plan.sites.flatMap((site) =>
    context.board.covers
      .filter((cover) => cover.kind !== 'stiffener' && cover.side === site.side && gapTo(cover, site) === 0)
      .flatMap((cover): Finding[] => {
        const soldered = cover.fixing === 'soldered';
        if (isOff(cover) || hasRun(site)) return [];
        const figures = { refdes: site.target, cover: cover.id, kind: cover.kind };
        const source = commonPractice('a soldered frame or can comes off in a heat run of its own');
        return [
          finding(
            soldered ? 'soldered-can-over-target' : 'can-over-target',
            soldered ? 'stop' : 'warn',
            onSite(site.id),
            figures,
            source,
          ),
        ];
      }),
  );
}
