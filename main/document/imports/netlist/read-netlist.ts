import type { PenStroke } from '../outline/graph.ts';
import type { Pad } from '../pads/collect.ts';
import { type Disc, type Point, turnPoint } from '../plane.ts';
import { readBoardEdges } from './board-edges.ts';

/** What an IPC-D-356 file says of the parts: their pads by reference, mm at the file's own origin. */
export interface Netlist {
  readonly pads: ReadonlyMap<string, readonly Pad[]>;
  /** Lines of the board's edge. */
  readonly edges: readonly PenStroke[];
  /** Records of pins that cannot be read. */
  readonly unread: number;
  /** The file ends without its end record: it may be cut short. */
  readonly noEnd: boolean;
}

const MAX_PADS = 500_000;
/** Records are 80 characters long; what stands beyond is nothing that is read here. */
const LINE_END = 120;

/** Records of pins that go through (317), of surface pads (327). Columns as in IPC-D-356, test record. */
const RECORD = /^3[12]7/;
const VIA = /^(VIA)?$/i;
/** Hole, access, place, size and turn behind the pin; blanks may stand between. */
const FIGURES =
  /(?:D\d{1,4}[PU]?)?\s*(?:A(\d{2}))?\s*X\s*([+-]?\d+)\s*Y\s*([+-]?\d+)(?:\s*X(\d{1,4}))?(?:\s*Y(\d{1,4}))?(?:\s*R(\d{1,3}))?/;

/** Reads an IPC-D-356 netlist; null when it holds neither pins of parts nor an edge, or more than any board has. Never throws. */
export function readNetlist(text: string): Netlist | null {
  const lines = text.split(/\r\n|\n|\r/);
  const scale = mmPerUnit(lines);
  const pads = new Map<string, Pad[]>();
  let [count, unread] = [0, 0];
  for (const line of lines) {
    if (!RECORD.test(line)) continue;
    const refdes = line.slice(20, 26).trim();
    if (VIA.test(refdes)) continue;
    const found = readPads(line, scale);
    if (found.length === 0) unread++;
    count += found.length;
    if (count > MAX_PADS) return null;
    const known = pads.get(refdes);
    if (known) known.push(...found);
    else if (found.length > 0) pads.set(refdes, found);
  }
  const edges = readBoardEdges(lines, scale);
  if (pads.size === 0 && edges.length === 0) return null;
  return { pads, edges, unread, noEnd: !lines.some((line) => /^999/.test(line)) };
}

/** `P  UNITS CUST 1` and `SI`: micrometres; CUST 0 and 2: ten thousandths of an inch, also where nothing is said. */
function mmPerUnit(lines: readonly string[]): number {
  const said = lines.find((line) => /^P\s+UNITS/i.test(line)) ?? '';
  return /CUST\s*1|\bSI\b/i.test(said) ? 0.001 : 0.00254;
}

/** A pin that goes through stands on both sides; access code 01 is the top, 00 both, any other layer the bottom. */
function readPads(line: string, scale: number): Pad[] {
  const [whole, access, x, y, width, height, turn] = FIGURES.exec(line.slice(31, LINE_END)) ?? [];
  if (whole === undefined) return [];
  const at = { x: Number(x) * scale, y: Number(y) * scale };
  const through = line.startsWith('317');
  const pad = {
    pin: line.slice(27, 31).trim(),
    through,
    at,
    hull: hullOf(at, Number(width ?? 0) * scale, Number(height ?? 0) * scale, Number(turn ?? 0)),
  };
  if (through) return (['top', 'bottom'] as const).map((side) => ({ ...pad, side }));
  return [{ ...pad, side: access === undefined || access === '01' ? 'top' : 'bottom' }];
}

/** A height of 0 means round. */
function hullOf(at: Point, width: number, height: number, turn: number): Disc[] {
  if (height === 0) return [{ ...at, r: width / 2 }];
  const corners = [
    { x: width / 2, y: height / 2 },
    { x: -width / 2, y: height / 2 },
    { x: -width / 2, y: -height / 2 },
    { x: width / 2, y: -height / 2 },
  ];
  return corners.map((corner) => {
    const { x, y } = turnPoint(corner, turn);
    return { x: at.x + x, y: at.y + y, r: 0 };
  });
}
