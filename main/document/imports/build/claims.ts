import { type Claimant, type ClaimedLand, claimPads } from '../pads/claim.ts';
import { applyTurn, type TurnRule } from '../pads/turn.ts';
import type { Point } from '../plane.ts';
import type { PlacedMm } from '../register/register.ts';
import type { Layers } from './layers.ts';
import { sizeByName } from './parts.ts';

/** Pads that parts claim on layers without references, side by side. Empty where the offset to those layers is not known. */
export function claimsOf(
  placements: readonly PlacedMm[],
  { unnamed }: Layers,
  offset: Point & { readonly by: string },
  rule: TurnRule,
): Map<string, ClaimedLand> {
  if (offset.by === 'none') return new Map();
  const claimants = (side: 'top' | 'bottom') =>
    placements
      .filter((placement) => placement.side === side)
      .map(
        (placement): Claimant => ({
          refdes: placement.refdes,
          packageName: placement.packageName,
          side,
          x: placement.x + offset.x,
          y: placement.y + offset.y,
          turn: applyTurn(placement.rotation, side, rule),
          nameSize: sizeByName(placement),
        }),
      );
  return new Map([...claimPads(claimants('top'), unnamed.top), ...claimPads(claimants('bottom'), unnamed.bottom)]);
}
