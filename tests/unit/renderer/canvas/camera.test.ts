import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBox, panBy, toBoard, toScreen, visibleBox, zoomAt } from '../../../../renderer/canvas/view/camera.ts';
import { project, projectionOf, scenePlacement } from '../../../../renderer/canvas/view/projection.ts';
import { camera } from './sample.ts';

const anyCamera = fc
  .record({
    x: fc.double({ min: -200, max: 200, noNaN: true }),
    y: fc.double({ min: -200, max: 200, noNaN: true }),
    zoom: fc.double({ min: 0.3, max: 200, noNaN: true }),
    turnDeg: fc.constantFrom(0, 90, 180, 270, 30, -17),
    side: fc.constantFrom('top' as const, 'bottom' as const),
  })
  .map(({ x, y, ...rest }) => camera({ centre: { x, y }, ...rest }));
const anyPoint = fc.record({
  x: fc.double({ min: -150, max: 150, noNaN: true }),
  y: fc.double({ min: -150, max: 150, noNaN: true }),
});

describe('the camera', () => {
  it('shows the top with x to the right and y upwards', () => {
    expect(toScreen(camera(), { x: 60, y: 30 })).toEqual({ x: 600, y: 300 });
    expect(toScreen(camera(), { x: 50, y: 40 })).toEqual({ x: 500, y: 200 });
  });

  it('mirrors the bottom left to right, as the board lies when it is turned over', () => {
    expect(toScreen(camera({ side: 'bottom' }), { x: 60, y: 30 })).toEqual({ x: 400, y: 300 });
    expect(toScreen(camera({ side: 'bottom' }), { x: 50, y: 40 })).toEqual({ x: 500, y: 200 });
  });

  it('turns what is seen counter-clockwise, the mirrored bottom too', () => {
    const right = { x: 60, y: 30 };
    const top = toScreen(camera({ turnDeg: 90 }), right);
    expect(top.x).toBeCloseTo(500, 9);
    expect(top.y).toBeCloseTo(200, 9);
    const bottom = toScreen(camera({ turnDeg: 90, side: 'bottom' }), right);
    expect(bottom.x).toBeCloseTo(500, 9);
    expect(bottom.y).toBeCloseTo(400, 9);
  });

  it('finds the way back from every screen point', () => {
    fc.assert(
      fc.property(anyCamera, anyPoint, (eye, at) => {
        const back = toBoard(eye, toScreen(eye, at));
        expect(back.x).toBeCloseTo(at.x, 6);
        expect(back.y).toBeCloseTo(at.y, 6);
      }),
    );
  });

  it('keeps the point under the pointer while zooming', () => {
    fc.assert(
      fc.property(anyCamera, fc.double({ min: 0.2, max: 5, noNaN: true }), (eye, factor) => {
        const pointer = { x: 733, y: 121 };
        const held = toBoard(eye, pointer);
        const seen = toScreen(zoomAt(eye, pointer, factor), held);
        expect(seen.x).toBeCloseTo(pointer.x, 5);
        expect(seen.y).toBeCloseTo(pointer.y, 5);
      }),
    );
  });

  it('pans by the pixels asked for, whatever the lie', () => {
    fc.assert(
      fc.property(anyCamera, anyPoint, (eye, at) => {
        const before = toScreen(eye, at);
        const after = toScreen(panBy(eye, 12, -7), at);
        expect(after.x - before.x).toBeCloseTo(12, 5);
        expect(after.y - before.y).toBeCloseTo(-7, 5);
      }),
    );
  });

  it('fits a box between its margins and touches two of them', () => {
    const margins = { left: 30, right: 20, top: 50, bottom: 80 };
    for (const turnDeg of [0, 90, 30])
      for (const side of ['top', 'bottom'] as const) {
        const box = { minX: 3, minY: -4, maxX: 90, maxY: 41 };
        const eye = fitBox(camera({ turnDeg, side }), box, margins);
        const xs: number[] = [];
        const ys: number[] = [];
        for (const x of [box.minX, box.maxX])
          for (const y of [box.minY, box.maxY]) {
            const seen = toScreen(eye, { x, y });
            xs.push(seen.x);
            ys.push(seen.y);
          }
        const slack = [Math.min(...xs) - 30, 980 - Math.max(...xs), Math.min(...ys) - 50, 520 - Math.max(...ys)];
        expect(Math.min(...slack)).toBeCloseTo(0, 6);
        expect(slack[0]).toBeCloseTo(slack[1], 6);
        expect(slack[2]).toBeCloseTo(slack[3], 6);
      }
  });

  it('knows what part of the board is in view', () => {
    const box = visibleBox(camera({ turnDeg: 90 }));
    expect(box.minX).toBeCloseTo(20, 9);
    expect(box.maxX).toBeCloseTo(80, 9);
    expect(box.minY).toBeCloseTo(-20, 9);
    expect(box.maxY).toBeCloseTo(80, 9);
  });
});

describe('the projection', () => {
  it('places the drawn scene where the camera sees it, also stretched in the middle of a zoom', () => {
    fc.assert(
      fc.property(anyCamera, anyPoint, fc.double({ min: 0.5, max: 2, noNaN: true }), (eye, at, factor) => {
        const projection = projectionOf(eye, { x: 10, y: -20 }, 1);
        const now = zoomAt(eye, { x: 100, y: 100 }, factor);
        const { x, y, scale } = scenePlacement(projection, now);
        const drawn = project(projection, at);
        const seen = toScreen(now, at);
        // The container stands on whole pixels, so half a pixel is all that may be lost.
        expect(Math.abs(x + scale * drawn.x - seen.x)).toBeLessThan(0.51);
        expect(Math.abs(y + scale * drawn.y - seen.y)).toBeLessThan(0.51);
      }),
    );
  });
});
