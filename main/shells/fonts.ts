import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { SheetFonts } from '../work-map/render.ts';

const require = createRequire(import.meta.url);
const SUBSETS = ['latin', 'latin-ext', 'cyrillic', 'cyrillic-ext', 'greek', 'vietnamese'];

function plex(family: 'sans' | 'mono', weight: 400 | 600): Uint8Array[] {
  const subsets = family === 'mono' ? SUBSETS.filter((subset) => subset !== 'greek') : SUBSETS;
  return subsets.map((subset) =>
    readFileSync(
      require.resolve(`@fontsource/ibm-plex-${family}/files/ibm-plex-${family}-${subset}-${weight}-normal.woff`),
    ),
  );
}

const dejaVu = (name: string): Uint8Array => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));

/**
 * The fonts of the printed sheet, from the installed packages: IBM Plex by subset, DejaVu for what Plex does not have
 * (signs such as ≥ and →, Greek in the fixed pitch).
 */
export function loadSheetFonts(): SheetFonts {
  return {
    sans: [...plex('sans', 400), dejaVu('DejaVuSans')],
    sansStrong: [...plex('sans', 600), dejaVu('DejaVuSans-Bold')],
    mono: [...plex('mono', 400), dejaVu('DejaVuSansMono')],
    monoStrong: [...plex('mono', 600), dejaVu('DejaVuSansMono-Bold')],
  };
}
