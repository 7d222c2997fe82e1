import { classById } from '../library/classes.ts';
import { guessWithReason } from '../library/guess-part.ts';
import { PACKAGES } from '../library/packages.ts';
import { readTyped, type TypedPackage, type WrittenSize } from './package-words.ts';
import { prefixOfClass } from './refdes.ts';

/** A package that may be placed: where it comes from, and where its height does. Lengths in mm. */
export type PackageOffer = {
  name: string;
  shape: 'rectangle' | 'round';
  lengthMm: number;
  widthMm: number;
  /** null: not known, the class gives one. */
  heightMm: number | null;
  classId: string;
  pinCount?: number;
  from: 'board' | 'user' | 'library' | 'typed';
};

export const LIBRARY_OFFERS: readonly PackageOffer[] = PACKAGES.map(({ source: _source, ...one }) => ({
  ...one,
  from: 'library',
}));

/** Words that people type and package names do not hold, by class. */
const SAID: readonly (readonly [RegExp, RegExp])[] = [
  [/^(R|RES|RESISTOR)$/, /^chip-resistor$/],
  [/^(C|CAP|CAPACITOR|MLCC)$/, /^chip-capacitor/],
  [/^(L|IND|INDUCTOR|COIL)$/, /^(power-inductor|chip-ferrite)$/],
  [/^(BEAD|FERRITE|FB)$/, /^chip-ferrite$/],
  [/^(ELKO|ELEC|ELCAP|ELECTROLYTIC)$/, /^electrolytic/],
  [/^(TANT|TANTALUM)$/, /^tantalum$/],
  [/^(XTAL|QUARTZ)$/, /^crystal/],
  [/^(OSC|OSCILLATOR)$/, /^(crystal|mems-oscillator)$/],
  [/^(CONN|CONNECTOR)$/, /^connector/],
  [/^(SWITCH|BUTTON)$/, /switch$/],
  [/^(CELL|BATTERY)$/, /(cell|battery)$/],
];

const numbersIn = (text: string): string[] => text.match(/\d*\.?\d+/g) ?? [];
const sameFigure = (a: number, b: number): boolean => Math.abs(a - b) < 0.005;

/** Rows and pins of a name such as 'Pin header 1x06 2.54' look like a size, and are typed like one. */
function isNamed(size: WrittenSize, name: string): boolean {
  const counts = /(\d+)x(\d+)/i.exec(name);
  return (
    size.third === null && counts !== null && Number(counts[1]) === size.first && Number(counts[2]) === size.second
  );
}

/** How near two sizes are, either way round: 0 the same, 1 nearly (a tenth or half a millimetre), null neither. */
function sizeRank(size: WrittenSize, offer: PackageOffer): number | null {
  const second = offer.shape === 'round' ? (offer.heightMm ?? offer.widthMm) : offer.widthMm;
  const off = (a: number, b: number) => Math.max(Math.abs(size.first - a), Math.abs(size.second - b));
  const least = Math.min(off(offer.lengthMm, second), off(second, offer.lengthMm));
  if (isNamed(size, offer.name)) return 0;
  const height = size.third === null || (offer.heightMm !== null && sameFigure(size.third, offer.heightMm));
  if (least < 0.005 && height) return 0;
  return least <= Math.max(0.5, 0.1 * Math.max(size.first, size.second)) ? 1 : null;
}

/** How well a word fits an offer: 0 exactly, 1 as its beginning or by what the class is called; null: not at all. */
function wordRank(word: string, offer: PackageOffer): number | null {
  const name = offer.name.toUpperCase();
  const parts = name.split(/[\s_\-/]+/);
  if (parts.includes(word)) return 0;
  if (/^\d*\.?\d+$/.test(word)) return figureRank(word, name);
  if (SAID.some(([said, classes]) => said.test(word) && classes.test(offer.classId))) return 0;
  if (word.length < 2) return null;
  if (name.replace(/[^A-Z0-9.]/g, '').includes(word.replace(/[^A-Z0-9.]/g, ''))) return 1;
  return classById(offer.classId).name.toUpperCase().includes(word) ? 1 : null;
}

/** '0.80' is 0.8; '04' begins 0402; the figures of a code such as 0402 are no number. */
function figureRank(word: string, name: string): number | null {
  const figures = numbersIn(name);
  const code = /^0\d/.test(word);
  if (!code && figures.some((one) => !/^0\d/.test(one) && sameFigure(Number(one), Number(word)))) return 0;
  return figures.some((one) => one.startsWith(word)) ? 1 : null;
}

