/** A value as written on a drawing or in a parts list. */
export type WrittenValue = { ohms: number; tolerancePercent: number | null };

/** Letters of IEC 60062 that stand for the decimal point; L: milliohm. */
export const POINT_LETTERS: Record<string, number> = { L: -3, R: 0, K: 3, M: 6, G: 9, T: 12 };

/** Tolerance letters of IEC 60062, per cent; E to W and H, N from memory of the full table. */
export const TOLERANCE_LETTERS: Record<string, number> = {
  E: 0.005,
  L: 0.01,
  P: 0.02,
  W: 0.05,
  B: 0.1,
  C: 0.25,
  D: 0.5,
  F: 1,
  G: 2,
  H: 3,
  J: 5,
  K: 10,
  M: 20,
  N: 30,
};

/** Digits times a power of ten without the rounding of a multiplication: 4.7 and 3 give 4700. */
export const scaled = (digits: string, power: number): number => Number(`${digits || '0'}e${power}`);

/**
 * Value by the letter code of IEC 60062: a letter in the place of the decimal point, then perhaps a tolerance letter
 * ('4K7', 'R22', '10K', '0R', '4K7J'). Null where it is none. Upper and lower case are the same but for 'm': that is
 * milliohm or megohm by who wrote it, so it is left to the caller.
 */
export function letterCode(text: string): WrittenValue | null {
  const match = /^(\d{0,4})([LRKMGT])(\d{0,4})([A-Z]?)$/i.exec(text);
  if (!match) return null;
  const [, before, letter, after, tolerance] = match;
  if (before === '' && after === '') return null;
  const percent = tolerance ? TOLERANCE_LETTERS[tolerance.toUpperCase()] : null;
  if (percent === undefined) return null;
  const digits = `${before || '0'}.${after || '0'}`;
  return { ohms: scaled(digits, POINT_LETTERS[letter.toUpperCase()]), tolerancePercent: percent };
}

/** Prefixes of written units; 'm' alone is milliohm here, as in every text with units. */
const PREFIXES: Record<string, number> = { '': 0, m: -3, k: 3, K: 3, M: 6, G: 9, T: 12 };

/** '10 k', '4.7k', '4,7 K', '100', '0.22'; the unit is taken off before. */
function withPrefix(text: string): number | null {
  const match = /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*([mkKMGT]?)\s*[Rr]?$/.exec(text);
  if (!match) return null;
  const power = PREFIXES[match[2]];
  return power === undefined ? null : scaled(match[1].replace(',', '.'), power);
}

/** A tolerance written beside a value: '1%', '±5 %', '0.5 %'. */
function splitTolerance(text: string): { rest: string; percent: number | null } {
  const match = /[\s,;/(]*(?:±|\+\/?-)?\s*(\d+(?:[.,]\d+)?)\s*%\)?/.exec(text);
  if (!match) return { rest: text, percent: null };
  const rest = `${text.slice(0, match.index)} ${text.slice(match.index + match[0].length)}`.trim();
  return { rest, percent: Number(match[1].replace(',', '.')) };
}

/** Per cent from a cell: '1', '1 %', '±0,5%', or a tolerance letter of IEC 60062 ('F'); null where it is none. */
export function parseTolerance(text: string): number | null {
  const letter = TOLERANCE_LETTERS[text.trim().toUpperCase()];
  if (letter !== undefined) return letter;
  const match = /^(?:±|\+\/?-)?\s*(\d+(?:[.,]\d+)?)\s*%?$/.exec(text.trim());
  return match ? Number(match[1].replace(',', '.')) : null;
}

/**
 * A resistance as people write it, ohms: letter code, SI prefixes, plain numbers, a link ('0R', 'link', 'jumper'),
 * with or without a tolerance in per cent. Null when it is not understood. Package words after the value ('10k 0402',
 * '10k/0402') are passed over.
 */
export function parseResistance(text: string): WrittenValue | null {
  const { rest, percent } = splitTolerance(text.trim());
  const plain = rest
    .replace(/[\s/,;]+(?:R_?)?(?:01005|0201|0402|0603|0805|1206|1210|2010|2512)$/i, '')
    .replace(/\s*(?:\u03a9|\u2126|ohms?)$/i, '')
    .trim();
  if (/^(?:link|jumper|short|0r0?|0+|wire)$/i.test(plain)) return { ohms: 0, tolerancePercent: percent };
  const milli = /m/.test(plain) && !/M/.test(plain);
  const coded = milli ? null : letterCode(plain.replace(/\s+/g, ''));
  if (coded) return { ohms: coded.ohms, tolerancePercent: percent ?? coded.tolerancePercent };
  const ohms = withPrefix(plain);
  return ohms === null ? null : { ohms, tolerancePercent: percent };
}

/** True when two resistances are the same value; 0 only equals 0. */
export const sameOhms = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-6 * Math.max(a, b);
