import { type Box, boxHeight, boxOfDiscs, boxWidth, distance, median, type Point } from '../plane.ts';
import { arrayGrid, type PadGrid, type Pose, toOwnAxes } from './extents.ts';
import { type PlainPad, sameSize } from './plain-pads.ts';
import { ownBoxes, type PinRows, pinRows } from './rows.ts';

/** A part that looks for its pads on a layer without references. */
export interface Claimant extends Pose {
  readonly refdes: string;
  readonly packageName: string;
  /** Body size where the package name tells it: pads further out are not this part's. */
  readonly nameSize: { readonly lengthMm: number; readonly widthMm: number } | null;
}

/** Extents of the pads a part claimed, in its own axes. A guess: the layer does not say whose the pads are. */
export interface ClaimedLand {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly grid: PadGrid | null;
  readonly rows: PinRows | null;
}

const MAX_REACH_MM = 30;
const MARGIN_MM = 1;
const MIRROR_MM = 0.06;

/**
 * Pads that lie symmetrically about a part's middle (a half turn brings each onto another of its size) go to the nearest
 * such part; a part's pads end where another part's middle would fall among them. Parts of one package share the median size.
 */
export function claimPads(claimants: readonly Claimant[], pads: readonly PlainPad[]): Map<string, ClaimedLand> {
  const owners = ownersOf(claimants, pads);
  const lands = new Map<string, ClaimedLand>();
  for (const [claimant, claimed] of owners) {
    const land = landOf(claimant, claimed, claimants);
    if (land) lands.set(claimant.refdes, land);
  }
  return sharedByPackage(claimants, lands);
}

interface Claim {
  readonly claimant: Claimant;
  readonly gap: number;
  readonly twin: PlainPad;
}

/** The nearest part about which each pad has a twin; a pad counts only if its twin went to the same part. */
function ownersOf(claimants: readonly Claimant[], pads: readonly PlainPad[]): Map<Claimant, PlainPad[]> {
  const findAt = padFinder(pads);
  const reaches = claimants.map(({ nameSize }) =>
    nameSize ? Math.hypot(nameSize.lengthMm, nameSize.widthMm) / 2 + MARGIN_MM : MAX_REACH_MM,
  );
  const claims = new Map<PlainPad, Claim>();
  for (const pad of pads) {
    let best: Claim | null = null;
    for (const [index, claimant] of claimants.entries()) {
      const gap = distance(claimant, pad);
      if (gap > reaches[index] || (best && gap >= best.gap)) continue;
      const twin = findAt({ x: 2 * claimant.x - pad.x, y: 2 * claimant.y - pad.y }, pad);
      if (twin) best = { claimant, gap, twin };
    }
    if (best) claims.set(pad, best);
  }
  const owners = new Map<Claimant, PlainPad[]>();
  for (const [pad, { claimant, twin }] of claims) {
    if (claims.get(twin)?.claimant !== claimant) continue;
    const owned = owners.get(claimant);
    if (owned) owned.push(pad);
    else owners.set(claimant, [pad]);
  }
  return owners;
}

const CELL_MM = 0.25;

function padFinder(pads: readonly PlainPad[]): (at: Point, like: PlainPad) => PlainPad | undefined {
  const cells = new Map<string, PlainPad[]>();
  const column = (mm: number) => Math.floor(mm / CELL_MM);
  for (const pad of pads) {
    const key = `${column(pad.x)} ${column(pad.y)}`;
    const cell = cells.get(key);
    if (cell) cell.push(pad);
    else cells.set(key, [pad]);
  }
  return (at, like) => {
    for (const dx of new Set([column(at.x - MIRROR_MM), column(at.x + MIRROR_MM)])) {
      for (const dy of new Set([column(at.y - MIRROR_MM), column(at.y + MIRROR_MM)])) {
        const found = cells.get(`${dx} ${dy}`)?.find((pad) => distance(pad, at) <= MIRROR_MM && sameSize(pad, like));
        if (found) return found;
      }
    }
    return undefined;
  };
}

/** Grows the box pad by pad from the middle outwards and stops before another part's middle would lie in it. */
function landOf(claimant: Claimant, claimed: readonly PlainPad[], claimants: readonly Claimant[]): ClaimedLand | null {
  const near = claimants.filter((other) => other !== claimant && distance(other, claimant) <= MAX_REACH_MM);
  const foreign = near.map((other) => toOwnAxes(claimant, other));
  const outward = [...claimed].sort((a, b) => distance(a, claimant) - distance(b, claimant));
  let box: Box | null = null;
  const taken: PlainPad[] = [];
  for (const pad of outward) {
    const own = boxOfDiscs(pad.hull.map((disc) => ({ ...toOwnAxes(claimant, disc), r: disc.r })));
    const grown: Box = symmetric(box, own);
    if (foreign.some((point) => holds(grown, point))) break;
    box = grown;
    taken.push(pad);
  }
  if (box === null || taken.length < 2) return null;
  const grid = arrayGrid(taken.map((pad) => toOwnAxes(claimant, pad)));
  return { lengthMm: boxWidth(box), widthMm: boxHeight(box), grid, rows: pinRows(ownBoxes(taken, claimant)) };
}

/** The box of both, made symmetrical about the origin: every claimed pad has its twin. */
function symmetric(box: Box | null, own: Box): Box {
  const x = Math.max(box?.maxX ?? 0, own.maxX, -own.minX);
  const y = Math.max(box?.maxY ?? 0, own.maxY, -own.minY);
  return { minX: -x, minY: -y, maxX: x, maxY: y };
}

function holds(box: Box, { x, y }: Point): boolean {
  return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY;
}

function sharedByPackage(
  claimants: readonly Claimant[],
  lands: ReadonlyMap<string, ClaimedLand>,
): Map<string, ClaimedLand> {
  const byPackage = new Map<string, ClaimedLand[]>();
  for (const { refdes, packageName } of claimants) {
    const land = lands.get(refdes);
    if (land && packageName) byPackage.set(packageName, [...(byPackage.get(packageName) ?? []), land]);
  }
  const shared = new Map<string, ClaimedLand>();
  for (const { refdes, packageName } of claimants) {
    const alike = byPackage.get(packageName);
    if (!alike) {
      const own = lands.get(refdes);
      if (own) shared.set(refdes, own);
      continue;
    }
    const lengthMm = median(alike.map((land) => land.lengthMm));
    const widthMm = median(alike.map((land) => land.widthMm));
    shared.set(refdes, {
      lengthMm,
      widthMm,
      grid: alike.find(({ grid }) => grid)?.grid ?? null,
      rows: alike.find(({ rows }) => rows)?.rows ?? null,
    });
  }
  return shared;
}
