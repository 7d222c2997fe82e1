import { ownToBoard, type Part } from '../board.ts';
import { type Point, turnVector } from '../geometry.ts';
import type { Site, TicketDocument } from '../plan.ts';
import type { Tag } from '../tags.ts';

/** Figures as a person would type them: no dust from floating point. */
export const tidy = (value: number): number => Math.round(value * 1000) / 1000 || 0;

/** A turn between 0 and 360 degrees. */
export const wholeTurn = (degrees: number): number => tidy(((degrees % 360) + 360) % 360) % 360;

/** A board point in the part's own axes. */
export function boardToOwn(part: Pick<Part, 'x' | 'y' | 'turn' | 'side'>, at: Point): Point {
  const own = turnVector(at.x - part.x, at.y - part.y, -part.turn);
  return { x: own.x, y: part.side === 'bottom' ? -own.y : own.y };
}

/**
 * Gives parts another place, turn or side. What lies on a part goes with it: thermocouples, and the rework area of its
 * site. `change` returns the part as it shall be, or the same one; it must keep the name.
 * The list of parts is mapped, not drafted: a drag of hundreds on a board of thousands stays quick.
 */
export function poseParts(document: TicketDocument, change: (part: Part) => Part): TicketDocument {
  const posed = new Map<string, { before: Part; after: Part }>();
  const parts = document.board.parts.map((before) => {
    const after = change(before);
    if (after !== before) posed.set(before.refdes, { before, after });
    return after;
  });
  if (posed.size === 0) return document;
  const { plan } = document;
  return {
    board: { ...document.board, parts },
    plan: {
      ...plan,
      sites: mapped(plan.sites, (site) => siteWith(site, posed.get(site.target))),
      tags: mapped(plan.tags, (tag) => (tag.kind === 'watchPoint' ? watchWith(tag, posed.get(tag.refdes ?? '')) : tag)),
    },
  };
}

type Posed = { before: Part; after: Part } | undefined;

/** The list with its members changed; the same list when none is another. */
function mapped<T>(list: T[], change: (one: T) => T): T[] {
  const next = list.map(change);
  return next.every((one, index) => one === list[index]) ? list : next;
}

function carried(at: Point, { before, after }: NonNullable<Posed>): Point {
  const to = ownToBoard(after, boardToOwn(before, at));
  return { x: tidy(to.x), y: tidy(to.y) };
}

function siteWith(site: Site, posed: Posed): Site {
  if (!posed) return site;
  const turnDeg = site.area.turnDeg + posed.after.turn - posed.before.turn;
  return { ...site, area: { ...site.area, ...carried(site.area, posed), turnDeg: turnWithin(turnDeg) } };
}

function watchWith(tag: Tag & { kind: 'watchPoint' }, posed: Posed): Tag {
  return posed ? { ...tag, ...carried(tag, posed), side: posed.after.side } : tag;
}

/** Between -180 (kept out) and 180, as rework areas are turned. */
const turnWithin = (degrees: number): number => tidy(((((degrees + 180) % 360) + 360) % 360) - 180);
