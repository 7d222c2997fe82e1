/** What a cell holds: numbers are written as numbers, texts are made harmless, null is an empty cell. */
export type CsvValue = string | number | null;

/**
 * Texts that a spreadsheet may take for a formula. OWASP, 'CSV Injection': = + - @ tab, carriage return, line feed and the
 * full-width forms at the beginning; ASVS 5.0, 1.2.10, adds the null character. Blanks before them are no protection.
 * An apostrophe before such a text is doubled too, so that reading back takes away just what was added.
 */
const FORMULA = /^\s*'*\s*[=+\-@\t\r\n\0\uFF1D\uFF0B\uFF0D\uFF20]/;

/**
 * A table as CSV by RFC 4180: comma, CRLF, quotes where needed. Numbers carry a decimal point and at most six decimals;
 * NaN and infinities are empty. Non-ASCII tables begin with a byte-order mark, without which spreadsheets misread them.
 */
export function csvBytes(headings: readonly string[], rows: readonly (readonly CsvValue[])[]): Uint8Array {
  const text = [headings, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: everything beyond ASCII
  const mark = /[^\x00-\x7F]/.test(text) ? '\uFEFF' : '';
  return new TextEncoder().encode(mark + text);
}

export function csvCell(value: CsvValue): string {
  if (value === null) return '';
  if (typeof value === 'number') return csvNumber(value);
  const harmless = FORMULA.test(value) ? `'${value}` : value;
  return /[",\r\n\t;]|^\s|\s$/.test(harmless) || harmless !== value ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** Never in the form 1e-7, and never '-0'. */
function csvNumber(value: number): string {
  if (!Number.isFinite(value)) return '';
  const text = value.toFixed(6).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}
