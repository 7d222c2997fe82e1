import { produce } from 'immer';
import type { HeatRun, TicketDocument } from '../../shared-types/plan.ts';
import type { Segment } from '../../shared-types/profile.ts';
import { segmentsForSites, siteStretches } from '../../shared-types/rules/new-plan.ts';
import { nextId } from './ids.ts';

export const runById = (document: TicketDocument, runId: string): HeatRun | undefined =>
  document.plan.heatRuns.find((run) => run.id === runId);

/** Adds a heat run for the sites of one side with the starting profile of its kind. */
export function addRun(
  document: TicketDocument,
  kind: HeatRun['kind'],
  side: HeatRun['side'],
  name: string,
): TicketDocument {
  const siteIds = document.plan.sites.filter((site) => site.side === side).map((site) => site.id);
  return produce(document, (draft) => {
    const { heatRuns } = draft.plan;
    const segments = segmentsForSites(kind, siteIds, document.plan.sites);
    heatRuns.push({ id: nextId('run', heatRuns), name, kind, side, siteIds, segments });
  });
}

/** A copy of a heat run, right behind it. */
export function duplicateRun(document: TicketDocument, runId: string, name: string): TicketDocument {
  return produce(document, (draft) => {
    const { heatRuns } = draft.plan;
    const index = heatRuns.findIndex((run) => run.id === runId);
    if (index < 0) return;
    const copy: HeatRun = structuredClone(runById(document, runId)!);
    heatRuns.splice(index + 1, 0, { ...copy, id: nextId('run', heatRuns), name });
  });
}

export function removeRun(document: TicketDocument, runId: string): TicketDocument {
  if (!runById(document, runId)) return document;
  return produce(document, (draft) => {
    draft.plan.heatRuns = draft.plan.heatRuns.filter((run) => run.id !== runId);
  });
}

/** Moves a heat run to a place in the order of runs, from 0. */
export function moveRun(document: TicketDocument, runId: string, place: number): TicketDocument {
  const from = document.plan.heatRuns.findIndex((run) => run.id === runId);
  if (from < 0 || from === place) return document;
  return produce(document, (draft) => {
    const [run] = draft.plan.heatRuns.splice(from, 1);
    draft.plan.heatRuns.splice(Math.max(0, place), 0, run);
  });
}

export function setRunFields(
  document: TicketDocument,
  runId: string,
  fields: Partial<Pick<HeatRun, 'name' | 'kind'>>,
): TicketDocument {
  return produce(document, (draft) => {
    const run = draft.plan.heatRuns.find((one) => one.id === runId);
    if (run) Object.assign(run, fields);
  });
}

/** As many as the format takes. */
const MOST_SEGMENTS = 100;

/**
 * Takes a site into a heat run or out of it; its stretches go with it. One that comes in gets blowing stretches of the
 * starting profile behind the last that blow, so that it is heated at all.
 */
export function setRunSite(document: TicketDocument, runId: string, siteId: string, on: boolean): TicketDocument {
  const site = document.plan.sites.find((one) => one.id === siteId);
  if (!site) return document;
  return produce(document, (draft) => {
    const run = draft.plan.heatRuns.find((one) => one.id === runId);
    if (!run || run.siteIds.includes(siteId) === on) return;
    run.siteIds = on ? [...run.siteIds, siteId] : run.siteIds.filter((id) => id !== siteId);
    if (on) {
      const full = run.segments.length + 2 > MOST_SEGMENTS;
      if (full || run.kind === 'site-preparation' || run.segments.some((segment) => segment.siteId === siteId)) return;
      const blowing = run.segments.findLastIndex((segment) => segment.gas !== null);
      run.segments.splice(blowing >= 0 ? blowing + 1 : run.segments.length - 1, 0, ...siteStretches(run.kind, site));
      return;
    }
    const kept = run.segments.filter((segment) => segment.siteId !== siteId);
    if (kept.length > 0) run.segments = kept;
  });
}

/** Another profile in place of the run's own. */
export function setSegments(document: TicketDocument, runId: string, segments: readonly Segment[]): TicketDocument {
  return produce(document, (draft) => {
    const run = draft.plan.heatRuns.find(({ id }) => id === runId);
    if (run) run.segments = structuredClone([...segments]);
  });
}
