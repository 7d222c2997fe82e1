import type { Pad } from '../pads/collect.ts';
import type { PlacedMm } from '../register/register.ts';

/** References that stand for drawings on the board, and package names that say so. Common practice, no source. */
const REFERENCE = /^(G|REF)\*+$|^LOGO[-_]?\d*$/i;
const PACKAGE = /(^|[^a-z])logo([^a-z]|$)/i;

/** Placements of logos and other drawings, which carry no pads, apart from the parts. */
export function partLegend(
  all: readonly PlacedMm[],
  pads: ReadonlyMap<string, readonly Pad[]>,
): { placements: readonly PlacedMm[]; legend: readonly PlacedMm[] } {
  const isLegend = ({ refdes, packageName, body }: PlacedMm): boolean =>
    (REFERENCE.test(refdes) || PACKAGE.test(packageName)) && !pads.has(refdes) && !body?.pins.length;
  const legend = all.filter(isLegend);
  return legend.length > 0 ? { placements: all.filter((one) => !isLegend(one)), legend } : { placements: all, legend };
}
