import { bodyOf } from '../../shared-types/board.ts';
import type { TicketCard } from '../../shared-types/contract.ts';
import { flattenContour, type TurnedRectangle } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';

/** A small drawing shows the largest bodies; the rest would be dust at that size. */
const MOST_BODIES = 400;
const ARC_TOLERANCE_MM = 0.2;

export type CardPlace = { id: string; fileName: string; sample: boolean; changedAt: string };

const rounded = (mm: number): number => Math.round(mm * 100) / 100;
const asRow = (body: TurnedRectangle): number[] =>
  [body.x, body.y, body.lengthMm, body.widthMm, body.turnDeg].map(rounded);

/** What the shelf shows of a ticket. */
export function ticketCard(document: TicketDocument, place: CardPlace): TicketCard {
  const { board, plan } = document;
  const bodies = board.parts
    .filter((part) => part.side === 'top' && part.fitted)
    .map(bodyOf)
    .sort((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm);
  return {
    ...place,
    number: plan.ticket.number,
    boardName: board.name,
    target: plan.sites.map((site) => site.target).join(', '),
    invented: board.source.invented,
    counts: {
      parts: board.parts.length,
      sites: plan.sites.length,
      tags: plan.tags.length,
      heatRuns: plan.heatRuns.length,
    },
    drawing: {
      outline: flattenContour(board.outline, ARC_TOLERANCE_MM).map(({ x, y }): [number, number] => [
        rounded(x),
        rounded(y),
      ]),
      top: bodies.slice(0, MOST_BODIES).map(asRow),
      sites: plan.sites.map((site) => asRow(site.area)),
    },
    problem: null,
  };
}

/** The card of a file that cannot be read: it stays on the shelf and says why. */
export function damagedCard(place: CardPlace, problem: Problem): TicketCard {
  return {
    ...place,
    number: '',
    boardName: '',
    target: '',
    invented: false,
    counts: { parts: 0, sites: 0, tags: 0, heatRuns: 0 },
    drawing: { outline: [], top: [], sites: [] },
    problem,
  };
}
