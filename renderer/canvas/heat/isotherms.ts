import { contours } from 'd3-contour';
import type { FieldGrid } from '../../../shared-types/evaluation.ts';
import type { Point } from '../../../shared-types/geometry.ts';
import type { PaddedField } from './padded-field.ts';

/** One line of equal temperature on the board, mm; closed lines end where they start. */
export type IsothermLine = Point[];

/** Lines along which a padded field has the given temperature (C), in board millimetres. */
export function isothermLines(field: PaddedField, grid: FieldGrid, celsius: number): IsothermLine[] {
  const tracer = contours().size([field.columns, field.rows]).smooth(true);
  const traced = tracer.contour(field.values as unknown as number[], celsius);
  const lines: IsothermLine[] = [];
  for (const polygon of traced.coordinates)
    for (const ring of polygon)
      for (const piece of withoutBorder(ring, field.columns, field.rows))
        lines.push(
          piece.map(([x, y]) => ({
            x: grid.originX + (x - field.pad) * grid.cellMm,
            y: grid.originY + (y - field.pad) * grid.cellMm,
          })),
        );
  return lines;
}

/** A contour is a closed ring: where it follows the grid's border it is no isotherm, and is cut open there. */
function withoutBorder(ring: readonly number[][], columns: number, rows: number): number[][][] {
  const onBorder = ([x, y]: readonly number[]) => x <= 0 || y <= 0 || x >= columns || y >= rows;
  if (!ring.some(onBorder)) return [ring as number[][]];
  const start = ring.findIndex(onBorder);
  const turned = [...ring.slice(start, -1), ...ring.slice(0, start + 1)];
  const pieces: number[][][] = [];
  let piece: number[][] = [];
  for (const point of turned) {
    if (onBorder(point)) {
      if (piece.length > 1) pieces.push(piece);
      piece = [];
    } else piece.push(point);
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}
