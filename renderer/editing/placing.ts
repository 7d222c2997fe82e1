import type { Cover, Part } from '../../shared-types/board.ts';
import type { Point, Side } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { draftOf } from '../../shared-types/rules/new-part.ts';
import { LIBRARY_OFFERS, offerPackages, type PackageOffer } from '../../shared-types/rules/package-offers.ts';
import { nextPin1, pin1Places } from '../../shared-types/rules/pin1.ts';
import { freeRefdes, freeSeries, prefixOfClass, readNumbered } from '../../shared-types/rules/refdes.ts';
import { takenRefdes } from './add-parts.ts';
import { tidy, wholeTurn } from './part-poses.ts';

/** What the tools of the stage Board put on the drawing next. It belongs to the window, not to the document. */
export type Placing = {
  offer: PackageOffer | null;
  /** The designator that counting starts from; parts get it or the next free one. */
  refdes: string;
  value: string;
  /** null: the package's, or guessed. */
  classId: string | null;
  /** undefined: the package's; null: the class gives it. */
  heightMm: number | null | undefined;
  turn: number;
  /** Where pin 1 is marked, in the part's own axes, mm; null: not at all. */
  pin1: Point | null;
  /** False places empty positions. */
  fitted: boolean;
  /** The board is coated: every part that is placed is. */
  coated: boolean;
  /** Step of places, mm; 0: none. */
  gridMm: number;
  /** Snap to the rows of neighbours. */
  rows: boolean;
  coverKind: Cover['kind'];
  /** The body drawn last, for the choice of other packages. */
  drawn: { refdes: string; lengthMm: number; widthMm: number; turn: number } | null;
};

export const startingPlacing: Placing = {
  offer: null,
  refdes: '',
  value: '',
  classId: null,
  heightMm: undefined,
  turn: 0,
  pin1: null,
  fitted: true,
  coated: false,
  gridMm: 0.1,
  rows: true,
  coverKind: 'can',
  drawn: null,
};

/** The designator of the next part. */
export const nextRefdes = (placing: Placing, document: TicketDocument): string =>
  freeRefdes(
    placing.refdes || (placing.offer ? `${prefixOfClass(placing.offer.classId)}1` : ''),
    takenRefdes(document),
  );

/**
 * What changes when another package is chosen: its letters, unless those at hand fit it, pin 1 where parts of the same package
 * have it, and nothing left of the last one.
 */
export function chosen(
  placing: Placing,
  offer: PackageOffer,
  refdes: string | null,
  parts: readonly Part[] = [],
): Partial<Placing> {
  const letters = prefixOfClass(offer.classId);
  const fits = placing.refdes !== '' && placing.offer !== null && prefixOfClass(placing.offer.classId) === letters;
  return {
    offer,
    refdes: refdes ?? (fits ? placing.refdes : `${letters}1`),
    classId: null,
    heightMm: undefined,
    // The skew of one part is not meant for the next kind.
    turn: wholeTurn(90 * Math.round(placing.turn / 90)),
    pin1: parts.findLast((part) => part.pin1 && sameBody(part, offer))?.pin1 ?? null,
    ...(fits ? {} : { value: '' }),
  };
}

/** A part as it would be placed at a point; null: no package is chosen. */
export function placedPart(placing: Placing, refdes: string, at: Point, side: Side): Part | null {
  const { offer } = placing;
  if (!offer) return null;
  const draft = draftOf(offer, refdes, placing.value);
  const heightMm = placing.heightMm === undefined ? draft.package.heightMm : placing.heightMm;
  return {
    ...draft,
    refdes,
    side,
    x: tidy(at.x),
    y: tidy(at.y),
    turn: wholeTurn(placing.turn),
    package: { ...draft.package, heightMm },
    fitted: placing.fitted,
    coated: placing.coated,
    ...(placing.pin1 ? { pin1: placing.pin1 } : {}),
    ...(placing.classId ? { class: placing.classId, classGuessed: false } : {}),
  };
}

