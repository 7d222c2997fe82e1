import type { GuessReason } from '../../words/library.ts';

/** What is known about a part before its class is: words and sizes out of a placement, netlist or drawing. */
export type GuessInput = {
  refdes: string;
  packageName: string;
  value: string;
  pinCount: number | null;
  /** Extent of the body, or of its pads where only they are known, mm. */
  bodyMm: { lengthMm: number; widthMm: number } | null;
  /** Set when the pads fill a regular grid. */
  padGrid?: { columns: number; rows: number; pitchMm: number } | null;
};

export type ReadSize = {
  shape: 'rectangle' | 'round';
  lengthMm: number;
  widthMm: number;
  heightMm: number | null;
};

/** What one rule reads out of the input; the size where the rule knows it. */
export type Reading = { classId: string; size: ReadSize | null; reason: GuessReason };

/** The package name in capitals with the words apart: what the rules match against. */
export type NameContext = GuessInput & { name: string; prefix: string };

export function contextOf(input: GuessInput): NameContext {
  const prefix = /^[A-Z]+/.exec(input.refdes.toUpperCase())?.[0] ?? '';
  return { ...input, name: input.packageName.toUpperCase().replace(/\s+/g, ' ').trim(), prefix };
}

const hundredth = (mm: number): number => Math.round(mm * 100) / 100;

export const rectangle = (lengthMm: number, widthMm: number, heightMm: number | null = null): ReadSize => ({
  shape: 'rectangle',
  lengthMm: hundredth(lengthMm),
  widthMm: hundredth(widthMm),
  heightMm: heightMm === null ? null : hundredth(heightMm),
});

export const round = (diameterMm: number, heightMm: number | null = null): ReadSize => ({
  shape: 'round',
  lengthMm: diameterMm,
  widthMm: diameterMm,
  heightMm,
});

const plausible = (mm: number): boolean => mm >= 0.2 && mm <= 120;

/**
 * Body size written in a name, mm: '5x5mm', '9.0x13.0', '2900X1600X1450' (micrometres, with the height).
 * The name is in capitals. Null where none is written.
 */
export function sizeInName(name: string): ReadSize | null {
  const triple = /(?<![0-9])(\d{3,5})X(\d{3,5})(?:X(\d{3,5}))?(?![0-9])/.exec(name);
  if (triple) {
    // Three digits are hundredths of a millimetre, four and five are micrometres.
    const scale = triple[1].length === 3 ? 100 : 1000;
    const [length, width, height] = triple.slice(1).map((text) => (text ? Number(text) / scale : null));
    if (length && width && plausible(length) && plausible(width)) return rectangle(length, width, height);
  }
  // Not after P (pitch), D (diameter) or EP (exposed pad): those are no bodies. A third figure is the height.
  const written = /(?<![A-Z0-9.])(?:W)?(\d+(?:\.\d+)?)(?:MM)?X(\d+(?:\.\d+)?)(?:X(\d+(?:\.\d+)?))?(?![0-9])/g;
  for (const match of name.matchAll(written)) {
    const [length, width] = [Number(match[1]), Number(match[2])];
    // '1X06' and '2X10' count pins: a leading zero or two whole numbers with no unit after a header's name.
    if (/^0\d/.test(match[2]) || /HEADER|HDR|SOCKET|CONN/.test(name)) continue;
    if (plausible(length) && plausible(width)) return rectangle(length, width, match[3] ? Number(match[3]) : null);
  }
  return null;
}

/** A four-digit metric size such as '3225' or '7050', in tenths of a millimetre; null where none is written. */
export function tenthsInName(name: string): ReadSize | null {
  const match = /(?<![0-9])([1-9]\d)(\d{2})(?![0-9])/.exec(name);
  return match ? rectangle(Number(match[1]) / 10, Number(match[2]) / 10) : null;
}
