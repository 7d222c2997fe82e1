/** Millimetres of the units of CSS Values 3, section 6.2; a pixel is 1/96 inch. */
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

export const MM_PER_PIXEL = 25.4 / 96;

export interface Length {
  readonly value: number;
  /** In lower case; empty for a plain number. */
  readonly unit: string;
}

/** '80mm', '3.2in', '300'; null for anything else. */
export function parseLength(text: string | undefined): Length | null {
  const [, value, unit] = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z%]*)\s*$/i.exec(text ?? '') ?? [];
  return value === undefined ? null : { value: Number(value), unit: unit.toLowerCase() };
}

/** Millimetres of a length in a unit of real size; null for pixels, plain numbers and shares. */
export function lengthMm(length: Length | null): number | null {
  const unit = length && Object.hasOwn(MM_PER, length.unit) ? MM_PER[length.unit] : null;
  return length && unit ? length.value * unit : null;
}

/** Length in user units; `without` where there is none. Shares of the page are not read. */
export function userLength(text: string | undefined, without = 0): number {
  const length = parseLength(text);
  if (length === null || length.unit === '%') return without;
  const mm = lengthMm(length);
  return mm === null ? length.value : mm / MM_PER_PIXEL;
}
