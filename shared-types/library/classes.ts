import { CAPACITOR_CLASSES } from './classes/capacitors.ts';
import { CHIP_CLASSES } from './classes/chips.ts';
import { CONNECTOR_CLASSES } from './classes/connectors.ts';
import { ENERGY_AND_MODULE_CLASSES } from './classes/energy-and-modules.ts';
import { OTHER_CLASSES } from './classes/others.ts';
import { SEMICONDUCTOR_CLASSES } from './classes/semiconductors.ts';
import { TIMING_AND_SWITCH_CLASSES } from './classes/timing-and-switches.ts';
import type { PartClass } from './library-types.ts';

/** Every class of parts the library knows. */
export const PART_CLASSES: readonly PartClass[] = [
  ...CHIP_CLASSES,
  ...SEMICONDUCTOR_CLASSES,
  ...CAPACITOR_CLASSES,
  ...TIMING_AND_SWITCH_CLASSES,
  ...CONNECTOR_CLASSES,
  ...ENERGY_AND_MODULE_CLASSES,
  ...OTHER_CLASSES,
];

const byId = new Map(PART_CLASSES.map((partClass) => [partClass.id, partClass]));
const UNKNOWN = byId.get('unknown') as PartClass;

/** True when the library holds a class of this id. */
export const isClassId = (id: string): boolean => byId.has(id);

/** The class with this id; an id that the library does not hold gives the cautious class 'unknown'. */
export const classById = (id: string): PartClass => byId.get(id) ?? UNKNOWN;