/** A round body has no corners; one of two ends, as an electrolytic, is marked all the same. */
export const hasNoWay = (part: Part, places: readonly Point[]): boolean =>
  part.package.shape === 'round' && places.length > 2;

/** Where pin 1 of what is placed next may be marked, in its own axes, mm; none on a round body. */
export function pin1Choices(placing: Placing): Point[] {
  const part = placedPart(placing, '', { x: 0, y: 0 }, 'top');
  const places = part ? pin1Places(part) : [];
  return part && hasNoWay(part, places) ? [] : places;
}

/** The mark of pin 1 moved on to the next corner or end of what is placed next, then taken away. */
export function pin1OfNext(placing: Placing): Partial<Placing> {
  const part = placedPart(placing, '', { x: 0, y: 0 }, 'top');
  return { pin1: part && nextPin1(part) };
}

/** Parts at many places, counted up from the next designator. */
export function placedParts(
  placing: Placing,
  document: TicketDocument,
  places: readonly (Point & { turn: number; side: Side })[],
): Part[] {
  const names = freeSeries(nextRefdes(placing, document), places.length, takenRefdes(document));
  return places.flatMap(
    ({ x, y, turn, side }, index) => placedPart({ ...placing, turn }, names[index], { x, y }, side) ?? [],
  );
}

/** True for a part of that package: of its name and size. */
export const sameBody = ({ package: one }: Part, offer: PackageOffer): boolean =>
  one.name === offer.name && one.lengthMm === offer.lengthMm && one.widthMm === offer.widthMm;

const DESIGNATOR = /^([A-Z]{1,2}\d{1,5})\s+(.+)$/i;
const BARE_DESIGNATOR = /^[A-Z]{1,3}\d{1,5}$/i;

/** 'SC70' begins 'SC-70-5'; 'L1' does not begin 'L 1206', for there the letter stands by itself. */
const begins = ({ name }: PackageOffer, word: string): boolean =>
  name.toUpperCase().replace(/[-_]/g, '').startsWith(word);

/**
 * What a typed line asks for: packages, and the designator when the line begins with one ('C12 0402'). A first word
 * that names a package of the library is no designator. A designator alone asks for the packages that parts of its letters have
 * on the board, the newest first.
 */
export function readPlacing(
  text: string,
  own: readonly PackageOffer[],
  refdes: string,
  parts: readonly Part[] = [],
): { refdes: string | null; offers: PackageOffer[] } {
  const whole = offerPackages(text, own, refdes);
  const split = DESIGNATOR.exec(text.trim());
  if (!split) return readBare(text.trim().toUpperCase(), whole, parts);
  const name = split[1].toUpperCase();
  if (whole.some((offer) => offer.from !== 'typed' && begins(offer, name))) return { refdes: null, offers: whole };
  const rest = offerPackages(split[2], own, name);
  return rest.length > 0 ? { refdes: name, offers: rest } : { refdes: null, offers: whole };
}

function readBare(name: string, whole: PackageOffer[], parts: readonly Part[]) {
  const named = whole.some((offer) => offer.from !== 'typed' && begins(offer, name));
  const used = BARE_DESIGNATOR.test(name) && !named ? usedPackages(parts, readNumbered(name)?.prefix ?? '') : [];
  return used.length > 0 ? { refdes: name, offers: used } : { refdes: null, offers: whole };
}

/** The packages of the parts whose designators have these letters, the newest first, each once. */
function usedPackages(parts: readonly Part[], prefix: string): PackageOffer[] {
  const found: PackageOffer[] = [];
  for (const part of parts.toReversed()) {
    if (readNumbered(part.refdes)?.prefix !== prefix || found.some((offer) => sameBody(part, offer))) continue;
    found.push(LIBRARY_OFFERS.find((offer) => sameBody(part, offer)) ?? offerOf(part));
    if (found.length === MOST_USED) break;
  }
  return found;
}

const MOST_USED = 12;

const offerOf = ({ package: body, class: classId, pinCount }: Part): PackageOffer => ({
  ...body,
  classId,
  ...(pinCount === undefined ? {} : { pinCount }),
  from: 'typed',
});
