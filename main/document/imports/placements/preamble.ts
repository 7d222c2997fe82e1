import { type LengthWord, unitWord } from './columns.ts';

const UNIT_PATTERNS = [
  /\bu*units?\b(?:\s+(?:used|are|is))?\s*[:=]?\s*["']?([a-zµμ]+)/i,
  /\bx\s*[,/&]?\s*(?:and\s+)?y\s+(?:are\s+)?in\s+([a-zµμ]+)/i,
  /\b(?:coordinates?|dimensions?|positions?|lengths?)\b.*?\bin\s+([a-zµμ]+)/i,
  /\((mm|mils?|inch(?:es)?)\)/i,
];

export interface PreambleUnit {
  readonly unit: LengthWord;
  /** The line it stands in, as written. */
  readonly text: string;
}

/** The unit that a preamble or a comment names: `Units used: mil`, `## Unit = mm`, `UUNITS = MILS`, `X,Y in mils`. */
export function preambleUnit(lines: readonly string[]): PreambleUnit | null {
  for (const pattern of UNIT_PATTERNS) {
    for (const line of lines) {
      const match = pattern.exec(line);
      const unit = match ? unitWord(match[1]) : null;
      if (unit) return { unit, text: line.replace(/^[\s#*;/]+/, '').trim() };
    }
  }
  return null;
}

/** `## Side : top`: the side of a file that has no side column. */
export function preambleSide(lines: readonly string[]): 'top' | 'bottom' | null {
  for (const line of lines) {
    const match = /\bside\s*[:=]\s*(top|bottom|bot|front|back)\b/i.exec(line);
    if (match) return /^(top|front)$/i.test(match[1]) ? 'top' : 'bottom';
  }
  return null;
}
