import type { Cover } from '../../../shared-types/board.ts';
import type { Finding, PartAction } from '../../../shared-types/evaluation.ts';
import { gapBetween, insidePolygon, rectangleCorners } from '../../../shared-types/geometry.ts';
import type { Site } from '../../../shared-types/plan.ts';
import { type PlanningContext, tagOn } from '../context.ts';
import { commonPractice } from '../published.ts';
import { finding, grouped, onSite } from './make.ts';

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

const isOff = (context: PlanningContext, cover: Cover): boolean => tagOn(context, cover.id, 'remove') !== undefined;
const hasRun = (context: PlanningContext, site: Site): boolean =>
  context.plan.heatRuns.some((run) => run.kind === 'cover-removal' && run.siteIds.includes(site.id));

/** A can or frame stands over the target: it comes off first, a soldered one in a heat run of its own. */
export function coverFindings(context: PlanningContext, actions: readonly PartAction[]): Finding[] {
  const overTargets = context.plan.sites.flatMap((site) =>
    context.board.covers
      .filter((cover) => cover.kind !== 'stiffener' && cover.side === site.side && gapTo(cover, site) === 0)
      .flatMap((cover): Finding[] => {
        const soldered = cover.fixing === 'soldered';
        if (isOff(context, cover) || hasRun(context, site)) return [];
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
  return [...overTargets, ...underCovers(context, actions)];
}

const NEEDS_REACH: ReadonlySet<PartAction['action']> = new Set(['remove-first', 'shield', 'secure']);

/** Parts that should come off or be shielded, but stand under a can that stays on: nobody gets at them. */
function underCovers(context: PlanningContext, actions: readonly PartAction[]): Finding[] {
  const cans = context.board.covers.filter((cover) => cover.kind === 'can' && !isOff(context, cover));
  const lifted = (can: Cover) =>
    context.plan.sites.some((site) => site.side === can.side && gapTo(can, site) === 0 && hasRun(context, site));
  return cans
    .filter((can) => !lifted(can))
    .flatMap((can) => {
      const corners = coverCorners(can);
      const under = actions.filter((action) => {
        const part = NEEDS_REACH.has(action.action) ? context.parts.get(action.refdes) : undefined;
        return part !== undefined && part.side === can.side && insidePolygon(part, corners);
      });
      const source = commonPractice('what stands under a can is reached when the can is off');
      const figures = () => ({ cover: can.id, soldered: can.fixing === 'soldered' ? 1 : 0 });
      return grouped('parts-under-can', 'warn', under, () => 0, figures, source);
    });
}
