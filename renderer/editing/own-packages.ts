import type { Part } from '../../shared-types/board.ts';
import type { OwnPackage } from '../../shared-types/own-package.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { PackageOffer } from '../../shared-types/rules/package-offers.ts';

/** An own package as the search offers it. */
export const offerOfOwn = ({ class: classId, ...rest }: OwnPackage, from: 'board' | 'user'): PackageOffer => ({
  ...rest,
  classId,
  from,
});

/** A part's package as an own one to be named. */
export const ownFromPart = (part: Part): OwnPackage => ({
  ...part.package,
  name: part.package.name || part.refdes,
  class: part.class,
  ...(part.pinCount === undefined ? {} : { pinCount: part.pinCount }),
});

/** The list with a package put in the place of the one called `former` (null: a new one); sorted as it was. */
export function withPackage(list: readonly OwnPackage[], former: string | null, own: OwnPackage): OwnPackage[] {
  const kept = list.filter((one) => one.name === former || one.name !== own.name);
  const known = former !== null && kept.some((one) => one.name === former);
  return known ? kept.map((one) => (one.name === former ? own : one)) : [...kept, own];
}

/** Keeps a package with the board. */
export function putBoardPackage(document: TicketDocument, former: string | null, own: OwnPackage): TicketDocument {
  return { ...document, board: { ...document.board, packages: withPackage(document.board.packages, former, own) } };
}

/** Takes a package out of the board's own; parts keep their bodies. */
export function removeBoardPackage(document: TicketDocument, name: string): TicketDocument {
  const packages = document.board.packages.filter((one) => one.name !== name);
  if (packages.length === document.board.packages.length) return document;
  return { ...document, board: { ...document.board, packages } };
}
