/** One pair of a DXF file: a group code and its value, both on lines of their own. */
export interface Tag {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** Code of a last line without a value: the text was cut there. */
export const CUT = Number.POSITIVE_INFINITY;

/** Pairs in their order, one after another without a list of all. A code that is no number ends them with `code` NaN. */
export function* tagsOf(text: string): Generator<Tag, void> {
  let at = 0;
  let line = 1;
  const next = (): string | null => {
    if (at >= text.length) return null;
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    const from = at;
    at = end + 1;
    return text.slice(from, end).trim();
  };
  for (let code = next(); code !== null; code = next()) {
    const value = next();
    if (value === null) {
      if (code !== '') yield { code: CUT, value: '', line };
      return;
    }
    yield { code: /^-?\d{1,5}$/.test(code) ? Number(code) : Number.NaN, value, line };
    line += 2;
  }
}
