import { type Pad, padsBox } from '../pads/collect.ts';
import type { LengthWord } from '../placements/columns.ts';
import { MM_PER } from '../placements/read-placements.ts';
import type { Placement, PlacementTable } from '../placements/types.ts';
import { boxCentre, type Point } from '../plane.ts';
import { plausibleMm, UNSAID_UNITS } from './units.ts';
import { type OffsetVote, voteByPairs, voteByPlaces } from './vote.ts';

/** A placement in mm, bottom x as seen from the top, still at the placement file's own origin. */
export interface PlacedMm extends Omit<Placement, 'x' | 'y'> {
  readonly x: number;
  readonly y: number;
  /** Where the file itself draws the part's body. */
  readonly body?: PartBody;
}

/** A body in the part's own axes; pins are counted from its middle, and `middle` from the package's origin, mm. */
export interface PartBody {
  readonly middle: Point;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly pins: readonly Point[];
  readonly pin1: Point | null;
  readonly through: boolean;
}

export interface Anchors {
  /** Pads by reference; empty when no layer carries references. */
  readonly pads: ReadonlyMap<string, readonly Pad[]>;
  /** Midpoints of pad pairs of layers without references. */
  readonly midpoints: { readonly top: readonly Point[]; readonly bottom: readonly Point[] };
}

export interface RegisterChoices {
  readonly unit?: LengthWord;
  readonly bottomX?: 'asSeenFromTop' | 'negated';
  readonly unitMayBeChosen?: boolean;
}

export interface Registration {
  readonly placements: readonly PlacedMm[];
  /** Unit taken for tables that do not say theirs; null when all do. */
  readonly assumedUnit: LengthWord | null;
  readonly unitBy: 'said' | 'pads' | 'size' | 'chosen' | 'none';
  readonly bottomNegated: boolean;
  readonly bottomBy: 'pads' | 'signs' | 'usual' | 'chosen';
  /** Offset from the placement file's origin to the Gerber origin; null when no pads tell it; 'own': one origin for both. */
  readonly offset: (OffsetVote & { readonly by: 'references' | 'pairs' | 'own' }) | null;
}

/**
 * Brings placements to mm and finds their offset to the Gerber files: every open question (unit, negated bottom x) is tried
 * and the answer that brings most parts onto their pads wins. Null when the unit is not said and nothing tells it, unless it may be chosen afterwards.
 */
export function register(
  tables: readonly PlacementTable[],
  anchors: Anchors,
  choices: RegisterChoices,
): Registration | null {
  const unsaid = tables.some((table) => table.mmPerUnit === null && table.placements.length > 0);
  const units = !unsaid ? [null] : choices.unit ? [choices.unit] : UNSAID_UNITS;
  const signs = bottomSigns(tables);
  const hasBottom = tables.some(({ placements }) => placements.some(({ side }) => side === 'bottom'));
  const flips = choices.bottomX ? [choices.bottomX === 'negated'] : hasBottom ? [false, true] : [false];
  let best: (Registration & { score: number }) | null = null;
  for (const unit of units) {
    for (const bottomNegated of flips) {
      const placements = toMm(tables, unit, bottomNegated);
      const offset = findOffset(placements, anchors);
      const score = (offset?.votes ?? 0) * 4 + (plausibleMm(placements) ? 2 : 0) + (bottomNegated === signs ? 1 : 0);
      const byPads = offset !== null;
      const candidate = {
        placements,
        assumedUnit: unit,
        unitBy:
          unit === null
            ? ('said' as const)
            : choices.unit
              ? ('chosen' as const)
              : byPads
                ? ('pads' as const)
                : ('size' as const),
        bottomNegated,
        bottomBy: choices.bottomX
          ? ('chosen' as const)
          : byPads
            ? ('pads' as const)
            : signs
              ? ('signs' as const)
              : ('usual' as const),
        offset,
        score,
      };
      if (score > (best?.score ?? -1)) best = candidate;
    }
  }
  if (best?.unitBy !== 'size' || plausibleMm(best.placements)) return best;
  return choices.unitMayBeChosen ? { ...best, unitBy: 'none' } : null;
}

/** True when the signs say that bottom x is negated: all of it at or below zero while all of the top's is at or above. */
function bottomSigns(tables: readonly PlacementTable[]): boolean {
  const all = tables.flatMap(({ placements }) => placements);
  const bottom = all.filter(({ side }) => side === 'bottom');
  const top = all.filter(({ side }) => side === 'top');
  return bottom.length > 0 && top.length > 0 && bottom.every(({ x }) => x <= 0) && top.every(({ x }) => x >= 0);
}

function toMm(tables: readonly PlacementTable[], unit: LengthWord | null, bottomNegated: boolean): PlacedMm[] {
  return tables.flatMap(({ placements, mmPerUnit }) => {
    const scale = mmPerUnit ?? (unit ? MM_PER[unit] : 1);
    return placements.map((placement) => {
      const across = bottomNegated && placement.side === 'bottom' ? -scale : scale;
      const map = ({ x, y }: Point): Point => ({ x: x * across, y: y * scale });
      const { heightUnits, ...rest } = placement;
      const heightMm = heightUnits === undefined ? placement.heightMm : heightUnits * scale;
      return { ...rest, ...map(placement), heightMm, pad1: placement.pad1 && map(placement.pad1) };
    });
  });
}

const MIN_VOTES = 4;
const MIN_SHARE = 0.2;

function findOffset(placements: readonly PlacedMm[], anchors: Anchors): Registration['offset'] {
  const pairs = placements.flatMap((placement) => {
    const pads = anchors.pads.get(placement.refdes);
    return pads ? [{ from: placement, to: boxCentre(padsBox(pads)) }] : [];
  });
  const byReference = voteByPairs(pairs);
  if (byReference && trusted(byReference)) return { ...byReference, by: 'references' };
  const onSide = (side: 'top' | 'bottom') => ({
    from: placements.filter((placement) => placement.side === side),
    to: anchors.midpoints[side],
  });
  const byPlace = voteByPlaces([onSide('top'), onSide('bottom')].filter(({ to }) => to.length > 0));
  return byPlace && trusted(byPlace) ? { ...byPlace, by: 'pairs' } : null;
}

function trusted({ votes, of }: OffsetVote): boolean {
  return votes >= Math.min(MIN_VOTES, of) && votes >= of * MIN_SHARE && votes > 0;
}
