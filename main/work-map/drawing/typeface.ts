import { unwrapWoff } from './unwrap-woff.ts';

/**
 * Fonts enter as bytes. Each face is a list of files tried in order for each character: the subsets of the wanted
 * family first, a wide fallback last.
 */
export type SheetFonts = Record<Face, readonly Uint8Array[]>;
export type Face = 'sans' | 'sansStrong' | 'mono' | 'monoStrong';

/** A stretch of text in one font file. */
export type Run = { text: string; font: string };

/** Ascent and descent of the sheet's fonts as shares of their size; the box that a reader of the PDF sees. */
export const ASCENT = 1.025;
export const DESCENT = 0.275;
/** Line pitch as a share of the size: a little more than ascent + descent, so that lines never touch. */
export const LINE_PITCH = 1.34;

const REPLACEMENT = '\uFFFD';

/**
 * The one private field of the PDF library that we read: which characters an opened font has, and its glyphs. Places and widths come in
 * thousandths of the size, outlines in the font's own units, y up.
 */
type OpenedFont = {
  _font: {
    font: { hasGlyphForCodePoint(codePoint: number): boolean; unitsPerEm: number };
    layout(text: string): {
      glyphs: { id: number; path: { toSVG(): string } }[];
      positions: { xAdvance: number; xOffset: number; yOffset: number }[];
    };
  };
};

/** A glyph of a run: where it stands (shares of the size, y up), its outline in units of which `perEm` make the size. */
export type PlacedGlyph = { id: number; x: number; y: number; outline(): string };
export type Outlines = { perEm: number; glyphs: PlacedGlyph[]; width: number };

export type Typefaces = {
  /** What a run looks like, exactly as it is printed. */
  outlines(run: Run): Outlines;
  runs(text: string, face: Face): Run[];
  /** Width of a text in points. */
  width(text: string, face: Face, size: number): number;
};

/** Characters without a mark of their own become a space, half a surrogate pair the replacement mark: nothing is dropped unseen. */
const printable = (text: string): string =>
  text.replace(/\p{Cs}/gu, REPLACEMENT).replace(/[\p{Cc}\u2028\u2029\ufeff\u200b-\u200f\u202a-\u202e]/gu, ' ');

/** Registers the fonts in a document and answers for widths and for the choice of font per character. */
export function createTypefaces(document: PDFKit.PDFDocument, fonts: SheetFonts): Typefaces {
  const opened = document as unknown as OpenedFont;
  for (const face of Object.keys(fonts) as Face[])
    for (const [index, bytes] of fonts[face].entries())
      document.registerFont(`${face}-${index}`, unwrapWoff(bytes) as Buffer);
  const has = (font: string, codePoint: number): boolean => {
    document.font(font);
    return opened._font.font.hasGlyphForCodePoint(codePoint);
  };
  const chosen = new Map<string, string | null>();
  const fontFor = (face: Face, character: string): string | null => {
    const key = face + character;
    const known = chosen.get(key);
    if (known !== undefined) return known;
    const codePoint = character.codePointAt(0) ?? 32;
    const index = fonts[face].findIndex((_, place) => has(`${face}-${place}`, codePoint));
    const font = index < 0 ? null : `${face}-${index}`;
    chosen.set(key, font);
    return font;
  };
  const runs = (text: string, face: Face): Run[] => splitRuns(printable(text), (c) => fontFor(face, c));
  const widths = new Map<string, number>();
  const width = (text: string, face: Face, size: number): number => {
    const key = face + text;
    let perPoint = widths.get(key);
    if (perPoint === undefined) {
      perPoint = runs(text, face).reduce(
        (sum, run) => sum + document.font(run.font).fontSize(100).widthOfString(run.text) / 100,
        0,
      );
      widths.set(key, perPoint);
    }
    return perPoint * size;
  };
  const outlines = (run: Run): Outlines => {
    document.font(run.font);
    const { font } = opened._font;
    const { glyphs, positions } = opened._font.layout(run.text);
    let x = 0;
    const placed = glyphs.map((glyph, index): PlacedGlyph => {
      const { xAdvance, xOffset, yOffset } = positions[index];
      const at = { id: glyph.id, x: x + xOffset / 1000, y: yOffset / 1000, outline: () => glyph.path.toSVG() };
      x += xAdvance / 1000;
      return at;
    });
    return { perEm: font.unitsPerEm, glyphs: placed, width: x };
  };
  return { runs, width, outlines };
}

function splitRuns(text: string, fontFor: (character: string) => string | null): Run[] {
  const runs: Run[] = [];
  for (const character of text) {
    const own = fontFor(character);
    const font = own ?? fontFor(REPLACEMENT) ?? fontFor('?');
    if (!font) continue;
    const shown = own ? character : fontFor(REPLACEMENT) ? REPLACEMENT : '?';
    const last = runs.at(-1);
    if (last && last.font === font) last.text += shown;
    else runs.push({ text: shown, font });
  }
  return runs;
}
