import { Matrix, solve } from 'ml-matrix';

/** A point of the search in coordinates from -1 to 1, and what was found there. */
export type Sample = { at: readonly number[]; values: readonly number[] };

/** 1, each coordinate, and each product of two: what a quadratic is made of. */
function featuresOf(at: readonly number[]): number[] {
  const products = at.flatMap((one, index) => at.slice(index).map((other) => one * other));
  return [1, ...at, ...products];
}

/** Keeps a coefficient that the samples do not tell at nought; small against any sample's weight. */
const RIDGE = 1e-4;

/**
 * Quadratics through what was found, one for each value: least squares, samples near `centre` weighing most. Single
 * peaks and times are smooth in a profile's figures, so a few samples say where the worst of them is least.
 * @param width distance at which a sample weighs 1/e
 * @returns what is expected at a place, value by value
 */
export function quadraticsOf(
  samples: readonly Sample[],
  centre: readonly number[],
  width: number,
): (at: readonly number[]) => number[] {
  const rows = samples.map(({ at, values }) => {
    const distance = Math.hypot(...at.map((one, axis) => one - centre[axis]!));
    return { features: featuresOf(at), values, weight: Math.max(1e-3, Math.exp(-((distance / width) ** 2))) };
  });
  const count = rows[0]!.features.length;
  const normal = Matrix.eye(count, count, RIDGE);
  const right = Matrix.zeros(count, rows[0]!.values.length);
  for (const { features, values, weight } of rows) {
    for (let row = 0; row < count; row++) {
      for (let column = 0; column < count; column++)
        normal.set(row, column, normal.get(row, column) + weight * features[row]! * features[column]!);
      for (let value = 0; value < values.length; value++)
        right.set(row, value, right.get(row, value) + weight * features[row]! * values[value]!);
    }
  }
  const coefficients = solve(normal, right).transpose().to2DArray();
  return (at) => {
    const features = featuresOf(at);
    return coefficients.map((own) => own.reduce((sum, one, index) => sum + one * features[index]!, 0));
  };
}
