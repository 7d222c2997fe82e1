import type { Part } from '../board.ts';
import { guessPart } from '../library/guess-part.ts';
import type { PackageOffer } from './package-offers.ts';

/** A part without its name and place. */
export type PartDraft = Omit<Part, 'refdes' | 'side' | 'x' | 'y' | 'turn'>;

/**
 * What a package makes of a part. The class is the package's; where that says nothing, what the library guesses from
 * designator and value: a guess until somebody confirms it.
 */
export function draftOf(offer: PackageOffer, refdes: string, value: string): PartDraft {
  const { name, shape, lengthMm, widthMm, heightMm, pinCount } = offer;
  return {
    package: { name, shape, lengthMm, widthMm, heightMm },
    class: classOf(offer, refdes, value),
    classGuessed: true,
    value,
    fitted: true,
    alloy: 'unknown',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...(pinCount === undefined ? {} : { pinCount }),
  };
}

function classOf(offer: PackageOffer, refdes: string, value: string): string {
  const { name, lengthMm, widthMm, pinCount = null, classId } = offer;
  const guess = guessPart({ refdes, packageName: name, value, pinCount, bodyMm: { lengthMm, widthMm } });
  // A value can tell more than a package does: a memory in an array, a thermistor on chip lands.
  const told = guess.classId === 'flash-memory' || guess.classId === 'ntc';
  return classId === 'unknown' || told ? guess.classId : classId;
}
