import type { Part } from '../../board.ts';
import { bodyHolds, flatBody } from './overlap-depth.ts';
import { type Overlap, overlapsOf } from './overlaps.ts';
import type { HealthEntry } from './types.ts';

/**
 * Bodies that reach into each other by less than this are not told, mm. Data sheets give chip bodies to +-0.1 to 0.2 mm
 * (from memory), so that tight rows that are quite right reach into each other by some hundredths.
 */
export const OVERLAP_MM = 0.1;

/** A body that holds the centres of so many smaller ones lies over them (a can, a heat sink, a tall connector): one line, not many. */
export const LIES_OVER = 3;

/** The smallest chip in use measures 0.25 x 0.125 mm (size 008004, from memory): nothing is smaller than this, mm. */
export const SMALLEST_MM = 0.1;

/** Taller than this no part comes under a nozzle, mm (assumption of ours). */
export const TALLEST_MM = 80;

/** Flat things without a body to stand in the way. */
const FLAT: ReadonlySet<string> = new Set(['mark-on-board', 'test-point']);
export const hasBody = (part: Part): boolean => part.fitted && !FLAT.has(part.class);

/** Overlaps of fitted bodies on one side, and bodies that lie over many others. */
export function overlapEntries(parts: readonly Part[]): HealthEntry[] {
  const overlaps = overlapsOf(parts.filter(hasBody), OVERLAP_MM);
  const under = partsUnder(overlaps);
  const over = [...under].filter(([, list]) => list.length >= LIES_OVER);
  const large = new Set(over.map(([part]) => part));
  const pairs = overlaps.filter(
    (one) => !(large.has(one.first) && inside(one, one.first)) && !(large.has(one.second) && inside(one, one.second)),
  );
  return [
    ...pairs
      .toSorted((a, b) => b.depthMm - a.depthMm)
      .map(
        ({ first, second, depthMm }): HealthEntry => ({
          kind: 'overlap',
          refdes: [first.refdes, second.refdes],
          figures: { depthMm },
        }),
      ),
    ...over.map(
      ([part, list]): HealthEntry => ({
        kind: 'lies-over',
        refdes: [part.refdes, ...list.map(({ refdes }) => refdes)],
        figures: { count: list.length },
      }),
    ),
  ];
}

/** True when the pair's other part is the smaller one and its centre lies in `large`. */
function inside({ first, second }: Overlap, large: Part): boolean {
  const other = first === large ? second : first;
  return areaOf(other) < areaOf(large) && bodyHolds(flatBody(large), other);
}

const areaOf = (part: Part): number => part.package.lengthMm * part.package.widthMm;

function partsUnder(overlaps: readonly Overlap[]): Map<Part, Part[]> {
  const under = new Map<Part, Part[]>();
  for (const overlap of overlaps) {
    for (const large of [overlap.first, overlap.second]) {
      if (!inside(overlap, large)) continue;
      const other = overlap.first === large ? overlap.second : overlap.first;
      const list = under.get(large);
      if (list) list.push(other);
      else under.set(large, [other]);
    }
  }
  return under;
}

/** Bodies that no part has: nearly nothing, longer than the board, or absurdly tall. */
export function bodyEntries(parts: readonly Part[], boardDiagonalMm: number): HealthEntry[] {
  return parts.filter(hasBody).flatMap((part): HealthEntry[] => {
    const why = oddBody(part, boardDiagonalMm);
    const { lengthMm, widthMm, heightMm } = part.package;
    return why
      ? [{ kind: 'body-odd', refdes: [part.refdes], figures: { why, lengthMm, widthMm, heightMm: heightMm ?? 0 } }]
      : [];
  });
}

function oddBody({ package: { lengthMm, widthMm, heightMm } }: Part, boardDiagonalMm: number): string | null {
  if (Math.min(lengthMm, widthMm) < SMALLEST_MM) return 'small';
  if (Math.max(lengthMm, widthMm) > boardDiagonalMm) return 'large';
  if (heightMm !== null && heightMm > TALLEST_MM) return 'tall';
  return heightMm !== null && heightMm < SMALLEST_MM ? 'flat' : null;
}

/** References that only case or blanks tell apart: people take them for one. */
export function nameEntries(parts: readonly Part[]): HealthEntry[] {
  const groups = new Map<string, string[]>();
  for (const { refdes } of parts) {
    const plain = refdes.replace(/\s+/g, '').toUpperCase();
    groups.set(plain, [...(groups.get(plain) ?? []), refdes]);
  }
  return [...groups.values()].flatMap((refdes): HealthEntry[] =>
    refdes.length > 1 ? [{ kind: 'same-name', refdes, figures: { count: refdes.length } }] : [],
  );
}
