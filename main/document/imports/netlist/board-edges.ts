import type { PenStroke } from '../outline/graph.ts';
import { distance, type Point } from '../plane.ts';

const MAX_POINTS = 200_000;
const CLOSED_MM = 0.01;
const POINT = /(X[ +-]*\d+)?(Y[ +-]*\d+)?/gy;

/**
 * Lines of the board's edge: records 389 named BOARD_EDGE, continued by 089 (IPC-D-356A, outlines). A coordinate left out stays as
 * it was; an asterisk begins a new line. The first pair of a record is the width of the drawn line, unless it closes the line.
 */
export function readBoardEdges(lines: readonly string[], mmPerUnit: number): PenStroke[] {
  const records: string[] = [];
  let open = false;
  for (const line of lines) {
    if (/^389/.test(line)) {
      open = /^389BOARD_EDGE\b/.test(line);
      if (open) records.push(line.slice(13));
    } else if (open && /^089/.test(line)) records[records.length - 1] += `  ${line.slice(3)}`;
    else open = false;
  }
  return records.flatMap((record) => strokesOf(record, mmPerUnit));
}

function strokesOf(record: string, mmPerUnit: number): PenStroke[] {
  const chains = record.split('*').map((text) => pointsOf(text, mmPerUnit));
  const [first] = chains;
  if (first && first.length > 2 && !closes(first)) first.shift();
  return chains.flatMap((points) =>
    points.slice(1).map((to, index): PenStroke => ({ segment: { kind: 'line', from: points[index], to }, widthMm: 0 })),
  );
}

const closes = (points: readonly Point[]): boolean => distance(points[0], points[points.length - 1]) <= CLOSED_MM;

function pointsOf(text: string, mmPerUnit: number): Point[] {
  const points: Point[] = [];
  let [x, y] = [0, 0];
  for (const word of text.match(/[XY][ +-]*\d+(?:[XY][ +-]*\d+)?/g) ?? []) {
    POINT.lastIndex = 0;
    const [, across, up] = POINT.exec(word) ?? [];
    const value = (part: string): number => Number(part.slice(1).replaceAll(' ', '')) * mmPerUnit;
    if (across) x = value(across);
    if (up) y = value(up);
    if (points.length < MAX_POINTS) points.push({ x, y });
  }
  return points;
}
