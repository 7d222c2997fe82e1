import type { PackageOffer } from './package-offers.ts';
import { LIBRARY_OFFERS } from './package-offers.ts';
import { prefixOfClass } from './refdes.ts';

/** A package near a drawn body. `turned`: its length lies along the drawn width. */
export type PackageFit = { offer: PackageOffer; turned: boolean; errorMm: number };

/** The larger of the two differences of the sides, mm. */
const errorOf = (length: number, width: number, offer: PackageOffer): number =>
  Math.max(Math.abs(length - offer.lengthMm), Math.abs(width - offer.widthMm));

/**
 * Packages by how near their bodies come to a drawn one, both ways round, nearest first; equal ones in the order of
 * the letters at hand, then own, then library.
 * `errorMm` is the larger difference of the two sides.
 */
export function suggestPackages(
  lengthMm: number,
  widthMm: number,
  { own = [], prefix = '', most = 8 }: { own?: readonly PackageOffer[]; prefix?: string; most?: number } = {},
): PackageFit[] {
  const fits = [...own, ...LIBRARY_OFFERS].map((offer) => {
    const along = errorOf(lengthMm, widthMm, offer);
    const across = errorOf(widthMm, lengthMm, offer);
    return { offer, turned: across < along - 1e-9, errorMm: Math.min(along, across) };
  });
  const wanted = (fit: PackageFit) => (prefix !== '' && prefixOfClass(fit.offer.classId) === prefix ? 0 : 1);
  const hundredths = (fit: PackageFit) => Math.round(fit.errorMm * 100);
  return fits.toSorted((a, b) => hundredths(a) - hundredths(b) || wanted(a) - wanted(b)).slice(0, most);
}

/** A drawn body takes the nearest package at once when it is this near, mm; a photo of a bench camera is no better. */
export const takenAtOnce = (lengthMm: number, widthMm: number): number =>
  Math.max(0.15, 0.06 * Math.max(lengthMm, widthMm));
