import { bodyOf } from '../../shared-types/board.ts';
import { boxOf, rectangleCorners } from '../../shared-types/geometry.ts';
import type { App } from './app.ts';

const AROUND_MM = 14;

/** Selects a part, turns the board to its side and brings it into view. */
export function showPart(app: App, refdes: string): void {
  const part = app.store.get().ticket?.document.board.parts.find((one) => one.refdes === refdes);
  if (!part) return;
  app.setView({ side: part.side });
  app.bench.select([{ kind: 'part', refdes }], 'replace');
  const box = boxOf(rectangleCorners(bodyOf(part)));
  app.canvas.current?.fit({
    minX: box.minX - AROUND_MM,
    minY: box.minY - AROUND_MM,
    maxX: box.maxX + AROUND_MM,
    maxY: box.maxY + AROUND_MM,
  });
}
