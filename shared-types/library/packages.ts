import type { LibraryPackage } from './library-types.ts';
import { ARRAY_PACKAGES } from './packages/arrays.ts';
import { CHIP_PACKAGES } from './packages/chips.ts';
import { OTHER_PACKAGES } from './packages/others.ts';
import { SEMICONDUCTOR_PACKAGES } from './packages/semiconductors.ts';

/** Packages of known size. Names are unique. */
export const PACKAGES: readonly LibraryPackage[] = [
  ...CHIP_PACKAGES,
  ...SEMICONDUCTOR_PACKAGES,
  ...ARRAY_PACKAGES,
  ...OTHER_PACKAGES,
];

const plain = (text: string): string => text.toUpperCase().replace(/[^A-Z0-9.]/g, '');
const byName = new Map(PACKAGES.map((one) => [plain(one.name), one]));

/** The package of this name, case, spaces and dashes aside ('soic8' finds 'SOIC-8'); undefined when there is none. */
export const findPackage = (text: string): LibraryPackage | undefined => byName.get(plain(text));

/** Packages whose names hold every word of the text, best first: what a name field offers while somebody types. */
export function searchPackages(text: string, most = 20): LibraryPackage[] {
  const words = text.split(/\s+/).map(plain).filter(Boolean);
  if (words.length === 0) return PACKAGES.slice(0, most);
  const whole = plain(text);
  const rank = (one: LibraryPackage) => {
    const name = plain(one.name);
    return name === whole ? 0 : name.startsWith(whole) ? 1 : 2;
  };
  return PACKAGES.filter((one) => words.every((word) => plain(one.name).includes(word)))
    .map((one, index) => ({ one, index, rank: rank(one) }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .slice(0, most)
    .map(({ one }) => one);
}
