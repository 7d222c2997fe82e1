import { produce } from 'immer';
import type { Part } from '../../shared-types/board.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';

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
