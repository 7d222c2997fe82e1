import { type Side, turnVector } from '../geometry.ts';

/** A place for a part: centre (mm) and turn. */
export type PlacedAt = { x: number; y: number; turn: number };

/** The body that a ring goes round. */
export type RingBody = {
  x: number;
  y: number;
  turn: number;
  package: { shape: 'rectangle' | 'round'; lengthMm: number; widthMm: number };
};

export type Ring = {
  /** Parts in all, spread by the lengths of the edges; or the distance from one to the next, mm. */
  by: { count: number } | { pitchMm: number };
  /** Body to body, mm. */
  distanceMm: number;
  /** How a part's length lies to the edge. */
  lies: 'along' | 'across';
  sides: readonly Side[];
};

/** Most parts of one ring on one side. */
const MOST = 500;

/**
 * Places of parts in a ring round a body: centres on lines parallel to its edges (on a circle round a round one), the
 * corners left free. Counter-clockwise from the lower edge. `part`: size of the parts of the ring.
 */
export function ringPlaces(
  body: RingBody,
  ring: Omit<Ring, 'sides'>,
  part: { lengthMm: number; widthMm: number },
): PlacedAt[] {
  const [alongMm, deepMm] = ring.lies === 'along' ? [part.lengthMm, part.widthMm] : [part.widthMm, part.lengthMm];
  const own =
    body.package.shape === 'round'
      ? onCircle(body.package.lengthMm / 2 + ring.distanceMm + deepMm / 2, ring)
      : onEdges(body.package, ring, alongMm, deepMm);
  return own.map((place) => {
    const at = turnVector(place.x, place.y, body.turn);
    const turn = place.turn + body.turn + (ring.lies === 'along' ? 0 : 90);
    return { x: round(body.x + at.x), y: round(body.y + at.y), turn: round(((turn % 360) + 360) % 360) % 360 };
  });
}

/** Straight rows before the four edges, in the body's own axes. `turn`: direction along the edge. */
function onEdges(
  { lengthMm, widthMm }: { lengthMm: number; widthMm: number },
  { by, distanceMm }: Omit<Ring, 'sides'>,
  alongMm: number,
  deepMm: number,
): PlacedAt[] {
  const lengths = [lengthMm, widthMm, lengthMm, widthMm];
  const counts = 'count' in by ? shared(by.count, lengths) : lengths.map((edge) => byPitch(edge, by.pitchMm, alongMm));
  return lengths.flatMap((edge, side) => {
    const out = (side % 2 === 0 ? widthMm : lengthMm) / 2 + distanceMm + deepMm / 2;
    const pitch = 'count' in by ? edge / Math.max(1, counts[side]) : by.pitchMm;
    return Array.from({ length: counts[side] }, (_, index) => {
      const along = (index - (counts[side] - 1) / 2) * pitch;
      return { ...turnVector(along, -out, 90 * side), turn: 90 * side };
    });
  });
}

/** As many as stand before an edge at this pitch without passing its ends. */
const byPitch = (edgeMm: number, pitchMm: number, alongMm: number): number =>
  Math.max(1, Math.min(MOST / 4, Math.floor((edgeMm - alongMm) / pitchMm + 1 + 1e-9)));

/** A count spread over edges by their lengths; what is left over goes to the edges that are owed most. */
function shared(count: number, lengths: readonly number[]): number[] {
  const whole = Math.max(0, Math.min(MOST, Math.round(count)));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const exact = lengths.map((length) => (whole * length) / total);
  const counts = exact.map(Math.floor);
  const owed = exact
    .map((value, index) => ({ index, rest: value - counts[index] }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index);
  for (let left = whole - counts.reduce((sum, one) => sum + one, 0), at = 0; left > 0; left--, at++)
    counts[owed[at].index]++;
  return counts;
}

function onCircle(radius: number, { by }: Omit<Ring, 'sides'>): PlacedAt[] {
  const wanted = 'count' in by ? Math.round(by.count) : Math.floor((2 * Math.PI * radius) / by.pitchMm);
  const count = Math.max(1, Math.min(MOST, wanted));
  return Array.from({ length: count }, (_, index) => {
    const degrees = (360 * index) / count;
    return { ...turnVector(0, -radius, degrees), turn: degrees };
  });
}

const round = (value: number): number => Math.round(value * 1000) / 1000 || 0;

/** Shifts of an array of columns and rows, the first place left out: it is where the original stands. */
export function arrayShifts(columns: number, rows: number, pitchX: number, pitchY: number): { x: number; y: number }[] {
  const shifts = Array.from({ length: columns * rows }, (_, index) => ({
    x: round((index % columns) * pitchX),
    y: round(Math.floor(index / columns) * pitchY),
  }));
  return shifts.slice(1);
}
