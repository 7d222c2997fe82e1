/**
 * Plain entries hang on a face through a joint and see an outer film. They are eliminated exactly:
 * `takeIn` before the line solves, `feedFaces` after them, `giveBack` once the faces are known.
 * Everything is per area; `tau` is theta times the step.
 */
export type EntryArrays = {
  face: Int32Array;
  capacity: Float64Array;
  joint: Float64Array;
  outer: Float64Array;
  outerSource: Float64Array;
  temperature: Float64Array;
  before: Float64Array;
  inverse: Float64Array;
  rhs: Float64Array;
};

/** Adds the entries' joints to the rates and the diagonal of their faces; keeps each entry's own right-hand side. */
export function takeIn(
  entries: EntryArrays,
  first: number,
  end: number,
  dt: number,
  tau: number,
  faceTemperature: Float64Array,
  rate: Float64Array,
  diagonal: Float64Array,
): void {
  const { face, capacity, joint, outer, outerSource, temperature, inverse, rhs } = entries;
  for (let entry = first; entry < end; entry++) {
    const under = face[entry]!;
    const here = temperature[entry]!;
    const g = joint[entry]!;
    const film = outer[entry]!;
    const flow = g * (faceTemperature[under]! - here);
    const pivot = 1 / (capacity[entry]! + tau * (g + film));
    inverse[entry] = pivot;
    rhs[entry] = dt * (flow + outerSource[entry]! - film * here);
    rate[under]! -= flow;
    diagonal[under]! += g - tau * g * g * pivot;
  }
}

/** Adds what the eliminated entries push into their faces (right-hand sides in kelvin). */
export function feedFaces(
  entries: EntryArrays,
  first: number,
  end: number,
  tau: number,
  capacity: number,
  rhs: Float64Array,
): void {
  const scale = tau / capacity;
  for (let entry = first; entry < end; entry++) {
    rhs[entries.face[entry]!]! += scale * entries.joint[entry]! * entries.inverse[entry]! * entries.rhs[entry]!;
  }
}

/** Solves both faces of every cell and moves their temperatures on; folds the peaks in. */
export function solveCells(
  cells: number,
  capacity: number,
  through: number,
  tau: number,
  rhs: Float64Array,
  diagonal: Float64Array,
  temperature: Float64Array,
  before: Float64Array,
  peak: Float64Array,
): void {
  const link = tau * through;
  const own = capacity + link;
  for (let upper = 0; upper < cells; upper++) {
    const lower = upper + cells;
    const a = own + tau * diagonal[upper]!;
    const d = own + tau * diagonal[lower]!;
    const scale = capacity / (a * d - link * link);
    const upperRhs = rhs[upper]!;
    const lowerRhs = rhs[lower]!;
    const upperOld = temperature[upper]!;
    const lowerOld = temperature[lower]!;
    const upperNew = upperOld + (d * upperRhs + link * lowerRhs) * scale;
    const lowerNew = lowerOld + (a * lowerRhs + link * upperRhs) * scale;
    before[upper] = upperOld;
    before[lower] = lowerOld;
    temperature[upper] = upperNew;
    temperature[lower] = lowerNew;
    if (upperNew > peak[upper]!) peak[upper] = upperNew;
    if (lowerNew > peak[lower]!) peak[lower] = lowerNew;
  }
}

/** Moves the entries on, now that the change of their faces is known. */
export function giveBack(
  entries: EntryArrays,
  first: number,
  end: number,
  tau: number,
  faceTemperature: Float64Array,
  faceBefore: Float64Array,
): void {
  const { face, joint, temperature, before, inverse, rhs } = entries;
  for (let entry = first; entry < end; entry++) {
    const under = face[entry]!;
    const change = faceTemperature[under]! - faceBefore[under]!;
    const here = temperature[entry]!;
    before[entry] = here;
    temperature[entry] = here + inverse[entry]! * (rhs[entry]! + tau * joint[entry]! * change);
  }
}
