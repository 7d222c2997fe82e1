import { type Box, type Point, rectangleCorners, type Side } from '../../../shared-types/geometry.ts';
import type { Site } from '../../../shared-types/plan.ts';
import { turnedBox } from '../drawing/view.ts';
import { POINTS_PER_MM } from '../paper.ts';

/** Sites that one crop shows together. */
export type SiteGroup = { side: Side; sites: Site[] };

/** Two to three times is what a bench sheet is read at; smaller only where a rework area does not fit otherwise. */
const WANTED = [3, 2.5, 2];
const SMALLER = [1.5, 1, 0.75, 0.5, 0.25];
const MARGINS_MM = [14, 10, 6, 3];

type Space = { width: number; height: number };

const boxOfGroup = (sites: readonly Site[], side: Side, turnDeg: number): Box =>
  turnedBox(
    sites.flatMap((site) => rectangleCorners(site.area)),
    side,
    turnDeg,
  );

const fits = (box: Box, scale: number, margin: number, space: Space): boolean =>
  (box.maxX - box.minX + 2 * margin) * scale * POINTS_PER_MM <= space.width &&
  (box.maxY - box.minY + 2 * margin) * scale * POINTS_PER_MM <= space.height;

/** The scale a crop of these sites is drawn at: a wide margin goes before a large scale, two times before less. */
export function cropScale(sites: readonly Site[], side: Side, turnDeg: number, space: Space): number {
  const box = boxOfGroup(sites, side, turnDeg);
  for (const margin of MARGINS_MM) {
    const scale = WANTED.find((one) => fits(box, one, margin, space));
    if (scale) return scale;
  }
  return SMALLER.find((scale) => fits(box, scale, 3, space)) ?? 0.25;
}

/** Middle of the sites' rework areas as seen from `side`, view axes, mm. */
export function middleOfSites(sites: readonly Site[], side: Side, turnDeg: number): Point {
  const box = boxOfGroup(sites, side, turnDeg);
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

/** Sites of one side go into one crop while it can still be drawn at two times; otherwise each gets its own. */
export function groupSites(sites: readonly Site[], turnDeg: number, space: Space): SiteGroup[] {
  const groups: SiteGroup[] = [];
  for (const site of sites) {
    const joined = groups.find(
      (group) => group.side === site.side && fits(boxOfGroup([...group.sites, site], site.side, turnDeg), 2, 6, space),
    );
    if (joined) joined.sites.push(site);
    else groups.push({ side: site.side, sites: [site] });
  }
  return groups;
}
