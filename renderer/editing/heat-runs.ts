import { produce } from 'immer';
import type { HeatRun, TicketDocument } from '../../shared-types/plan.ts';
import { startingSegments } from '../../shared-types/rules/new-plan.ts';
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
    const segments = startingSegments(kind, siteIds[0] ?? null);
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

/** Takes a site into a heat run or out of it; its stretches go with it. */
export function setRunSite(document: TicketDocument, runId: string, siteId: string, on: boolean): TicketDocument {
  if (!document.plan.sites.some((site) => site.id === siteId)) return document;
  return produce(document, (draft) => {
    const run = draft.plan.heatRuns.find((one) => one.id === runId);
    if (!run || run.siteIds.includes(siteId) === on) return;
    run.siteIds = on ? [...run.siteIds, siteId] : run.siteIds.filter((id) => id !== siteId);
    if (on) return;
    const kept = run.segments.filter((segment) => segment.siteId !== siteId);
    if (kept.length > 0) run.segments = kept;
  });
}
