import fc from 'fast-check';
import { type Contour, flattenContour, type Point } from '../../../../shared-types/geometry.ts';

const thousandths = (min: number, max: number) =>
  fc.integer({ min: min * 1000, max: max * 1000 }).map((value) => value / 1000);
const coordinate = thousandths(0, 100);
/** From gentle arcs to more than half a circle, either way; half the edges stay straight. */
const bulge = fc.oneof(fc.constant(0), thousandths(-1.6, 1.6));

/** Closed contours of any corners and arcs: most of them cross themselves. */
export const wildContour: fc.Arbitrary<Contour> = fc.array(fc.record({ x: coordinate, y: coordinate, bulge }), {
  minLength: 3,
  maxLength: 7,
});

/** Contours round a middle, their corners in order of angle: many of them do not cross themselves. */
export const tameContour: fc.Arbitrary<Contour> = fc
  .tuple(
    coordinate,
    coordinate,
    fc.array(fc.record({ radius: thousandths(5, 40), bend: bulge }), {
      minLength: 3,
      maxLength: 9,
    }),
  )
  .map(([x, y, spokes]) =>
    spokes.map(({ radius, bend }, index) => {
      const angle = (index / spokes.length) * 2 * Math.PI;
      return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle), bulge: bend / 3 };
    }),
  );

/** The brute force: arcs cut into chords, every pair of chords tried. Gives the pairs of edges that cross, 'i j'. */
export function crossingsByForce(contour: Contour, toleranceMm: number): string[] {
  const pieces = contour.flatMap((corner, index) => {
    const next = contour[(index + 1) % contour.length];
    const chords = flattenContour([corner, { x: next.x, y: next.y }], toleranceMm);
    return chords.map((a, at) => ({ a, b: chords[at + 1] ?? next, index }));
  });
  const pairs = new Set<string>();
  for (let i = 0; i < pieces.length; i++)
    for (let j = i + 1; j < pieces.length; j++) {
      if (pieces[i].index === pieces[j].index) continue;
      if (cross(pieces[i].a, pieces[i].b, pieces[j].a, pieces[j].b)) pairs.add(`${pieces[i].index} ${pieces[j].index}`);
    }
  return [...pairs].sort();
}

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a.x, b.x) < Math.min(c.x, d.x) || Math.max(c.x, d.x) < Math.min(a.x, b.x)) return false;
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
