import type { PackageOffer } from '../../../../shared-types/rules/package-offers.ts';

const NONE: readonly PackageOffer[] = [];

/** Packages of the board's and the user's own, the board's first. */
export const useOwnPackages = (): readonly PackageOffer[] => NONE;
