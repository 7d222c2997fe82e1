/**
 * Where the kernels find what they work on: a run's memory begins with a table of addresses (four bytes each) and a table of
 * numbers (eight bytes each). Plain constants, read by the kernels' compiler and by the house alike.
 */

export const ADDRESSES_AT = 1024;
export const NUMBERS_AT = 1536;
/** The first byte that arrays may lie at. */
export const ARRAYS_AT = 2048;

// Numbers that a run never changes, or that its steps hand on.
export const CELLS = 0;
export const COLUMNS = 1;
export const ROWS = 2;
export const FIRST_C = 3;
export const LAST_C = 4;
export const MOST_CONVECTION = 5;
export const ROOM_C = 6;
export const ENTRAINED_C = 7;
export const BOARD_EMISSIVITY = 8;
export const CAPACITY = 9;
export const THROUGH = 10;
export const PREHEATER_FILM = 11;
export const PREHEATER_C = 12;
export const SOURCE_C = 13;
export const UPPER_END = 14;
export const METAL_START = 15;
export const METAL_END = 16;
export const COUNT = 17;
export const BODIES = 18;
/** 1: something stands under a can. */
export const HAS_COVERS = 19;
export const HAS_PREHEATER = 20;
/** Face that a board sensor reads; -1: none. */
export const SENSOR_FACE = 21;
export const SOURCE_MOST_C = 22;
/** 1: nothing comes between the films of entries and their shields. */
export const SHIELDS_AT_ONCE = 23;

// Numbers of a sub-step: a row of the script, in this order.
export const STEP_NUMBERS = 24;
export const DT = 24;
export const TAU = 25;
export const THETA = 26;
export const NOW = 27;
export const EARLIER = 28;
export const STRENGTH = 29;
export const GAS_C = 30;
export const FLUX = 31;
export const STRENGTH_AT_END = 32;
export const GAS_AT_END_C = 33;
export const FLUX_AT_END = 34;
/** 1: a nozzle or emitter stands over the board. */
export const HAS_FOOTPRINT = 35;
/** End of the sub-step, s from the start of the run. */
export const END_S = 36;
/** What the profile wants of the preheater at mid-step, and exp(-dt / lag) of its source. */
export const WANTED_C = 37;
export const DECAY = 38;
/** Numbers of a row of the script. */
export const SCRIPT_ROW = 16;

// Addresses: faces (upper cells, then lower cells).
export const TEMPERATURE = 0;
export const BEFORE = 1;
export const PEAK = 2;
export const RATE = 3;
export const DIAGONAL = 4;
export const BARE = 5;
// Cells.
export const LINK_RIGHT = 6;
export const LINK_UP = 7;
export const ROW_INVERSE = 8;
export const ROW_BACK = 9;
export const ROW_AHEAD = 10;
export const COLUMN_INVERSE = 11;
export const COLUMN_BACK = 12;
export const COLUMN_AHEAD = 13;
export const ZONE = 14;
export const SHAPE = 15;
export const DILUTION = 16;
// Rows of the idle table, one figure each.
export const IDLE_UP = 17;
export const IDLE_DOWN = 18;
export const CONVECTION_UP = 19;
export const CONVECTION_DOWN = 20;
export const RADIATION = 21;
/** Masks of two zone bytes. */
export const ZONE_MASKS = 22;
// Entries.
export const FACE = 23;
export const CELL = 24;
export const SHARE = 25;
export const ENTRY_CAPACITY = 26;
export const JOINT = 27;
export const FILM_AREA = 28;
export const RESISTANCE = 29;
export const EMISSIVITY = 30;
export const SKIN_CONDUCTANCE = 31;
export const ENTRY_TEMPERATURE = 32;
export const ENTRY_BEFORE = 33;
export const ENTRY_PEAK = 34;
export const PEAK_SKIN = 35;
export const FILM = 36;
export const SOURCE = 37;
export const GAS_FILM = 38;
export const ENTRY_RADIATION = 39;
export const IRRADIATED = 40;
export const OUTER = 41;
export const OUTER_SOURCE = 42;
export const INVERSE = 43;
export const ENTRY_RHS = 44;
export const SHADOW = 45;
export const SHADOW_PEAK = 46;
export const SHADOW_PEAK_SKIN = 47;
export const TRIAL_RESISTANCE = 48;
export const TRIAL_HEAT = 49;
export const TRIAL_DIMMED = 50;
// Bodies.
export const BODY_START = 51;
export const ENERGY = 52;
export const MEANS = 53;
export const SERIES_ROW = 54;
/** Sum of the shares of a body. */
export const WEIGHTS = 55;
/** Skins of entries at the end of a sub-step. */
export const SKIN = 56;
export const MEAN_PEAK = 57;
export const MEAN_PEAK_S = 58;
export const ENERGY_AT_PEAK = 59;
/** A row of numbers for each sub-step of the run. */
export const SCRIPT = 60;
/** Temperature of the preheater's source at the end of a sub-step. */
export const SOURCE_ROW = 61;
