import type { Point, Side } from '../../../shared-types/geometry.ts';
import { nearestPin1, pin1Places } from '../../../shared-types/rules/pin1.ts';
import { boardToOwn, wholeTurn } from '../../editing/part-poses.ts';
import { hasNoWay, type Placing, placedPart } from '../../editing/placing.ts';

/** Parts of two ends that look alike, so that no mark is of use. */
const NO_MARK = /^(chip-|melf-resistor|ntc|power-inductor)/;

/**
 * How a part lies that is pulled from its middle towards a point of the board: a part of two ends turns its pin 1 there, in
 * quarters or, when free, by 15 and whole degrees; of another the corner there becomes pin 1. Null: nothing changes.
 */
export function pulledTowards(
  placing: Placing,
  at: Point,
  to: Point,
  side: Side,
  free: boolean,
): Partial<Placing> | null {
  const part = placedPart(placing, '', at, side);
  const places = part ? pin1Places(part) : [];
  if (!part || hasNoWay(part, places)) return null;
  if (places.length > 2) return changed(placing, { pin1: nearestPin1(part, boardToOwn(part, to)) });
  const along = steppedWay((Math.atan2(to.y - at.y, to.x - at.x) * 180) / Math.PI, free);
  if (NO_MARK.test(part.class)) return changed(placing, { turn: ((along % 180) + 180) % 180, pin1: null });
  return changed(placing, { turn: wholeTurn(along + 180), pin1: places[0] });
}

const NEAR_DEG = 4;

/** Quarters; or whole degrees, held to steps of 15 where one is near. */
function steppedWay(degrees: number, free: boolean): number {
  if (!free) return 90 * Math.round(degrees / 90);
  const step = 15 * Math.round(degrees / 15);
  return Math.abs(step - degrees) <= NEAR_DEG ? step : Math.round(degrees);
}

function changed(placing: Placing, fields: Partial<Pick<Placing, 'turn' | 'pin1'>>): Partial<Placing> | null {
  const samePin = fields.pin1?.x === placing.pin1?.x && fields.pin1?.y === placing.pin1?.y;
  return samePin && (fields.turn ?? placing.turn) === placing.turn ? null : fields;
}
