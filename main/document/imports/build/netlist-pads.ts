import type { Recognised } from '../files/recognise.ts';
import { findLoops } from '../outline/chain.ts';
import type { OutlineSource } from '../outline/choose.ts';
import { shareInside } from '../outline/choose.ts';
import type { Loop } from '../outline/loop.ts';
import type { Pad } from '../pads/collect.ts';
import type { PlainPad } from '../pads/plain-pads.ts';
import { boxCentre, boxOfPoints, type Point } from '../plane.ts';
import { voteByPlaces } from '../register/vote.ts';
import { mapSegment } from '../segments.ts';
import { cornerOffset } from './frame.ts';

/** Pads of a netlist on the place of the Gerber layers, and how the netlist's own origin was brought there. */
export interface NetlistPads {
  readonly file: string;
  readonly pads: Map<string, Pad[]>;
  /** The board's edge as the netlist draws it, moved with its pads. */
  readonly loops: readonly Loop[];
  readonly move: Point;
  readonly by: 'pads' | 'inside' | 'corner' | 'none';
  readonly votes: number;
  readonly of: number;
}

type Bare = { readonly top: readonly PlainPad[]; readonly bottom: readonly PlainPad[] };

const MIN_SHARE = 0.3;
const MIN_VOTES = 8;
const INSIDE = 0.9;

/** The first netlist with parts: its pads lie on the layers' pads, else inside an outline, else by that outline's lower left corner. */
export function netlistPads(
  files: readonly Recognised[],
  bare: Bare,
  outlines: readonly OutlineSource[],
): NetlistPads | null {
  const file = files.find((one) => one.kind === 'netlist');
  if (file?.kind !== 'netlist') return null;
  const all = [...file.netlist.pads.values()].flat();
  const side = (name: 'top' | 'bottom') => ({
    from: all.filter((pad) => pad.side === name && !pad.through).map(({ at }) => at),
    to: bare[name],
  });
  const vote = voteByPlaces([side('top'), side('bottom')].filter(({ to }) => to.length > 0));
  if (vote && vote.votes >= MIN_VOTES && vote.votes >= vote.of * MIN_SHARE) {
    return moved(file, { x: vote.x, y: vote.y }, 'pads', vote.votes, vote.of);
  }
  const middles = [...file.netlist.pads.values()].map((pads) => boxCentre(boxOfPoints(pads.map(({ at }) => at))));
  const loops = outlines.flatMap((source) => source.loops);
  if (loops.length === 0) return moved(file, { x: 0, y: 0 }, 'none');
  if (loops.some((loop) => shareInside(loop, middles) >= INSIDE)) return moved(file, { x: 0, y: 0 }, 'inside');
  const corner = cornerOffset(loops, middles);
  return corner ? moved(file, corner, 'corner') : moved(file, { x: 0, y: 0 }, 'none');
}

function moved(
  { name, netlist }: Extract<Recognised, { kind: 'netlist' }>,
  move: Point,
  by: NetlistPads['by'],
  votes = 0,
  of = 0,
): NetlistPads {
  const shift = <T extends Point>(point: T): T => ({ ...point, x: point.x + move.x, y: point.y + move.y });
  const pads = [...netlist.pads].map(([refdes, own]): [string, Pad[]] => [
    refdes,
    own.map((pad) => ({ ...pad, at: shift(pad.at), hull: pad.hull.map(shift) })),
  ]);
  const edges = netlist.edges.map(({ segment, widthMm }) => ({ segment: mapSegment(segment, shift, false), widthMm }));
  return { file: name, pads: new Map(pads), loops: findLoops(edges, name), move, by, votes, of };
}
