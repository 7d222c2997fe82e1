import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spanOf, ticksIn } from '../../../../renderer/stages/heat/search/front-scale.ts';

test('a span holds all its values with room, and few round ticks', () => {
  const value = fc.double({ min: -300, max: 900, noNaN: true });
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 12 }), (values) => {
      const span = spanOf(values);
      expect(span.from).toBeLessThanOrEqual(Math.min(...values));
      expect(span.to).toBeGreaterThan(Math.max(...values));
      const ticks = ticksIn(span);
      expect(ticks.length).toBeGreaterThanOrEqual(1);
      expect(ticks.length).toBeLessThanOrEqual(9);
      for (const tick of ticks) {
        expect(Number.isInteger(tick)).toBe(true);
        expect(tick).toBeGreaterThanOrEqual(span.from);
        expect(tick).toBeLessThanOrEqual(span.to);
      }
    }),
  );
});
