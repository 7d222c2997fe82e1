import type { Board, Part } from '../../board.ts';
import { CHIP_SIZES, chipByInch } from '../../library/packages/chip-sizes.ts';
import type { StrapGroup, StrapTick } from '../../straps.ts';
import { parseResistance } from '../resistance.ts';

/** What stands in a position now: as ticked by the technician, else as the board drawing has it. */
export type PositionNow = {
  refdes: string;
  /** null: no part of that name on the board. */
  part: Part | null;
  fitted: boolean;
  /** As written; empty: nobody said. */
  value: string;
  /** null: the value cannot be read as a resistance. */
  ohms: number | null;
  size: string;
  ticked: boolean;
};

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 0.051;

/** Chip size of a part: by its body, else by the code in its package's name, else its body in mm. */
export function sizeOf(part: Part): string {
  const { lengthMm, widthMm, name } = part.package;
  const [long, short] = [Math.max(lengthMm, widthMm), Math.min(lengthMm, widthMm)];
  const byBody = CHIP_SIZES.find((size) => near(size.lengthMm, long) && near(size.widthMm, short));
  if (byBody) return byBody.inch;
  const code = /(?:^|[^0-9])(008004|01005|\d{4})(?![0-9])/.exec(name)?.[1];
  return code && chipByInch(code) ? code : bodyWords(long, short);
}

const bodyWords = (long: number, short: number): string =>
  `${Number(long.toFixed(2))} x ${Number(short.toFixed(2))} mm`;

/** A size as somebody wrote it ('0402', 'R0402', '1.0x0.5'), in the form of `sizeOf`. */
export function sizeFromText(text: string): string {
  const code = /(?:^|[^0-9.])(008004|01005|\d{4})(?![0-9])/.exec(text)?.[1];
  if (code && chipByInch(code)) return code;
  const body = /^\s*(\d+(?:[.,]\d+)?)\s*[x*×]\s*(\d+(?:[.,]\d+)?)\s*(?:mm)?\s*$/i.exec(text);
  if (!body) return text.trim();
  const [a, b] = [body[1], body[2]].map((figure) => Number(figure.replace(',', '.')));
  const byBody = CHIP_SIZES.find((size) => near(size.lengthMm, Math.max(a, b)) && near(size.widthMm, Math.min(a, b)));
  return byBody?.inch ?? bodyWords(Math.max(a, b), Math.min(a, b));
}

/** The position as it is now. `belongs`: value that the group gives it, taken where nobody says another. */
export function positionNow(board: Board, ticks: readonly StrapTick[], refdes: string, belongs = ''): PositionNow {
  const part = board.parts.find((one) => one.refdes === refdes) ?? null;
  const tick = ticks.find((one) => one.refdes === refdes);
  const fitted = tick ? tick.fitted : (part?.fitted ?? false);
  const value = (tick?.value || part?.value || belongs).trim();
  const ohms = parseResistance(value)?.ohms ?? parseResistance(belongs)?.ohms ?? null;
  return { refdes, part, fitted, value, ohms, size: part ? sizeOf(part) : '', ticked: tick !== undefined };
}

/** Every position of a group as it is now, in its order. */
export const positionsNow = (board: Board, ticks: readonly StrapTick[], group: StrapGroup): PositionNow[] =>
  group.positions.map((position) => positionNow(board, ticks, position.refdes, position.value));
