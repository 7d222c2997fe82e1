import { at, num, set } from './access';
import {
  DECAY,
  FLUX,
  HAS_COVERS,
  HAS_FOOTPRINT,
  HAS_PREHEATER,
  NUMBERS_AT,
  PREHEATER_C,
  ROOM_C,
  SCRIPT,
  SCRIPT_ROW,
  SENSOR_FACE,
  SHIELDS_AT_ONCE,
  SOURCE_C,
  SOURCE_MOST_C,
  STEP_NUMBERS,
  TEMPERATURE,
  WANTED_C,
} from './slots';

/** Gain of the board sensor's controller (`moment.ts`). */
const SENSOR_GAIN: f64 = 8;

/** What the preheater's source is told: what the profile wants of it, or what a board sensor makes of that. */
function command(): f64 {
  const wanted = num(WANTED_C);
  const sensor = num(SENSOR_FACE);
  if (sensor < 0) return wanted;
  const read = load<f64>(at(TEMPERATURE) + (<usize>sensor << 3));
  const told = wanted + SENSOR_GAIN * (wanted - read);
  return min(num(SOURCE_MOST_C), max(num(ROOM_C), told));
}

/** Sets out on a sub-step of the script: its numbers, the preheater's source through its lag. */
export function beginStep(step: u32): void {
  const row = SCRIPT_ROW << 3;
  memory.copy(NUMBERS_AT + (STEP_NUMBERS << 3), at(SCRIPT) + step * row, row);
  if (num(HAS_PREHEATER) !== 0) {
    const source = num(SOURCE_C);
    const told = command();
    const after = told + (source - told) * num(DECAY);
    set(PREHEATER_C, (source + after) / 2);
    set(SOURCE_C, after);
  }
  settleMoment();
}

/** What follows from the numbers of a sub-step. */
export function settleMoment(): void {
  const irradiated = num(HAS_FOOTPRINT) !== 0 && num(FLUX) !== 0;
  set(SHIELDS_AT_ONCE, num(HAS_COVERS) !== 0 || irradiated ? 0 : 1);
}
