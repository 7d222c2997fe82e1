import type { Board, Part } from '../../board.ts';
import { boxOfContour } from '../../contour/edges.ts';
import { otherSide, type Point } from '../../geometry.ts';
import { type Frame, placed } from '../board-frame.ts';
import { matchNames } from './match.ts';
import type { Alignment, UpdateSource } from './types.ts';

type Lie = Omit<Frame, 'by'>;
type Pair = { readonly before: Part; readonly after: Part };

const QUARTERS = [0, 1, 2, 3] as const;

/** All ways in which a board may have been drawn: as the files have it first, then mirrored, then with its other side up. */
const LIES: readonly Lie[] = [
  ...QUARTERS.map((quarters) => ({ mirror: false, quarters })),
  ...QUARTERS.map((quarters) => ({ mirror: true, quarters })),
  ...QUARTERS.map((quarters) => ({ mirror: true, over: true, quarters })),
];

/** How far parts may lie from where the files put them: two imports, a board drawn by figures, one drawn over a photo. */
const REACHES_MM = [0.05, 0.25, 1, 3];
const LEAST_SHARE = 0.25;
const LEAST_VOTES = 3;
const FEW = 3;

/**
 * How the files' board lies on the ticket's, by a vote of the parts that both have: for every way to lie, the move that
 * brings most of them to their place. The closest reach in which enough agree decides. Without common parts the outlines'
 * lower left corners are laid on each other.
 */
export function alignBoards(ticket: Board, { board, told }: UpdateSource): Alignment {
  const doubled = new Set(told.doubles.flatMap(({ all }) => all));
  const known = (parts: readonly Part[]) => parts.filter((part) => !doubled.has(part.refdes));
  const pairs = [...matchNames(known(ticket.parts), known(board.parts))].map(([before, after]) => ({ before, after }));
  for (const reach of REACHES_MM) {
    const best = bestLie(pairs, reach);
    if (!best || best.votes < Math.max(Math.min(LEAST_VOTES, pairs.length), pairs.length * LEAST_SHARE)) continue;
    return byVote(best, pairs);
  }
  // Of two or three parts one may have moved far: then two that agree, or the only one, say more than the outlines.
  const few = pairs.length <= FEW ? bestLie(pairs, REACHES_MM[0]) : null;
  if (few && few.votes > (told.outline ? 1 : 0)) return byVote(few, pairs);
  const still = { mirror: false, quarters: 0 } as const;
  const none = { votes: 0, of: pairs.length };
  if (!told.outline) return { frame: { ...still, by: { x: 0, y: 0 } }, by: 'none', ...none };
  return { frame: { ...still, by: cornerMove(ticket, board, still) }, by: 'corner', ...none };
}

/** The same with another lie or move, chosen by hand. A new lie without a move is laid where most parts then agree. */
export function alignAs(ticket: Board, source: UpdateSource, lie: Lie, by: Point | null): Alignment {
  const pairs = [...matchNames(ticket.parts, source.board.parts)].map(([before, after]) => ({ before, after }));
  const found = by ? null : REACHES_MM.map((reach) => votesFor(pairs, lie, reach)).find((one) => one && one.votes > 1);
  const move = by ?? found?.by ?? cornerMove(ticket, source.board, lie);
  const frame = { ...lie, by: move };
  const there = pairs.filter(({ before, after }) => {
    const at = placed(frame, after);
    return sided(lie, after) === before.side && Math.hypot(at.x - before.x, at.y - before.y) <= REACHES_MM[0];
  });
  return { frame, by: 'chosen', votes: there.length, of: pairs.length };
}

const sided = ({ over }: Lie, part: Part) => (over ? otherSide(part.side) : part.side);

const byVote = ({ lie, by, votes }: Vote, pairs: readonly Pair[]): Alignment => ({
  frame: { ...lie, by },
  by: 'references',
  votes,
  of: pairs.length,
});

type Vote = { readonly lie: Lie; readonly by: Point; readonly votes: number };

function bestLie(pairs: readonly Pair[], reachMm: number): Vote | null {
  let best: Vote | null = null;
  for (const lie of LIES) {
    const found = votesFor(pairs, lie, reachMm);
    if (found && found.votes > (best?.votes ?? 0)) best = found;
  }
  return best;
}

/** The move that brings most parts of a lie within reach of their place. */
function votesFor(pairs: readonly Pair[], lie: Lie, reachMm: number): Vote | null {
  const moves = pairs.flatMap(({ before, after }): Point[] => {
    if (sided(lie, after) !== before.side) return [];
    const at = placed({ ...lie, by: { x: 0, y: 0 } }, after);
    return [{ x: before.x - at.x, y: before.y - at.y }];
  });
  const voters = largestCluster(moves, reachMm);
  return voters.length === 0 ? null : { lie, by: middleOf(voters), votes: voters.length };
}

/** The points within reach of the one that has most others about it; cells of the reach's size keep it quick. */
function largestCluster(points: readonly Point[], reach: number): Point[] {
  const cells = new Map<string, Point[]>();
  const cellOf = (value: number) => Math.floor(value / reach);
  for (const point of points) {
    const key = `${cellOf(point.x)} ${cellOf(point.y)}`;
    cells.set(key, [...(cells.get(key) ?? []), point]);
  }
  const about = (point: Point): Point[] => {
    const [column, row] = [cellOf(point.x), cellOf(point.y)];
    const near = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].flatMap((dy) => cells.get(`${column + dx} ${row + dy}`) ?? []));
    return near.filter((other) => Math.hypot(other.x - point.x, other.y - point.y) <= reach);
  };
  const heads = [...cells.values()].sort((a, b) => b.length - a.length);
  let best: Point[] = [];
  for (const cell of heads.slice(0, MOST_HEADS)) {
    const found = about(middleOf(cell));
    const wider = found.length > 0 ? about(middleOf(found)) : about(cell[0]);
    for (const one of [found, wider]) if (one.length > best.length) best = one;
  }
  return best;
}

/** The fullest cells hold the winner or lie beside it. */
const MOST_HEADS = 40;

function middleOf(points: readonly Point[]): Point {
  const median = (values: number[]) => {
    const sorted = values.sort((a, b) => a - b);
    const half = (sorted.length - 1) / 2;
    return tidy((sorted[Math.floor(half)] + sorted[Math.ceil(half)]) / 2);
  };
  return { x: median(points.map(({ x }) => x)), y: median(points.map(({ y }) => y)) };
}

/** Lengths without the dust of floating point; a tenth of a micrometre is left. */
export const tidy = (value: number): number => Math.round(value * 1e4) / 1e4 || 0;

/** Lays the lower left corners of both outlines on each other. */
function cornerMove(ticket: Board, files: Board, lie: Lie): Point {
  const [mine, theirs] = [boxOfContour(ticket.outline), boxOfContour(files.outline)];
  const corners = [theirs.minX, theirs.maxX].flatMap((x) =>
    [theirs.minY, theirs.maxY].map((y) => placed({ ...lie, by: { x: 0, y: 0 } }, { x, y })),
  );
  return {
    x: tidy(mine.minX - Math.min(...corners.map(({ x }) => x))),
    y: tidy(mine.minY - Math.min(...corners.map(({ y }) => y))),
  };
}
