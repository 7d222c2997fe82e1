import { produce } from 'immer';
import { type Board, bodyOf } from '../../shared-types/board.ts';
import { insidePolygon, rectangleCorners, type Side, type TurnedRectangle } from '../../shared-types/geometry.ts';
import type { Site, TicketDocument } from '../../shared-types/plan.ts';
import type { Segment } from '../../shared-types/profile.ts';
import { runsFor, siteOn, startingSegments } from '../../shared-types/rules/new-plan.ts';
import { nextId, nextNumber } from './ids.ts';
import { insertInOrder, renumber } from './order.ts';

/** The site that exchanges this part, if there is one. */
export function siteOfPart(document: TicketDocument, refdes: string): Site | undefined {
  return document.plan.sites.find((site) => site.target === refdes);
}

/** The part that an area drawn on a side is meant for: the largest whose centre lies in it, else the one under its centre. */
export function targetIn(board: Board, area: TurnedRectangle, side: Side): string | null {
  const corners = rectangleCorners(area);
  const onSide = board.parts.filter((part) => part.side === side && part.fitted);
  const within = onSide.filter((part) => insidePolygon(part, corners));
  const under = onSide.filter((part) => insidePolygon(area, rectangleCorners(bodyOf(part))));
  const candidates = within.length > 0 ? within : under;
  const size = (part: (typeof onSide)[number]) => part.package.lengthMm * part.package.widthMm;
  return candidates.toSorted((a, b) => size(b) - size(a))[0]?.refdes ?? null;
}

/**
 * Marks a site on a part: rework area on its body, a replace tag, and its stretches in the heat runs of that side.
 * Nothing changes when the part is unknown or has a site already.
 */
export function addSiteOn(document: TicketDocument, refdes: string): TicketDocument {
  const part = document.board.parts.find((one) => one.refdes === refdes);
  if (!part || siteOfPart(document, refdes)) return document;
  return insertSite(document, siteOn(part, nextId('site', document.plan.sites)));
}

/**
 * Marks a site by an area drawn on a side. `refdes`: the target; null: the part that the area is meant for.
 * Nothing changes when there is no such part; a part that has a site gets its area moved.
 */
export function addSiteAt(
  document: TicketDocument,
  area: TurnedRectangle,
  refdes: string | null,
  side: Side,
): TicketDocument {
  const target = refdes ?? targetIn(document.board, area, side);
  const part = document.board.parts.find((one) => one.refdes === target);
  if (!part) return document;
  const existing = siteOfPart(document, part.refdes);
  if (existing) return moveSiteArea(document, existing.id, area);
  return insertSite(document, { ...siteOn(part, nextId('site', document.plan.sites)), area: { ...area } });
}

function insertSite(document: TicketDocument, site: Site): TicketDocument {
  return produce(document, (draft) => {
    const { plan } = draft;
    plan.tags = plan.tags.filter(
      (tag) =>
        !((tag.kind === 'remove' || tag.kind === 'shield' || tag.kind === 'relocate') && tag.refdes === site.target),
    );
    const served = plan.heatRuns.filter((run) => run.side === site.side && run.kind !== 'cover-removal');
    if (served.length === 0) {
      const ids = plan.heatRuns.map((run) => run.id);
      plan.heatRuns.push(...runsFor([site.id], site.side, nextNumber('run', ids)));
    }
    for (const run of served) {
      run.siteIds.push(site.id);
      insertStretches(run.segments, gasStretches(run.kind, site));
    }
    plan.sites.push(site);
    insertInOrder(plan.tags, {
      id: nextId('tag', plan.tags),
      kind: 'replace',
      order: null,
      note: '',
      refdes: site.target,
      siteId: site.id,
      comesOff: '',
      goesOn: '',
    });
  });
}

/** Gas stretches of the starting profile, named after the site: one preheat serves several targets. */
function gasStretches(kind: 'removal' | 'site-preparation' | 'installation' | 'cover-removal', site: Site): Segment[] {
  return startingSegments(kind, site.id)
    .filter((segment) => segment.gas)
    .map((segment) => ({ ...segment, name: `${segment.name} ${site.name}`.slice(0, 100) }));
}

/** Behind the last stretch with gas, or before the last (cooling) one. */
function insertStretches(segments: Segment[], added: readonly Segment[]): void {
  const lastGas = segments.findLastIndex((segment) => segment.gas);
  segments.splice(lastGas >= 0 ? lastGas + 1 : Math.max(0, segments.length - 1), 0, ...added);
}

/** Moves, sizes or turns the rework area of a site. */
export function moveSiteArea(document: TicketDocument, siteId: string, area: TurnedRectangle): TicketDocument {
  return setSiteFields(document, siteId, { area: { ...area } });
}

export function setSiteFields(
  document: TicketDocument,
  siteId: string,
  fields: Partial<Pick<Site, 'name' | 'area' | 'alloyOff' | 'alloyOn' | 'exchangedBefore' | 'incoming' | 'fence'>>,
): TicketDocument {
  return produce(document, (draft) => {
    const site = draft.plan.sites.find((one) => one.id === siteId);
    if (site) Object.assign(site, fields);
  });
}

/** Removes a site, its tags, its stretches in the heat runs, and runs that are left without a site. */
export function removeSite(document: TicketDocument, siteId: string): TicketDocument {
  if (!document.plan.sites.some((site) => site.id === siteId)) return document;
  return produce(document, (draft) => {
    const { plan } = draft;
    plan.sites = plan.sites.filter((site) => site.id !== siteId);
    plan.exchanges = plan.exchanges.filter((exchange) => exchange.siteId !== siteId);
    plan.tags = plan.tags.filter((tag) => !(tag.kind === 'replace' && tag.siteId === siteId));
    renumber(plan.tags);
    const served = new Set(plan.heatRuns.filter((run) => run.siteIds.includes(siteId)).map((run) => run.id));
    for (const run of plan.heatRuns) {
      run.siteIds = run.siteIds.filter((id) => id !== siteId);
      const kept = run.segments.filter((segment) => segment.siteId !== siteId);
      if (kept.length > 0) run.segments = kept;
      else for (const segment of run.segments) segment.siteId = null;
    }
    plan.heatRuns = plan.heatRuns.filter(
      (run) => !served.has(run.id) || run.siteIds.length > 0 || run.kind === 'cover-removal',
    );
  });
}
