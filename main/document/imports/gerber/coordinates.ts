import type { Point } from '../plane.ts';
import { type CoordinateFormat, note, type ReaderState, unitScale } from './state.ts';

/** The fields of one word: `G01X100Y200I5J5D01`. */
export interface WordFields {
  readonly codes: readonly { readonly letter: string; readonly value: string }[];
}

const FIELD = /([A-Z])([+-]?[\d.]*)/g;

/** Splits a word into letter-number fields; null when anything else stands in it. */
export function splitWord(word: string): WordFields | null {
  const text = word.replace(/\s+/g, '').toUpperCase();
  const codes: { letter: string; value: string }[] = [];
  let length = 0;
  for (const match of text.matchAll(FIELD)) {
    codes.push({ letter: match[1], value: match[2] });
    length += match[0].length;
  }
  return length === text.length && codes.length > 0 ? { codes } : null;
}

const FALLBACK: CoordinateFormat = { integers: 2, decimals: 4, omitted: 'leading' };

/** A coordinate in mm, NaN when it is no number. A decimal point, though not allowed, is taken at its word. */
export function coordinate(state: ReaderState, value: string, axis: 'x' | 'y', line: number): number {
  let format = axis === 'x' ? state.formatX : state.formatY;
  if (format === null) {
    note(state, 'formatAssumed', '2.4', line);
    format = FALLBACK;
    state.formatX ??= FALLBACK;
    state.formatY ??= FALLBACK;
  }
  const scale = unitScale(state, line);
  if (value.includes('.')) return Number(value) * scale;
  const match = /^([+-]?)(\d+)$/.exec(value);
  if (!match) return Number.NaN;
  const total = format.integers + format.decimals;
  const digits = format.omitted === 'trailing' ? match[2].padEnd(total, '0') : match[2];
  const size = (Number(digits) / 10 ** format.decimals) * scale;
  return match[1] === '-' ? -size : size;
}

export interface ReadPoint {
  readonly point: Point;
  readonly offset: Point | null;
}

/** The end point of a word (missing axes keep their value) and its arc offset, if any. */
export function readPoint(state: ReaderState, { codes }: WordFields, line: number): ReadPoint {
  let { x, y } = state.point;
  let offset: { x: number; y: number } | null = null;
  for (const { letter, value } of codes) {
    if (letter !== 'X' && letter !== 'Y' && letter !== 'I' && letter !== 'J') continue;
    const axis = letter === 'X' || letter === 'I' ? 'x' : 'y';
    const number = coordinate(state, value, axis, line);
    if (!Number.isFinite(number)) {
      note(state, 'badNumber', `${letter}${value}`, line);
      continue;
    }
    if (letter === 'X') x = state.incremental ? x + number : number;
    else if (letter === 'Y') y = state.incremental ? y + number : number;
    else {
      offset ??= { x: 0, y: 0 };
      offset[axis] = number;
    }
  }
  return { point: { x, y }, offset };
}
