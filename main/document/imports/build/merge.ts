import type { PlacedMm } from '../register/register.ts';

export interface MergedPlacements {
  readonly placements: readonly PlacedMm[];
  /** Rows that repeat a part of another file at the same place. */
  readonly repeated: number;
  /** References that stand for more than one part; the further ones were numbered. */
  readonly renamed: readonly string[];
  /** The same references with all the names that their parts got. */
  readonly doubles: ReadonlyMap<string, readonly string[]>;
}

const SAME_PLACE_MM = 0.02;
const MAX_REFDES = 64;

/**
 * One list without double references: the same part listed by two files counts once; a reference that stands for
 * parts at different places keeps its name at the first and gets a number at the others, so that none is lost.
 */
export function mergePlacements(all: readonly PlacedMm[]): MergedPlacements {
  const seen = new Map<string, PlacedMm[]>();
  const taken = new Set(all.map(({ refdes }) => refdes.slice(0, MAX_REFDES)));
  const placements: PlacedMm[] = [];
  const doubles = new Map<string, string[]>();
  let repeated = 0;
  for (const one of all) {
    const same = seen.get(one.refdes);
    if (same?.some((other) => other.file !== one.file && samePlace(other, one))) {
      repeated++;
      continue;
    }
    if (same) {
      same.push(one);
      const refdes = freeName(one.refdes, taken);
      doubles.set(one.refdes, [...(doubles.get(one.refdes) ?? [one.refdes.slice(0, MAX_REFDES)]), refdes]);
      placements.push({ ...one, refdes });
    } else {
      seen.set(one.refdes, [one]);
      placements.push(one.refdes.length > MAX_REFDES ? { ...one, refdes: one.refdes.slice(0, MAX_REFDES) } : one);
    }
  }
  return { placements, repeated, renamed: [...doubles.keys()], doubles };
}

function samePlace(a: PlacedMm, b: PlacedMm): boolean {
  return a.side === b.side && Math.abs(a.x - b.x) <= SAME_PLACE_MM && Math.abs(a.y - b.y) <= SAME_PLACE_MM;
}

function freeName(refdes: string, taken: Set<string>): string {
  for (let number = 2; ; number++) {
    const suffix = `(${number})`;
    const name = refdes.slice(0, MAX_REFDES - suffix.length) + suffix;
    if (taken.has(name)) continue;
    taken.add(name);
    return name;
  }
}
