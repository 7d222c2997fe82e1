import type { Part } from '../../shared-types/board.ts';
import type { Side, TurnedRectangle } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { draftOf } from '../../shared-types/rules/new-part.ts';
import type { PackageOffer } from '../../shared-types/rules/package-offers.ts';
import { freeRefdes, prefixOfClass, readNumbered } from '../../shared-types/rules/refdes.ts';
import { type PackageFit, suggestPackages, takenAtOnce } from '../../shared-types/rules/suggest-packages.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { takenRefdes } from './add-parts.ts';
import { poseParts, tidy, wholeTurn } from './part-poses.ts';
import { setPackage } from './parts.ts';
import type { Placing } from './placing.ts';

/** A package of the drawn size, for a body that nothing in the library comes near. */
export const asDrawn = (lengthMm: number, widthMm: number): PackageOffer => ({
  name: partEditWords.drawnName(lengthMm, widthMm),
  shape: 'rectangle',
  lengthMm,
  widthMm,
  heightMm: null,
  classId: 'unknown',
  from: 'typed',
});

/**
 * A part on a drawn body: with the nearest package when it comes near enough, turned to fit, else with the size as
 * drawn. The designator goes on from the letters at hand when they suit the package.
 */
export function drawBody(document: TicketDocument, area: TurnedRectangle, side: Side, placing: Placing): Part {
  const [best] = suggestPackages(area.lengthMm, area.widthMm, { prefix: readNumbered(placing.refdes)?.prefix ?? '' });
  const near = best !== undefined && best.errorMm <= takenAtOnce(area.lengthMm, area.widthMm);
  const offer = near ? best.offer : asDrawn(area.lengthMm, area.widthMm);
  const letters = prefixOfClass(offer.classId);
  const same = readNumbered(placing.refdes)?.prefix === letters;
  const refdes = freeRefdes(same ? placing.refdes : `${letters}1`, takenRefdes(document));
  return {
    ...draftOf(offer, refdes, ''),
    refdes,
    side,
    x: tidy(area.x),
    y: tidy(area.y),
    turn: wholeTurn(area.turnDeg + (near && best.turned ? 90 : 0)),
  };
}

/** Gives the drawn part another package; one that fits the other way round lies a quarter turned in the drawn body. */
export function takeFit(
  document: TicketDocument,
  drawn: NonNullable<Placing['drawn']>,
  { offer, turned }: Pick<PackageFit, 'offer' | 'turned'>,
): TicketDocument {
  const turn = wholeTurn(drawn.turn + (turned ? 90 : 0));
  const given = setPackage(document, [drawn.refdes], offer);
  return poseParts(given, (part) => (part.refdes === drawn.refdes && part.turn !== turn ? { ...part, turn } : part));
}