/** Rank of an offer for what was typed, lower is better; null: it does not fit. */
function rankOf(typed: TypedPackage, offer: PackageOffer, prefix: string): number | null {
  let rank = 0;
  if (typed.size) {
    const near = sizeRank(typed.size, offer);
    if (near === null) return null;
    rank += 8 * near;
  }
  for (const word of typed.words) {
    const fit = wordRank(word, offer);
    if (fit === null) return null;
    rank += fit;
  }
  // Among equals those of the letters at hand come first: '0402' for C12 is a capacitor.
  return 2 * rank + (isOfLetters(offer, prefix) ? 0 : 1);
}

/** A ferrite of the library is 'L 1206', though its class counts as FB. */
const isOfLetters = ({ classId, name }: PackageOffer, prefix: string): boolean =>
  prefix !== '' && (prefixOfClass(classId) === prefix || name.startsWith(`${prefix} `));

/** The package that the words themselves spell: a size, or a name that the guessing rules read; null: neither. */
export function typedOffer(text: string, refdes: string): PackageOffer | null {
  const { size, plain } = readTyped(text);
  const guess = guessWithReason({
    refdes,
    packageName: guessable(plain),
    value: '',
    pinCount: null,
    bodyMm: bodyOf(size),
  });
  const name = text.trim().slice(0, 200);
  const round = guess.package?.shape === 'round';
  if (size) {
    const body = round
      ? { lengthMm: size.first, widthMm: size.first, heightMm: size.third ?? size.second }
      : { lengthMm: size.first, widthMm: size.second, heightMm: size.third ?? null };
    return { name, shape: round ? 'round' : 'rectangle', ...body, classId: guess.classId, from: 'typed' };
  }
  if (!guess.package || guess.reason.code === 'refdes') return null;
  return { name, ...guess.package, classId: guess.classId, from: 'typed' };
}

/** Words as the guessing rules know them: package names say 'ELKO' where people type 'electrolytic'. */
const guessable = (plain: string): string => plain.replace(/ELECTROLYTIC|ELCAP/g, 'ELKO');

const bodyOf = (size: WrittenSize | null) => size && { lengthMm: size.first, widthMm: size.second };

/**
 * Packages for what somebody typed, best first: own ones before those of the library, exact ones before near ones,
 * and what the words themselves spell ('4.5 x 3.2 x 1.1', an IPC-7351 name). `refdes` tips the scale among equals.
 */
export function offerPackages(text: string, own: readonly PackageOffer[] = [], refdes = '', most = 12): PackageOffer[] {
  const typed = readTyped(text);
  const prefix = /^[A-Z]+/.exec(refdes.toUpperCase())?.[0] ?? '';
  const ranked = [...own, ...LIBRARY_OFFERS]
    .map((offer, index) => ({ offer, index, rank: rankOf(typed, offer, prefix) }))
    .filter((one): one is typeof one & { rank: number } => one.rank !== null)
    .map((one) => ({ ...one, rank: one.rank - (one.offer.from === 'library' ? 0 : 100) }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index);
  const spelt = typed.plain === '' ? null : typedOffer(text, refdes);
  if (!spelt) return ranked.slice(0, most).map(({ offer }) => offer);
  // What was spelt stands behind packages of exactly that size and before those that only come near; a bare size,
  // which names no package, stands first.
  const bare = typed.words.length === 0 && typed.size !== null;
  const exact = ranked.filter(({ rank }) => rank < 16).map(({ offer }) => offer);
  const near = ranked.filter(({ rank }) => rank >= 16).map(({ offer }) => offer);
  const known = !bare && exact.some((offer) => sameBody(offer, spelt));
  const inOrder = bare ? [spelt, ...exact, ...near] : [...exact, ...(known ? [] : [spelt]), ...near];
  return inOrder.slice(0, most);
}

const sameBody = (a: PackageOffer, b: PackageOffer): boolean =>
  sameFigure(a.lengthMm, b.lengthMm) &&
  sameFigure(a.widthMm, b.widthMm) &&
  (b.heightMm === null || (a.heightMm !== null && sameFigure(a.heightMm, b.heightMm)));
