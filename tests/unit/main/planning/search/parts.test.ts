import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstPlaces, placeBeside, placesAbout, scaled } from '../../../../../main/planning/search/lattice.ts';
import { leastEnough } from '../../../../../main/planning/search/solve-gas.ts';
import { quadraticsOf } from '../../../../../main/planning/search/surrogate.ts';
import { succeed } from '../../../../../shared-types/problem.ts';

test('the fewest seconds that suffice are those a walk second by second finds, for any rising spare', () => {
  const rising = fc.array(fc.double({ min: 0.01, max: 4, noNaN: true }), { minLength: 2, maxLength: 200 });
  fc.assert(
    fc.property(
      rising,
      fc.double({ min: -300, max: 50, noNaN: true }),
      fc.integer({ min: 0, max: 220 }),
      (rises, start, guess) => {
        let value = start;
        const spares = rises.map((rise) => {
          value += rise;
          return value;
        });
        const walked = spares.findIndex((spare) => spare >= 0);
        let asked = 0;
        const found = leastEnough(10, 9 + spares.length, guess, (seconds) => {
          asked += 1;
          return succeed(spares[seconds - 10]!);
        });
        expect(found).toEqual({ ok: true, value: walked < 0 ? null : walked + 10 });
        expect(asked).toBeLessThanOrEqual(30);
      },
    ),
  );
});

test('quadratics give back what is quadratic, also where nothing was sampled', () => {
  const truth = ([x, y, z]: readonly number[]) => [3 - 2 * x! + x! * y! + 0.5 * z! * z!, 40 * y! - 7 * x! * z!];
  const samples = firstPlaces([0, 1, 2].map(() => ({ from: -10, to: 10 }))).map((place) => {
    const at = place.map((one) => one / 10);
    return { at, values: truth(at) };
  });
  const expectAt = quadraticsOf(samples, [0, 0, 0], 2);
  for (const at of [
    [0.3, -0.2, 0.9],
    [-0.7, 0.7, 0.1],
  ]) {
    expectAt(at).forEach((value, index) => {
      expect(value).toBeCloseTo(truth(at)[index]!, 1);
    });
  }
});

test('places are whole, in the bounds, each once; an axis of one figure stays at it', () => {
  const axis = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 200 }));
  fc.assert(
    fc.property(
      fc.array(axis, { minLength: 3, maxLength: 3 }),
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      (ends, reach) => {
        const axes = ends.map(([from, length]) => ({ from, to: from + length }));
        const middle = axes.map(({ from, to }) => Math.round((from + to) / 2));
        const beside = placeBeside(middle, axes, { axis: 1, by: 0.2 });
        for (const places of [firstPlaces(axes), placesAbout(middle, axes, reach), [beside]]) {
          expect(new Set(places.map(String)).size).toBe(places.length);
          for (const place of places) {
            place.forEach((value, index) => {
              expect(Number.isInteger(value)).toBe(true);
              expect(value).toBeGreaterThanOrEqual(axes[index]!.from);
              expect(value).toBeLessThanOrEqual(axes[index]!.to);
            });
            expect(scaled(place, axes).every((one) => Math.abs(one) <= 1)).toBe(true);
          }
        }
      },
    ),
    { numRuns: 30 },
  );
});
