import { type Board, ownToBoard, type Part } from '../../../shared-types/board.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import { looksTheSameTurned } from './bench-boards.ts';

export type Comparison = {
  missing: string[];
  strange: string[];
  wrong: string[];
  offMm: number[];
  heightOff: string[];
  pin1: { right: number; wanted: number; wrong: string[] };
};

/** The drawn board beside the true one, part by part. */
export function compareBoards(drawn: Board, truth: Board): Comparison {
  const named = new Map(drawn.parts.map((part) => [part.refdes, part]));
  const true_ = new Set(truth.parts.map(({ refdes }) => refdes));
  const both = truth.parts.flatMap((part) => {
    const other = named.get(part.refdes);
    return other ? [{ part, other }] : [];
  });
  const marked = both.filter(({ part }) => part.pin1);
  const wrongPin = marked.filter(({ part, other }) => !samePin1(part, other));
  return {
    missing: truth.parts.flatMap(({ refdes }) => (named.has(refdes) ? [] : [refdes])),
    strange: drawn.parts.flatMap(({ refdes }) => (true_.has(refdes) ? [] : [refdes])),
    wrong: both.flatMap(({ part, other }) => faultsOf(part, other).map((fault) => `${part.refdes}: ${fault}`)),
    offMm: both.map(({ part, other }) => Math.hypot(part.x - other.x, part.y - other.y)),
    heightOff: both.flatMap(({ part, other }) => heightFault(part, other)),
    pin1: {
      right: marked.length - wrongPin.length,
      wanted: marked.length,
      wrong: wrongPin.map(({ part }) => part.refdes),
    },
  };
}

function faultsOf(part: Part, other: Part): string[] {
  const faults: string[] = [];
  if (part.side !== other.side) faults.push(`side ${other.side}`);
  if (part.fitted !== other.fitted) faults.push(other.fitted ? 'fitted' : 'empty');
  if (part.coated !== other.coated) faults.push(other.coated ? 'coated' : 'not coated');
  const size = (one: Part) => [one.package.lengthMm, one.package.widthMm];
  const [a, b] = [size(part), size(other)];
  if (Math.abs(a[0] - b[0]) > 0.15 || Math.abs(a[1] - b[1]) > 0.15) faults.push(`size ${b} not ${a}`);
  const period = looksTheSameTurned(part) ? 180 : 360;
  const off = (((part.turn - other.turn) % period) + period) % period;
  if (Math.min(off, period - off) > 2) faults.push(`turn ${other.turn} not ${part.turn}`);
  return faults;
}

function heightFault(part: Part, other: Part): string[] {
  const [wanted, is] = [part.package.heightMm, other.package.heightMm];
  if (wanted === null || is === null || Math.abs(wanted - is) <= 0.2) return [];
  return [`${part.refdes} ${is} not ${wanted}`];
}

/** A mark on the same corner or end, seen from the middle; a mark of the end stands for both of its corners. */
function samePin1(part: Part, other: Part): boolean {
  if (!part.pin1 || !other.pin1) return false;
  const [a, b] = [fromMiddle(part), fromMiddle(other)];
  return Math.hypot(a.x - b.x, a.y - b.y) < Math.max(0.4, part.package.widthMm * 0.55);
}

function fromMiddle(part: Part): Point {
  const at = ownToBoard(part, part.pin1 ?? { x: 0, y: 0 });
  return { x: at.x - part.x, y: at.y - part.y };
}
