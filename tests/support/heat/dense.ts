/** Small dense linear algebra for checks: nothing of the program's own solvers is used. */

export type Matrix = Float64Array[];

export const zeros = (size: number): Matrix => Array.from({ length: size }, () => new Float64Array(size));

/** LU factors with partial pivoting; returns a solver. */
export function factorise(given: Matrix): (rhs: ArrayLike<number>) => Float64Array {
  const size = given.length;
  const a = given.map((row) => row.slice());
  const order = Array.from({ length: size }, (_, index) => index);
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) if (Math.abs(a[i]![k]!) > Math.abs(a[pivot]![k]!)) pivot = i;
    [a[k], a[pivot]] = [a[pivot]!, a[k]!];
    [order[k], order[pivot]] = [order[pivot]!, order[k]!];
    const top = a[k]!;
    for (let i = k + 1; i < size; i++) {
      const row = a[i]!;
      if (row[k] === 0) continue;
      const factor = row[k]! / top[k]!;
      row[k] = factor;
      for (let j = k + 1; j < size; j++) row[j]! -= factor * top[j]!;
    }
  }
  return (rhs) => {
    const x = Float64Array.from(order, (index) => rhs[index]!);
    for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) x[i]! -= a[i]![j]! * x[j]!;
    for (let i = size - 1; i >= 0; i--) {
      for (let j = i + 1; j < size; j++) x[i]! -= a[i]![j]! * x[j]!;
      x[i]! /= a[i]![i]!;
    }
    return x;
  };
}

function multiply(a: Matrix, b: Matrix): Matrix {
  return a.map((row) => {
    const out = new Float64Array(b.length);
    row.forEach((value, k) => {
      if (value !== 0) for (let j = 0; j < out.length; j++) out[j]! += value * b[k]![j]!;
    });
    return out;
  });
}

/** exp(A) by scaling, a Taylor series and squaring. */
export function exponential(a: Matrix): Matrix {
  const norm = Math.max(...a.map((row) => row.reduce((sum, value) => sum + Math.abs(value), 0)));
  const halvings = Math.max(0, Math.ceil(Math.log2(norm)) + 4);
  const scaled = a.map((row) => row.map((value) => value / 2 ** halvings));
  let result = zeros(a.length);
  let term = zeros(a.length);
  for (let i = 0; i < a.length; i++) result[i]![i] = term[i]![i] = 1;
  for (let order = 1; order <= 18; order++) {
    term = multiply(term, scaled).map((row) => row.map((value) => value / order));
    result = result.map((row, i) => row.map((value, j) => value + term[i]![j]!));
  }
  for (let square = 0; square < halvings; square++) result = multiply(result, result);
  return result;
}

/** M v. */
export function apply(m: Matrix, v: ArrayLike<number>): Float64Array {
  return Float64Array.from(m, (row) => row.reduce((sum, value, j) => sum + value * v[j]!, 0));
}
