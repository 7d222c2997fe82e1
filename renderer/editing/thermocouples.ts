import type { TicketDocument } from '../../shared-types/plan.ts';
import type { ThermocouplePlace } from '../../shared-types/uncertainty.ts';
import { addWatchPoint, watchPointsOf } from './watch-points.ts';

/** Two beads nearer than this stand at one place, mm. */
const SAME_PLACE_MM = 1.5;

/** The places that no thermocouple of the plan stands at yet. */
export function openPlaces(document: TicketDocument, places: readonly ThermocouplePlace[]): ThermocouplePlace[] {
  const points = watchPointsOf(document);
  return places.filter(
    (place) =>
      !points.some(
        (tag) =>
          (place.refdes !== null && tag.refdes === place.refdes) ||
          (tag.side === place.side && Math.hypot(tag.x - place.x, tag.y - place.y) < SAME_PLACE_MM),
      ),
  );
}

/** The plan with a thermocouple at each of these places. */
export const placeThermocouples = (document: TicketDocument, places: readonly ThermocouplePlace[]): TicketDocument =>
  places.reduce((next, place) => addWatchPoint(next, place, place.side, place.refdes), document);
