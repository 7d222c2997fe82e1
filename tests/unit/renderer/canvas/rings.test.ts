import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlap, textBox } from '../../../../renderer/canvas/drawing/boxes.ts';
import { isothermNumbers } from '../../../../renderer/canvas/layers/isotherms.ts';
import { ringLayer } from '../../../../renderer/canvas/layers/rings.ts';
import { distanceToArea, ringAround, ringsAround } from '../../../../renderer/canvas/sites/rings.ts';
import { siteOn } from '../../../../shared-types/rules/new-plan.ts';
import { assessmentOf, boardWith, modelOf, part, sceneOf } from './sample.ts';

const area = (x: number, y: number, lengthMm: number, widthMm: number, turnDeg: number) => ({
  x,
  y,
  lengthMm,
  widthMm,
  turnDeg,
});

describe('distance rings', () => {
  it('keep their distance to the edge of a turned area everywhere', () => {
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 180 }), fc.constantFrom(5, 10, 20), (turnDeg, distance) => {
        const place = area(40, 25, 17, 11, turnDeg);
        for (const point of ringAround(place, distance, 0.01))
          expect(Math.abs(distanceToArea(point, place) - distance)).toBeLessThan(0.011);
      }),
    );
  });

  it('have the length of the outline of a rounded rectangle', () => {
    const ring = ringAround(area(0, 0, 20, 10, 30), 5, 0.001);
    let length = 0;
    for (let i = 1; i < ring.length; i++) length += Math.hypot(ring[i].x - ring[i - 1].x, ring[i].y - ring[i - 1].y);
    expect(length).toBeCloseTo(2 * 20 + 2 * 10 + 2 * Math.PI * 5, 1);
  });

  it('round several areas say how far it is to the nearest', () => {
    const areas = [area(0, 0, 10, 10, 0), area(14, 4, 8, 8, 45), area(60, 0, 5, 5, 0)];
    const rings = ringsAround(areas, 5, 0.01);
    const points = rings.flat();
    expect(points.length).toBeGreaterThan(50);
    for (const point of points) {
      const nearest = Math.min(...areas.map((one) => distanceToArea(point, one)));
      expect(Math.abs(nearest - 5)).toBeLessThan(0.02);
    }
    // The far area keeps its ring whole; the two near ones share one line.
    expect(rings.some((ring) => ring.every((point) => point.x > 50))).toBe(true);
  });

  it('are drawn once for two areas in the same place', () => {
    expect(ringsAround([area(0, 0, 10, 10, 0), area(0, 0, 10, 10, 0)], 5, 0.01)).toHaveLength(1);
  });

  it('carry their distance, on both sides of the board', () => {
    const target = part('U1', 50, 30, 10, 10);
    for (const shownSide of ['top', 'bottom'] as const) {
      const model = modelOf(boardWith([target]), { sites: [siteOn(target, 'site-1')] }, { shownSide });
      const texts = ringLayer.marks(sceneOf(model)).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      expect(texts).toEqual(['5 mm', '10 mm', '20 mm']);
    }
  });

  it('keep their numbers off those of the isotherms', () => {
    const target = part('U1', 50, 30, 10, 10);
    const rest = { assessment: assessmentOf((x, y) => 240 - 3 * Math.hypot(x - 48, y - 31)) };
    const model = modelOf(boardWith([target]), { sites: [siteOn(target, 'site-1')] }, rest);
    for (let zoom = 6; zoom < 30; zoom *= 1.04) {
      const scene = sceneOf(model, { zoom });
      const rings = ringLayer.marks(scene).flatMap((mark) => (mark.kind === 'text' ? [textBox(mark, mark.text)] : []));
      const isotherms = isothermNumbers(scene);
      expect(isotherms.length).toBeGreaterThan(3);
      for (const box of rings) expect(isotherms.some((other) => overlap(box, other))).toBe(false);
    }
  });

  it('carry their distance in mil for who works in mil', () => {
    const target = part('U1', 50, 30, 10, 10);
    const model = modelOf(boardWith([target]), { sites: [siteOn(target, 'site-1')] }, { lengthUnit: 'mil' });
    const texts = ringLayer.marks(sceneOf(model)).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toEqual(['197 mil', '394 mil', '787 mil']);
  });
});
