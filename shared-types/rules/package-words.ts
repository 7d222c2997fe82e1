/** A size written in words, mm: length, width, and the height where it is written. */
export type WrittenSize = { first: number; second: number; third: number | null };

/** What somebody typed into a package field, taken apart. */
export type TypedPackage = {
  /** Words and codes in capitals, sizes left out: ['BGA', '0.8']. */
  words: string[];
  size: WrittenSize | null;
  /** The text with its figures in one form: '4.5 × 3,2' gives '4.5X3.2'. */
  plain: string;
};

const SIZE = /(?<![0-9.])(\d*\.?\d+)X(\d*\.?\d+)(?:X(\d*\.?\d+))?(?![0-9.])/;

/** Decimal commas, multiplication signs, spaces round the x and units, in one form and in capitals. */
function plainText(text: string): string {
  return text
    .toUpperCase()
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/(\d)\s*MM\b/g, '$1')
    .replace(/(\d)\s*[X×*]\s*(?=[\d.])/g, '$1X')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Takes a typed package apart: 'bga 17 x 17 0.8' gives words BGA and 0.8 and the size 17 by 17. */
export function readTyped(text: string): TypedPackage {
  const plain = plainText(text);
  const match = SIZE.exec(plain);
  // '4x0402' names four chips in one body, and '2x10' with whole, unequal figures may count pins: the words keep them.
  const size = match && !/^0\d/.test(match[2]) ? sizeOf(match) : null;
  const rest = size && match ? plain.replace(match[0], ' ') : plain;
  return { words: rest.split(/[\s_\-/]+/).filter(Boolean), size, plain };
}

function sizeOf([, first, second, third]: RegExpExecArray): WrittenSize | null {
  const size = { first: Number(first), second: Number(second), third: third === undefined ? null : Number(third) };
  const plausible = (mm: number) => mm >= 0.1 && mm <= 200;
  return plausible(size.first) && plausible(size.second) ? size : null;
}
