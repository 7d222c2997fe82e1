import { produce } from 'immer';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Segment } from '../../shared-types/profile.ts';

function editSegments(document: TicketDocument, runId: string, edit: (segments: Segment[]) => void): TicketDocument {
  return produce(document, (draft) => {
    const run = draft.plan.heatRuns.find((one) => one.id === runId);
    if (run) edit(run.segments);
  });
}

/** Changes fields of one stretch of a heat run. */
export function setSegment(
  document: TicketDocument,
  runId: string,
  index: number,
  fields: Partial<Segment>,
): TicketDocument {
  return editSegments(document, runId, (segments) => {
    if (segments[index]) Object.assign(segments[index], fields);
  });
}

/** A new stretch behind the given one that goes on where it ended. */
export function addSegmentAfter(document: TicketDocument, runId: string, index: number, name: string): TicketDocument {
  return editSegments(document, runId, (segments) => {
    const before = segments[index];
    if (!before) return;
    const hold = (ramp: { startC: number; endC: number }) => ({ startC: ramp.endC, endC: ramp.endC });
    segments.splice(index + 1, 0, {
      ...before,
      name,
      seconds: 30,
      preheater: hold(before.preheater),
      gas: before.gas && hold(before.gas),
    });
  });
}

/** A copy of a stretch, right behind it. */
export function duplicateSegment(document: TicketDocument, runId: string, index: number): TicketDocument {
  const source = document.plan.heatRuns.find((run) => run.id === runId)?.segments[index];
  if (!source) return document;
  return editSegments(document, runId, (segments) => segments.splice(index + 1, 0, structuredClone(source)));
}

/** Removes a stretch; the last one of a run stays. */
export function removeSegment(document: TicketDocument, runId: string, index: number): TicketDocument {
  return editSegments(document, runId, (segments) => {
    if (segments.length > 1 && segments[index]) segments.splice(index, 1);
  });
}

export function moveSegment(document: TicketDocument, runId: string, index: number, place: number): TicketDocument {
  return editSegments(document, runId, (segments) => {
    if (!segments[index] || place < 0 || place >= segments.length) return;
    const [moved] = segments.splice(index, 1);
    segments.splice(place, 0, moved);
  });
}

/** Turns the gas of a stretch on with the given figures, or off. */
export function setGas(
  document: TicketDocument,
  runId: string,
  index: number,
  on: { celsius: number; flowLMin: number; siteId: string | null } | null,
): TicketDocument {
  return setSegment(
    document,
    runId,
    index,
    on
      ? { gas: { startC: on.celsius, endC: on.celsius }, flowLMin: on.flowLMin, siteId: on.siteId }
      : { gas: null, flowLMin: 0, siteId: null },
  );
}
