import { produce } from 'immer';
import type { Part } from '../../shared-types/board.ts';
import type { Point } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { PackageOffer } from '../../shared-types/rules/package-offers.ts';

/** Fields that may be set on many parts at once. */
export type PartFields = Partial<
  Pick<Part, 'class' | 'classGuessed' | 'value' | 'fitted' | 'alloy' | 'edgeBonded' | 'underfilled' | 'coated'>
>;

function editParts(document: TicketDocument, refdes: readonly string[], edit: (part: Part) => void): TicketDocument {
  const wanted = new Set(refdes);
  return produce(document, (draft) => {
    for (const part of draft.board.parts) if (wanted.has(part.refdes)) edit(part);
  });
}

export function setPartFields(document: TicketDocument, refdes: readonly string[], fields: PartFields): TicketDocument {
  return editParts(document, refdes, (part) => Object.assign(part, fields));
}

/** Sets the class of parts: said by a person, so no longer a guess. */
export function setClass(document: TicketDocument, refdes: readonly string[], classId: string): TicketDocument {
  return setPartFields(document, refdes, { class: classId, classGuessed: false });
}

/** Takes the guessed classes of parts as right. */
export function confirmClass(document: TicketDocument, refdes: readonly string[]): TicketDocument {
  return setPartFields(document, refdes, { classGuessed: false });
}

/** Body height above the board, mm; null: not known, the class gives one. */
export function setHeight(
  document: TicketDocument,
  refdes: readonly string[],
  heightMm: number | null,
): TicketDocument {
  return editParts(document, refdes, (part) => {
    part.package.heightMm = heightMm;
  });
}

/** Limits of the part's own data sheet; null takes them away. A limit without a figure is left out. */
export function setOwnLimits(
  document: TicketDocument,
  refdes: readonly string[],
  limits: NonNullable<Part['limits']> | null,
): TicketDocument {
  return editParts(document, refdes, (part) => {
    if (!limits) delete part.limits;
    else
      part.limits = Object.fromEntries(
        Object.entries(limits).filter(([, value]) => value !== undefined),
      ) as typeof limits;
  });
}

/** Mass in grams; null: not known. */
export function setMass(document: TicketDocument, refdes: readonly string[], massG: number | null): TicketDocument {
  return editParts(document, refdes, (part) => {
    if (massG === null) delete part.massG;
    else part.massG = massG;
  });
}

/**
 * Gives parts another package. A class that somebody confirmed stays; a guessed one becomes the package's. A mark of
 * pin 1 keeps its corner.
 */
export function setPackage(document: TicketDocument, refdes: readonly string[], offer: PackageOffer): TicketDocument {
  const { name, shape, lengthMm, widthMm, heightMm, classId, pinCount } = offer;
  return editParts(document, refdes, (part) => {
    if (part.pin1) {
      const { x, y } = part.pin1;
      part.pin1 = { x: (x * lengthMm) / part.package.lengthMm, y: (y * widthMm) / part.package.widthMm };
    }
    part.package = { name, shape, lengthMm, widthMm, heightMm };
    if (part.classGuessed && classId !== 'unknown') part.class = classId;
    if (pinCount === undefined) delete part.pinCount;
    else part.pinCount = pinCount;
  });
}

/** Marks pin 1 of parts, each by its own place (own axes, mm); null takes the mark away. */
export function setPin1(
  document: TicketDocument,
  refdes: readonly string[],
  placeOf: (part: Part) => Point | null,
): TicketDocument {
  return editParts(document, refdes, (part) => {
    const place = placeOf(part);
    if (place) part.pin1 = place;
    else delete part.pin1;
  });
}
