import { type GuessReason, guessReasonWords } from '../words/library.ts';
import { readRefdes } from './guess/by-refdes.ts';
import { readChipName } from './guess/chip-names.ts';
import { FAMILIES, type Family, LATE_FAMILIES } from './guess/families.ts';
import {
  contextOf,
  type GuessInput,
  type NameContext,
  type Reading,
  type ReadSize,
  rectangle,
} from './guess/reading.ts';
import { readStandardName } from './guess/standard-names.ts';
import type { PartGuess } from './library-types.ts';
import { findPackage } from './packages.ts';

export type { GuessInput } from './guess/reading.ts';

const NOTHING: Reading = { classId: 'unknown', size: null, reason: { code: 'nothing' } };
const NOT_ARRAYS = new Set(['connector-unknown', 'qfp', 'so', 'test-point', 'metal-hardware', 'module-on-connector']);

function readLibraryName({ packageName }: NameContext): Reading | null {
  const one = findPackage(packageName);
  // Only as the library writes it: 'C0603' of a placement file may be a metric code.
  if (!one || one.name.toUpperCase() !== packageName.trim().toUpperCase()) return null;
  const { shape, lengthMm, widthMm, heightMm, classId, name } = one;
  return { classId, size: { shape, lengthMm, widthMm, heightMm }, reason: { code: 'library', name } };
}

function readFamilies(families: readonly Family[], context: NameContext): Reading | null {
  for (const family of families) {
    const match = family.pattern.exec(context.name);
    if (!match) continue;
    const classId = typeof family.classId === 'string' ? family.classId : family.classId(match, context);
    const size = family.size?.(match, context) ?? null;
    return { classId, size, reason: { code: 'name', fragment: match[0].replace(/^[_\-. ]+|[_\-. ]+$/g, '') } };
  }
  return null;
}

/** A grid of pads of at most 1.5 mm pitch, at least 3 x 3, is an array whatever its name says of its maker. */
function gridReading(context: NameContext, named: Reading | null): Reading | null {
  const { padGrid } = context;
  if (!padGrid || Math.min(padGrid.columns, padGrid.rows) < 3 || padGrid.pitchMm > 1.5) return null;
  if (named && NOT_ARRAYS.has(named.classId)) return null;
  const { columns, rows, pitchMm } = padGrid;
  const classId = pitchMm <= 0.4 && Math.max(columns, rows) <= 12 ? 'csp' : 'bga';
  return { classId, size: bodyOfGrid(columns, rows, pitchMm), reason: { code: 'grid', columns, rows, pitchMm } };
}

const ARRAYS = new Set(['bga', 'bga-lidded', 'csp', 'lga', 'flash-memory']);

/** A full array reaches about 0.3 mm past the pitch at each edge; to the half millimetre. */
function bodyOfGrid(columns: number, rows: number, pitchMm: number): ReadSize {
  const side = (count: number) => Math.max(0.5, Math.round((count * pitchMm + 0.6) * 2) / 2);
  return rectangle(side(columns), side(rows));
}

/** Turns the size so that its long side lies along the long side of the pads. */
function oriented(size: ReadSize, bodyMm: GuessInput['bodyMm']): ReadSize {
  if (!bodyMm || size.lengthMm === size.widthMm) return size;
  const padsLieAlong = bodyMm.lengthMm >= bodyMm.widthMm;
  const sizeLiesAlong = size.lengthMm >= size.widthMm;
  const clear = Math.max(bodyMm.lengthMm, bodyMm.widthMm) > 1.15 * Math.min(bodyMm.lengthMm, bodyMm.widthMm);
  return !clear || padsLieAlong === sizeLiesAlong ? size : { ...size, lengthMm: size.widthMm, widthMm: size.lengthMm };
}

/** Packages that a serial memory comes in. */
const MEMORY_PACKAGES = new Set(['so', 'qfn', 'sot']);
/** Type numbers of serial memories: 24 (two-wire), 25 (four-wire), 93 (three-wire), with letters before and behind. */
const SERIAL_MEMORY =
  /(?<![A-Z0-9])[A-Z]{0,3}(?:24(?:A?A|C|LC|FC|CW)\d{2,4}|25(?:Q|QX|X|LC|LP|L|V|WP|WQ|F|P|PE|SF|A?A)\d{2,4}|93(?:C|LC|AA)\d{2})(?![0-9])/;

/** Words in the value that change the class: a memory that holds data, a thermistor. */
function byValue(reading: Reading, value: string): Reading {
  const upper = value.toUpperCase();
  const fragment = /E-?MMC|UFS|NAND/.exec(upper)?.[0];
  if (fragment && ARRAYS.has(reading.classId)) return { ...reading, classId: 'flash-memory' };
  const memory = SERIAL_MEMORY.exec(upper)?.[0] ?? /SERIAL FLASH|SPI FLASH|EEPROM/.exec(upper)?.[0];
  if (memory && MEMORY_PACKAGES.has(reading.classId))
    return { ...reading, classId: 'serial-memory', reason: { code: 'value', fragment: memory } };
  const ntc = /NTC/.exec(upper)?.[0];
  if (ntc && reading.classId === 'chip-resistor')
    return { ...reading, classId: 'ntc', reason: { code: 'value', fragment: ntc } };
  return reading;
}

/** Like guessPart, with the reason as a code and its figures. */
export function guessWithReason(input: GuessInput): Omit<PartGuess, 'reason'> & { reason: GuessReason } {
  const context = contextOf(input);
  const named =
    readLibraryName(context) ??
    readStandardName(context) ??
    readFamilies(FAMILIES, context) ??
    readChipName(context) ??
    readFamilies(LATE_FAMILIES, context);
  const grid = named && ARRAYS.has(named.classId) ? null : gridReading(context, named);
  const reading = byValue(grid ?? named ?? readRefdes(context) ?? NOTHING, input.value);
  const fromGrid =
    ARRAYS.has(reading.classId) && input.padGrid
      ? bodyOfGrid(input.padGrid.columns, input.padGrid.rows, input.padGrid.pitchMm)
      : null;
  const read = grid ? (named?.size ?? reading.size) : reading.size;
  const size = read ?? fromGrid ?? (input.bodyMm && rectangle(input.bodyMm.lengthMm, input.bodyMm.widthMm));
  return { classId: reading.classId, reason: reading.reason, package: size && oriented(size, input.bodyMm) };
}

/**
 * Class and body of a part, read out of its package name, pads, value and designator, in this order of trust:
 * a library name, an IPC-7351 name, a pad grid, a family name, a chip code, the designator. A guess that the user
 * sees, with its reason in plain words, and can override; what nothing tells becomes the cautious class 'unknown'.
 * Sizes in mm; `package` is null when neither name nor pads give a size.
 */
export function guessPart(input: GuessInput): PartGuess {
  const guess = guessWithReason(input);
  return { ...guess, reason: guessReasonWords(guess.reason) };
}
