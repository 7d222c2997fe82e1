import { createState, type HeatState } from '../../../main/heat/heat-state.ts';
import { initialMoment, type Moment } from '../../../main/heat/moment.ts';
import type { HeatScene, SceneBody } from '../../../main/heat/scene.ts';
import { createStepper, type SubStep } from '../../../main/heat/stepping.ts';

/** A rectangular plate with constant films, for checks against exact solutions. SI units. */
export type PlateWish = {
  lengthM: number;
  widthM: number;
  cellM: number;
  thicknessM: number;
  inPlane: number;
  throughPlane: number;
  volumetricHeat: number;
  /** Constant film to the room on the upper and lower faces, W/m2K. */
  upperFilm: number;
  lowerFilm: number;
  roomC: number;
  bodies?: SceneBody[];
};

export type Plate = {
  state: HeatState;
  moment: Moment;
  step: (sub: SubStep) => void;
  /** Takes `count` steps of `dt`; the first two as two damped half steps each, as at the start of a segment. */
  run: (dt: number, count: number) => void;
};

export function createPlate(wish: PlateWish, watch?: (sub: SubStep) => void): Plate {
  const { lengthM, widthM, roomC } = wish;
  const scene: HeatScene = {
    roomC,
    entrainedC: roomC,
    workedSide: 'top',
    fumeFilm: 0,
    board: {
      outlines: [
        [
          [0, 0],
          [lengthM, 0],
          [lengthM, widthM],
          [0, widthM],
        ],
      ],
      cutouts: [],
      thicknessM: wish.thicknessM,
      volumetricHeat: wish.volumetricHeat,
      inPlane: wish.inPlane,
      throughPlane: wish.throughPlane,
      emissivity: 0.9,
    },
    bodies: wish.bodies ?? [],
    nozzle: null,
    preheater: null,
    segments: [],
  };
  const state = createState(scene, wish.cellM);
  constantFilms(state, wish.upperFilm, wish.lowerFilm);
  const stepper = createStepper(state, watch);
  const moment = initialMoment(scene);
  const step = (sub: SubStep) => stepper.step(moment, sub);
  function run(dt: number, count: number): void {
    for (let index = 0; index < count; index++) {
      if (index < 2) {
        step({ dt: dt / 2, theta: 1, fresh: index === 0 });
        step({ dt: dt / 2, theta: 1, fresh: false });
      } else step({ dt, theta: 0.5, fresh: false });
    }
  }
  return { state, moment, step, run };
}

/** Puts constant films in the place of the idle ones; radiation is off. */
export function constantFilms(state: HeatState, upper: number, lower: number): void {
  for (let row = 0; row < state.idle.rows.length; row += 3) state.idle.rows.set([upper, lower, 0], row);
  state.idleUp.fill(upper);
  state.idleDown.fill(lower);
}

/**
 * Turns a flux (W/m2 per cell) on the upper faces into what the stepping knows: a film so thin, to a gas so hot,
 * that their product is the flux whatever the board's temperature.
 */
export function fluxOnTop(plate: Plate, flux: (cell: number) => number): void {
  const { cellCount } = plate.state.grid;
  const film = 1e-7;
  const shape = new Float64Array(cellCount);
  const dilution = new Float64Array(cellCount);
  for (let cell = 0; cell < cellCount; cell++) {
    shape[cell] = flux(cell) > 0 ? 1 : 0;
    dilution[cell] = flux(cell);
  }
  plate.moment.footprint = { shape, dilution };
  plate.moment.strength = film;
  plate.moment.gasC = plate.state.entrainedC + 1 / film;
}

/** Sets faces to a function of the cell's centre. */
export function setFaces(plate: Plate, value: (x: number, y: number) => number): void {
  const { temperature, before, grid } = plate.state;
  for (let cell = 0; cell < grid.cellCount; cell++) {
    const x = (cell % grid.columns) * grid.cellM + grid.cellM / 2;
    const y = Math.floor(cell / grid.columns) * grid.cellM + grid.cellM / 2;
    for (const face of [cell, cell + grid.cellCount]) {
      temperature[face] = value(x, y);
      before[face] = temperature[face];
    }
  }
}

/** Temperature of the upper face at a point on a row, linear between the cells' centres. */
export function upperAt(state: HeatState, x: number, row = 0): number {
  const place = Math.max(0, x / state.grid.cellM - 0.5);
  const column = Math.floor(place);
  const at = (index: number) => state.temperature[row * state.grid.columns + index]!;
  return at(column) + (place - column) * (at(column + 1) - at(column));
}

/** Heat held by faces and bodies above `zeroC`, J. */
export function storedHeat(state: HeatState, zeroC: number): number {
  let joules = 0;
  for (let face = 0; face < state.grid.cellCount * 2; face++) {
    if (state.grid.exists[face % state.grid.cellCount]) {
      joules += state.faceCapacity * (state.temperature[face]! - zeroC);
    }
  }
  for (let entry = 0; entry < state.entries.count; entry++) {
    joules += state.entries.capacity[entry]! * (state.body.temperature[entry]! - zeroC);
  }
  return joules * state.grid.cellM ** 2;
}
