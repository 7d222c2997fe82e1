import { produce } from 'immer';
import type { Plan, TicketDocument } from '../../shared-types/plan.ts';

export function setTicketData(document: TicketDocument, fields: Partial<Plan['ticket']>): TicketDocument {
  return produce(document, (draft) => {
    Object.assign(draft.plan.ticket, fields);
  });
}

/** How the board lies in the clamp: degrees counter-clockwise, kept in [0, 360). */
export function setClampedTurn(document: TicketDocument, degrees: number): TicketDocument {
  return produce(document, (draft) => {
    draft.plan.clampedTurnDeg = ((degrees % 360) + 360) % 360;
  });
}
