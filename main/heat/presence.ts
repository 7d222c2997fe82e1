import type { Board, Cover, Part } from '../../shared-types/board.ts';
import { gapBetween, rectangleCorners } from '../../shared-types/geometry.ts';
import type { HeatRun, Plan, Site } from '../../shared-types/plan.ts';

/** What lies on the board during one heat run. */
export type Presence = {
  run: HeatRun;
  parts: Part[];
  covers: Cover[];
  /** Sites whose target is exchanged in this run. */
  sites: Site[];
};

/** Refdes (or ids of covers) that come off before any heat. */
function removedFirst(plan: Plan): Set<string> {
  return new Set(plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag.refdes] : [])));
}

function coversOver(board: Board, sites: readonly Site[]): Cover[] {
  return board.covers.filter((cover) => {
    const corners = rectangleCorners({ ...cover, turnDeg: cover.turn });
    return sites.some((site) => site.side === cover.side && gapBetween(corners, rectangleCorners(site.area)) === 0);
  });
}

/**
 * What is on the board in each heat run, in the plan's order. Parts tagged 'remove' are off throughout. A site's
 * target is on until its removal run is over, bare until its installation run begins, and on again from then on.
 * Covers over a site are off once its cover-removal run is over.
 */
export function presences(board: Board, plan: Plan): Presence[] {
  const removed = removedFirst(plan);
  const siteById = new Map(plan.sites.map((site) => [site.id, site]));
  const lifted = new Set<string>();
  const coversOff = new Set<string>();
  return plan.heatRuns.map((run) => {
    const sites = run.siteIds.flatMap((id) => siteById.get(id) ?? []);
    const targets = sites.map((site) => site.target);
    if (run.kind === 'site-preparation') for (const target of targets) lifted.add(target);
    if (run.kind === 'installation') for (const target of targets) lifted.delete(target);
    const presence: Presence = {
      run,
      parts: board.parts.filter((part) => part.fitted && !removed.has(part.refdes) && !lifted.has(part.refdes)),
      covers: board.covers.filter((cover) => !removed.has(cover.id) && !coversOff.has(cover.id)),
      sites,
    };
    if (run.kind === 'removal') for (const target of targets) lifted.add(target);
    if (run.kind === 'cover-removal') for (const cover of coversOver(board, sites)) coversOff.add(cover.id);
    return presence;
  });
}

/** Fitted parts that are off before any heat, because of their tag. */
export function isRemovedFirst(plan: Plan, refdes: string): boolean {
  return plan.tags.some((tag) => tag.kind === 'remove' && tag.refdes === refdes);
}
