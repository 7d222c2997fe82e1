import { describe, expect, test } from 'vitest';
import { createView } from '../../../../main/work-map/drawing/view.ts';
import { POINTS_PER_MM } from '../../../../main/work-map/paper.ts';
import { type Camera, toScreen } from '../../../../renderer/canvas/view/camera.ts';
import type { Side } from '../../../../shared-types/geometry.ts';

const FRAME = { x0: 0, y0: 0, x1: 400, y1: 400 };
/** One pixel of the canvas is a point of the page here: both look at the board's zero. */
const cameraOf = (side: Side, turnDeg: number): Camera => ({
  ...{ centre: { x: 0, y: 0 }, zoom: POINTS_PER_MM, side, turnDeg, width: 400, height: 400 },
});

describe.each(['top', 'bottom'] as const)('the %s', (side) => {
  test.each([0, 37, 90, 180, 270])('lies on the sheet as on the canvas, clamped at %i degrees', (turnDeg) => {
    const view = createView(side, turnDeg, 1, FRAME, { x: 0, y: 0 });
    for (const at of [
      { x: 10, y: 0 },
      { x: 0, y: 10 },
      { x: -7, y: 3 },
    ]) {
      const [page, screen] = [view.toPage(at), toScreen(cameraOf(side, turnDeg), at)];
      expect(page.x).toBeCloseTo(screen.x, 9);
      expect(page.y).toBeCloseTo(screen.y, 9);
    }
  });
});

test('seen from below the board is mirrored as it lies unclamped, and turned after that', () => {
  // At 90 degrees the board's x axis points up on the top; from below, mirrored first, it points down.
  const top = toScreen(cameraOf('top', 90), { x: 10, y: 0 });
  const bottom = toScreen(cameraOf('bottom', 90), { x: 10, y: 0 });
  expect(top.y).toBeLessThan(200);
  expect(bottom.y).toBeGreaterThan(200);
});
