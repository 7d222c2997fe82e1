import type { HeatState } from '../heat-state.ts';
import type { Moment } from '../moment.ts';
import type { Footprint } from '../nozzle.ts';
import type { StepParts, SubStep } from '../stepping.ts';
import { exchangeUnderCovers, filmsUnderCovers, filmsUnderCoversAtEnd } from '../under-covers.ts';
import * as slots from './assembly/slots.ts';

/** What of a run never changes. */
function writeRun({ room: { numbers }, grid, entries, idle, totals, ...state }: HeatState): void {
  numbers[slots.CELLS] = grid.cellCount;
  numbers[slots.COLUMNS] = grid.columns;
  numbers[slots.ROWS] = grid.rows;
  numbers[slots.FIRST_C] = idle.firstC;
  numbers[slots.LAST_C] = idle.lastC;
  numbers[slots.MOST_CONVECTION] = idle.mostConvection;
  numbers[slots.ROOM_C] = state.roomC;
  numbers[slots.ENTRAINED_C] = state.entrainedC;
  numbers[slots.BOARD_EMISSIVITY] = state.boardEmissivity;
  numbers[slots.CAPACITY] = state.faceCapacity;
  numbers[slots.THROUGH] = state.through;
  numbers[slots.UPPER_END] = entries.upperEnd;
  numbers[slots.METAL_START] = entries.metalStart;
  numbers[slots.METAL_END] = entries.metalEnd;
  numbers[slots.COUNT] = entries.count;
  numbers[slots.BODIES] = totals.mean.length;
  numbers[slots.HAS_COVERS] = entries.under.count > 0 ? 1 : 0;
}

/** The idle table by figure: a kernel then reads two rows at once. */
function writeTables({ idle: { rows }, tables }: HeatState): void {
  for (let row = 0; row < rows.length / 3; row++) {
    tables.convectionUp[row] = rows[row * 3]!;
    tables.convectionDown[row] = rows[row * 3 + 1]!;
    tables.radiation[row] = rows[row * 3 + 2]!;
  }
}

function writeMoment(numbers: Float64Array, moment: Moment, sub: SubStep): void {
  numbers[slots.DT] = sub.dt;
  numbers[slots.THETA] = sub.theta;
  numbers[slots.TAU] = sub.theta * sub.dt;
  numbers[slots.NOW] = sub.fresh ? 1 : 1.5;
  numbers[slots.EARLIER] = sub.fresh ? 0 : -0.5;
  numbers[slots.STRENGTH] = moment.strength;
  numbers[slots.GAS_C] = moment.gasC;
  numbers[slots.FLUX] = moment.flux;
  numbers[slots.STRENGTH_AT_END] = moment.strengthAtEnd;
  numbers[slots.GAS_AT_END_C] = moment.gasAtEndC;
  numbers[slots.FLUX_AT_END] = moment.fluxAtEnd;
  numbers[slots.PREHEATER_FILM] = moment.preheaterFilm;
  numbers[slots.PREHEATER_C] = moment.preheaterC;
  numbers[slots.SOURCE_C] = moment.sourceC;
  numbers[slots.HAS_FOOTPRINT] = moment.footprint ? 1 : 0;
}

/** What those who reckon beside the kernels ask of the moment. */
function readMoment(moment: Moment, numbers: Float64Array): void {
  moment.flux = numbers[slots.FLUX]!;
  moment.fluxAtEnd = numbers[slots.FLUX_AT_END]!;
  moment.sourceC = numbers[slots.SOURCE_C]!;
}

/**
 * The parts of a sub-step by the kernels; null where the run lies in no memory of theirs. Results are those of the plain parts, to
 * the bit. Nothing here handles a number of the model's unless there are cans with something under them: each would be an object of
 * its own until the code is optimised, and code so short hardly ever is.
 */
export function kernelParts(state: HeatState): StepParts | null {
  const { kernels, numbers } = state.room;
  if (!kernels) return null;
  const { tables } = state;
  const covered = state.entries.under.count > 0;
  let blowing: Footprint | null = null;
  writeRun(state);
  writeTables(state);
  return {
    begin(moment, sub) {
      writeMoment(numbers, moment, sub);
      kernels.settleMoment();
    },
    gather({ footprint }) {
      if (footprint && footprint !== blowing) {
        tables.shape.set(footprint.shape);
        tables.dilution.set(footprint.dilution);
        blowing = footprint;
      }
      kernels.faceRates();
      kernels.entryFilms();
      if (!covered) return;
      filmsUnderCovers(state, numbers[slots.NOW]!, numbers[slots.EARLIER]!);
      kernels.shieldEntries();
      exchangeUnderCovers(state, numbers[slots.NOW]!, numbers[slots.EARLIER]!);
    },
    takeIn: kernels.takeIn,
    solveLines: kernels.solveLines,
    feedFaces: kernels.feedFaces,
    solveCells: kernels.solveCells,
    giveBack: kernels.giveBack,
  };
}

/** Folds a sub-step that the kernels have made by their script into peaks and totals; null as above. */
export function kernelFold(state: HeatState): ((moment: Moment) => void) | null {
  const { kernels, numbers } = state.room;
  if (!kernels) return null;
  const covered = state.entries.under.count > 0;
  return (moment) => {
    kernels.addEnergy();
    kernels.stepShadows();
    kernels.filmsAtEnd();
    if (covered) {
      readMoment(moment, numbers);
      filmsUnderCoversAtEnd(state, moment);
    }
    kernels.foldSkins();
    kernels.foldBodies();
  };
}
