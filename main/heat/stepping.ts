import { faceRates } from './face-rates.ts';
import type { HeatState } from './heat-state.ts';
import { kernelParts } from './kernels/kernel-steps.ts';
import type { Moment } from './moment.ts';
import { type EntryArrays, feedFaces, giveBack, solveCells, takeIn } from './numerics/cell-solve.ts';
import { factorLines } from './numerics/line-factors.ts';
import { solveAlongColumns, solveAlongRows } from './numerics/line-solve.ts';
import { giveBackMetal, type MetalArrays, prepareMetal, solveMetal, takeInMetal } from './numerics/metal-solve.ts';
import { coverEntries, moveOverlays, type OverlaidEntries } from './overlay.ts';
import { entryFilms, irradiateFaces } from './surface-films.ts';

/** One sub-step to take. */
export type SubStep = {
  dt: number;
  /** 1/2 for a full step, 1 for the half steps at the start of a segment. */
  theta: number;
  /** The first half step of a segment has no earlier state to extrapolate from. */
  fresh: boolean;
  /** Names theta x dt among the sub-steps of a run; none: it is reckoned. */
  factors?: number;
};

/** Moves the whole board on by one sub-step; allocates nothing. */
export type Stepper = {
  step: (moment: Moment, sub: SubStep) => void;
  /** The same where the kernels have set out on the sub-step by their script. */
  stepBegun: (moment: Moment, sub: SubStep) => void;
  /** The arrays that the solvers work on, for those who look at a finished step. */
  entryArrays: EntryArrays;
};

function metalOf(state: HeatState): MetalArrays | null {
  const { metalStart, metalEnd, bodyStart, cell, capacity } = state.entries;
  if (metalEnd === metalStart) return null;
  const bodyOf = new Int32Array(metalEnd - metalStart);
  let bodies = 0;
  for (let order = 0; order + 1 < bodyStart.length; order++) {
    if (bodyStart[order]! < metalStart || bodyStart[order]! >= metalEnd) continue;
    bodyOf.fill(bodies, bodyStart[order]! - metalStart, bodyStart[order + 1]! - metalStart);
    bodies++;
  }
  return prepareMetal(metalStart, metalEnd, bodies, bodyOf, cell, capacity);
}

function entryArraysOf(state: HeatState): EntryArrays {
  const { entries, body } = state;
  return {
    face: entries.face,
    capacity: entries.capacity,
    joint: entries.joint,
    outer: body.outer,
    outerSource: body.outerSource,
    temperature: body.temperature,
    before: body.before,
    inverse: body.inverse,
    rhs: body.rhs,
  };
}

/** The parts of a sub-step, in their order; between them stands what is rare: covers, metal, overlays. */
export type StepParts = {
  /** Takes the moment over. */
  begin: (moment: Moment, sub: SubStep) => void;
  /** The right-hand side of the whole system: films, joints, flow between faces and along the board. */
  gather: (moment: Moment, sub: SubStep) => void;
  takeIn: (sub: SubStep) => void;
  solveLines: (sub: SubStep) => void;
  feedFaces: (sub: SubStep) => void;
  solveCells: (sub: SubStep) => void;
  giveBack: (sub: SubStep) => void;
};

/** The parts in JavaScript: where there is nothing faster, and what the kernels are held against. */
function plainParts(state: HeatState, entries: EntryArrays): StepParts {
  const { grid, rate, diagonal, temperature, before, peak, faceCapacity, through } = state;
  const { columns, rows, cellCount } = grid;
  const { metalStart, metalEnd, count } = state.entries;
  return {
    begin() {},
    gather(moment, sub) {
      const now = sub.fresh ? 1 : 1.5;
      const earlier = sub.fresh ? 0 : -0.5;
      faceRates(state, moment, now, earlier);
      irradiateFaces(state, moment);
      entryFilms(state, moment, now, earlier);
    },
    takeIn({ dt, theta }) {
      takeIn(entries, 0, metalStart, dt, theta * dt, temperature, rate, diagonal);
      takeIn(entries, metalEnd, count, dt, theta * dt, temperature, rate, diagonal);
    },
    solveLines({ dt }) {
      solveAlongRows(rate, columns, rows, cellCount, state.alongRows, dt / faceCapacity);
      solveAlongColumns(rate, columns, rows, cellCount, state.alongColumns);
    },
    feedFaces({ dt, theta }) {
      feedFaces(entries, 0, metalStart, theta * dt, faceCapacity, rate);
      feedFaces(entries, metalEnd, count, theta * dt, faceCapacity, rate);
    },
    solveCells({ dt, theta }) {
      solveCells(cellCount, faceCapacity, through, theta * dt, rate, diagonal, temperature, before, peak);
    },
    giveBack({ dt, theta }) {
      giveBack(entries, 0, metalStart, theta * dt, temperature, before);
      giveBack(entries, metalEnd, count, theta * dt, temperature, before);
    },
  };
}

/**
 * Douglas splitting in delta form (heat-model.md, section 6):
 * (1 - tau Ax)(1 - tau Ay)(1 - tau Av) delta = dt F(T), tau = theta dt.
 * @param watch called in every step when `rate` holds the films' flows (lateral flows cancel in its sum) and
 *   `diagonal` the bare films: for energy balances
 */
export function createStepper(state: HeatState, watch?: (sub: SubStep) => void): Stepper {
  const { grid, rate, diagonal, temperature, faceCapacity, through } = state;
  const { columns, rows, cellCount } = grid;
  const board = { cells: cellCount, capacity: faceCapacity, through };
  const entries = entryArraysOf(state);
  const metal = metalOf(state);
  const overlaid: OverlaidEntries = { share: state.entries.share, ...state.body };
  const parts = kernelParts(state) ?? plainParts(state, entries);
  const { overlays } = state;
  const hasOverlays = overlays.count > 0;
  let factoredFor = -1;
  let factors = -1;

  function factor({ dt, theta }: SubStep): void {
    const tau = theta * dt;
    if (tau === factoredFor) return;
    factorLines(state.alongRows, state.linkRight, columns, rows, 1, tau / faceCapacity);
    factorLines(state.alongColumns, state.linkUp, columns, rows, columns, tau / faceCapacity);
    factoredFor = tau;
  }

  function stepBegun(moment: Moment, sub: SubStep): void {
    if (sub.factors === undefined || sub.factors !== factors) factor(sub);
    factors = sub.factors ?? -1;
    parts.gather(moment, sub);
    watch?.(sub);
    if (hasOverlays) coverEntries(overlays, overlaid, sub);
    parts.takeIn(sub);
    if (metal) takeInMetal(metal, entries, sub, temperature, rate, diagonal);
    parts.solveLines(sub);
    parts.feedFaces(sub);
    if (metal) solveMetal(metal, entries, board, sub, rate, diagonal);
    parts.solveCells(sub);
    parts.giveBack(sub);
    if (metal) giveBackMetal(metal, entries);
    if (hasOverlays) moveOverlays(overlays, overlaid, sub);
  }

  function step(moment: Moment, sub: SubStep): void {
    parts.begin(moment, sub);
    stepBegun(moment, sub);
  }

  return { step, stepBegun, entryArrays: entries };
}
