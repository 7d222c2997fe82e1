import { bodyOf } from '../../shared-types/board.ts';
import { boxOf, rectangleCorners, type TurnedRectangle } from '../../shared-types/geometry.ts';
import type { App } from './app.ts';

const AROUND_MM = 18;

/** Selects a site, turns the board to its side and brings it into view. */
export function showSite(app: App, siteId: string): void {
  const site = app.store.get().ticket?.document.plan.sites.find((one) => one.id === siteId);
  if (!site) return;
  app.setView({ side: site.side });
  app.bench.select([{ kind: 'site', siteId }], 'replace');
  bringIntoView(app, site.area);
}

/** Selects a thermocouple, turns the board to its side and brings it into view. */
export function showWatch(app: App, tagId: string): void {
  const tag = app.store.get().ticket?.document.plan.tags.find((one) => one.id === tagId);
  if (tag?.kind !== 'watchPoint') return;
  app.setView({ side: tag.side });
  app.bench.select([{ kind: 'watch', tagId }], 'replace');
  bringIntoView(app, { x: tag.x, y: tag.y, lengthMm: 1, widthMm: 1, turnDeg: 0 });
}

/** Selects a part, turns the board to its side and brings it into view. */
export function showPart(app: App, refdes: string): void {
  showParts(app, [refdes]);
}

/** Selects parts, turns the board to the side of the first one and brings that into view. */
export function showParts(app: App, refdes: readonly string[]): void {
  const part = app.store.get().ticket?.document.board.parts.find((one) => one.refdes === refdes[0]);
  if (!part) return;
  app.setView({ side: part.side });
  app.bench.select(
    refdes.map((one) => ({ kind: 'part', refdes: one })),
    'replace',
  );
  bringIntoView(app, bodyOf(part));
}

/** Fits a body with enough of its surroundings to know where on the board one is. */
function bringIntoView(app: App, body: TurnedRectangle): void {
  const box = boxOf(rectangleCorners(body));
  app.canvas.current?.fit({
    minX: box.minX - AROUND_MM,
    minY: box.minY - AROUND_MM,
    maxX: box.maxX + AROUND_MM,
    maxY: box.maxY + AROUND_MM,
  });
}
