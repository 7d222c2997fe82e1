import type { Locator, Page } from '@playwright/test';
import { type Board, ownToBoard, type Part } from '../../../shared-types/board.ts';
import { boxOfContour } from '../../../shared-types/contour/edges.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import { placePhoto } from '../../../shared-types/rules/photo-place.ts';
import { mapPoint } from '../../../shared-types/rules/plane-maps.ts';
import { savedTicket } from '../../e2e/saved-ticket.ts';
import type { Space } from './camera.ts';
import type { Hands } from './hands.ts';
import { heightOf } from './photo-shapes.ts';
import { aimAt, lieOfBoard } from './window-places.ts';

/** The board on the bench, its pictures, and what the eye makes of a place above the board. */
export type Bench = {
  truth: Board;
  shelf: string;
  photos: Record<Side, Buffer>;
  seen: Record<Side, (at: Space) => Point>;
  shot: (name: string) => Promise<void>;
};

/** A hand that trembles: places missed by about a pixel, the same ones in every run. */
export function trembling(): (at: Point, px?: number) => Point {
  let seed = 3;
  const random = () => {
    seed = (seed * 1664525 + 1013904223) >>> 0;
    return (seed + 1) / (2 ** 32 + 1);
  };
  return ({ x, y }, px = 0.8) => {
    const off = px * Math.sqrt(-2 * Math.log(random()));
    const angle = 2 * Math.PI * random();
    return { x: x + off * Math.cos(angle), y: y + off * Math.sin(angle) };
  };
}

export type Technician = ReturnType<typeof technicianAt>;

/** What somebody at the window does with hands and eyes. */
export function technicianAt(page: Page, hands: Hands, bench: Bench) {
  const aimed = trembling();
  const quiet = () => page.waitForTimeout(120);
  return {
    page,
    hands,
    bench,
    aimed,
    /** Time that the window needs for figures nobody waits for; not counted. */
    quiet,
    async press(target: Locator) {
      const { at, sizePx } = await aimAt(target);
      await hands.click(at, sizePx);
    },
    lie: async () => {
      await quiet();
      const lie = await lieOfBoard(page);
      hands.leftAt(lie.toPage({ x: 0, y: 0 }));
      return lie;
    },
    /** The photo of a side as it lies on the drawing now: from a place above the board to board mm, as the picture has it. */
    async picture(side: Side): Promise<(at: Space) => Point> {
      const { photos, outline } = (await savedTicket(page, bench.shelf)).document.board;
      const photo = photos.find((one) => one.side === side);
      if (!photo) throw new Error(`no photo of the ${side}`);
      const { toBoard } = placePhoto(photo, boxOfContour(outline));
      return (at) => mapPoint(toBoard, bench.seen[side](at));
    },
  };
}

/** From this height on the eye looks for the foot of a body, mm. */
const TALL_MM = 3;

/** Where the middle of a part is looked for: low ones at half their height, of tall ones the foot is guessed. */
export const middleOf = (part: Part): Space => ({
  x: part.x,
  y: part.y,
  z: heightOf(part) > TALL_MM ? 0 : heightOf(part) / 2,
});
export const missOf = (part: Part): number => (heightOf(part) > TALL_MM ? 2.5 : 0.8);

/** Where the mark of pin 1 is seen. */
export const markOf = (part: Part): Space | null =>
  part.pin1 ? { ...ownToBoard(part, part.pin1), z: heightOf(part) } : null;
