import type { Bill, BillLine } from '../bill/read-bill.ts';
import type { PlacedMm } from '../register/register.ts';

/** What one bill of materials did to the placements. */
export interface BillMerge {
  readonly file: string;
  readonly matched: number;
  readonly placed: number;
  /** Values and package names that it gave. */
  readonly values: number;
  readonly packages: number;
  /** Placed with another value than the bill's. */
  readonly differing: readonly string[];
  /** To be fitted by the bill, but without a position. */
  readonly missing: readonly string[];
  /** Placed, but not in the bill. */
  readonly unlisted: readonly string[];
}

/** Placements with what the bills say of them: values and packages where none were, and empty positions. */
export function applyBills(
  given: readonly PlacedMm[],
  bills: readonly Bill[],
): { placements: readonly PlacedMm[]; billed: BillMerge[] } {
  let placements = given;
  const billed: BillMerge[] = [];
  for (const bill of bills) {
    billed.push(describeMerge(placements, bill));
    placements = placements.map((placement) => withLine(placement, bill.lines.get(placement.refdes)));
  }
  return { placements, billed };
}

function withLine(placement: PlacedMm, line: BillLine | undefined): PlacedMm {
  if (line === undefined) return placement;
  return {
    ...placement,
    value: placement.value || line.value,
    packageName: placement.packageName || line.packageName,
    fitted: placement.fitted && line.fitted,
  };
}

function describeMerge(placements: readonly PlacedMm[], { file, lines }: Bill): BillMerge {
  const pairs = placements.flatMap((placement) => {
    const line = lines.get(placement.refdes);
    return line ? [{ placement, line }] : [];
  });
  const placed = new Set(placements.map(({ refdes }) => refdes));
  return {
    file,
    matched: pairs.length,
    placed: placements.length,
    values: pairs.filter(({ placement, line }) => placement.value === '' && line.value !== '').length,
    packages: pairs.filter(({ placement, line }) => placement.packageName === '' && line.packageName !== '').length,
    differing: pairs.flatMap(({ placement, line }) => (sayOtherwise(placement, line) ? [placement.refdes] : [])),
    missing: [...lines].flatMap(([refdes, line]) => (line.fitted && !placed.has(refdes) ? [refdes] : [])),
    unlisted: [...new Set(placements.flatMap(({ refdes }) => (lines.has(refdes) ? [] : [refdes])))],
  };
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s,;_-]/g, '');

/** Values that hold each other say the same: '100n' and '100nF 16V'. */
export function sayOtherwise(one: { readonly value: string }, other: { readonly value: string }): boolean {
  const [a, b] = [plain(one.value), plain(other.value)];
  return a !== '' && b !== '' && !a.includes(b) && !b.includes(a);
}
