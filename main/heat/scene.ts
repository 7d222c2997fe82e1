/**
 * What the heat model is given: one heat run on one board, in SI units (temperatures in °C).
 * Positions are seen from the top side, x right, y up; angles counter-clockwise in degrees.
 */

export type BoardSide = 'top' | 'bottom';

/** x and y in metres. */
export type PointM = readonly [xM: number, yM: number];

/** One closed ring; the last point joins the first. */
export type RingM = readonly PointM[];

export type SceneBoard = {
  /** Outer borders (arcs already flattened); more than one for a panel. */
  outlines: readonly RingM[];
  cutouts: readonly RingM[];
  thicknessM: number;
  /** Density times specific heat, J/m3K. */
  volumetricHeat: number;
  /** Conductivity along the board, W/mK. */
  inPlane: number;
  /** Conductivity through the board, W/mK. */
  throughPlane: number;
  emissivity: number;
};

/** A 'frame' covers only its wall; a 'can' covers its whole rectangle but is joined to the board under its wall. */
export type BodyShape = 'rect' | 'round' | 'frame' | 'can';

export type SceneBody = {
  id: string;
  side: BoardSide;
  xM: number;
  yM: number;
  /** Along x before turning; the diameter of a round body. */
  lengthM: number;
  /** Along y before turning. */
  widthM: number;
  turnDeg: number;
  shape: BodyShape;
  /** Width of the wall of a 'frame' or 'can', inside its rectangle. */
  wallM: number;
  heightM: number;
  /** Joint conductance over the covered area, half the body included, W/m2K. */
  jointConductance: number;
  /** Conductance between a can's top and the board inside its wall, W/m2K; of no meaning for other shapes. */
  gapConductance: number;
  volumetricHeat: number;
  /** Conductivity of the body, for the temperature of its skin, W/mK. */
  conductivity: number;
  emissivity: number;
  /** Thermal resistance of everything laid over the body, m2K/W (0: bare). */
  shieldResistance: number;
  /** Heat capacity per area of what is laid over the body, J/m2K. */
  shieldArealHeat: number;
  /** A block or a wet gel outside all of that: one mass more; none unless said. */
  overlay?: SceneOverlay | null;
  /** Metal bodies (cans, frames, stiffeners) have one temperature throughout. */
  metal: boolean;
  /** Default shield for the shadow answer 'if shielded'; null where none is asked for. */
  trialShield: { resistance: number; arealHeat: number; emissivity: number } | null;
};

export type SceneOverlay = {
  /** Heat of the mass without water, J/m2K. */
  arealHeat: number;
  /** Conductance between mass and body, while it is wet and once it is dry (a block: the same), W/m2K. */
  wetConductance: number;
  dryConductance: number;
  waterKgM2: number;
};

/** A screen stood on the board round the nozzle's work: what passes under its rim fades as past a hood's. */
export type SceneFence = {
  xM: number;
  yM: number;
  lengthM: number;
  widthM: number;
  turnDeg: number;
  rimGapM: number;
  leak: number;
};

export type NozzleMouth =
  | { shape: 'round'; diameterM: number }
  | { shape: 'rect'; lengthM: number; widthM: number; turnDeg: number };

export type SceneNozzle = {
  mouth: NozzleMouth;
  standOffM: number;
  /** Radius of the circle the nozzle is kept moving on; 0: held still. */
  sweepRadiusM: number;
  tiltDeg: number;
  headingDeg: number;
  /** A nozzle that closes over the part; null: an open nozzle. */
  hood: { filmAt30: number; rimGapM: number; leak: number } | null;
  /** What the film of the law is multiplied with; absent: 1. */
  filmFactor?: number;
  /** Exponent with which entrained air dilutes the jet; absent: 0.9. */
  dilutionExponent?: number;
  /** An infrared emitter behind the mouth in place of a jet: 'gas' temperatures are then those of the emitter. */
  infrared?: { emissivity: number } | null;
};

export type ScenePreheater = {
  xM: number;
  yM: number;
  lengthM: number;
  widthM: number;
  turnDeg: number;
  /** Film between the source and the lower side, W/m2K. */
  film: number;
  lagS: number;
  /** With a board sensor the profile sets the board's temperature there, not the source's. */
  sensor: { xM: number; yM: number; sourceMaxC: number } | null;
};

export type SceneSegment = {
  name: string;
  seconds: number;
  preheaterStartC: number;
  preheaterEndC: number;
  /** Outlet temperature of the gas; null: gas off. */
  gas: { startC: number; endC: number; flowStart: number; flowEnd: number } | null;
  /** Nozzle centre (flows in L/min at 20 °C). */
  nozzleXM: number;
  nozzleYM: number;
  /** Fence round the work of this segment; none unless said. */
  fence?: SceneFence | null;
};

export type HeatScene = {
  roomC: number;
  /** Air that the jet draws in. */
  entrainedC: number;
  /** 'Up' is this side; the other one faces the preheater. */
  workedSide: BoardSide;
  /** Added to idle convection by fume extraction, W/m2K. */
  fumeFilm: number;
  /** What the idle film, convection and radiation, is multiplied with; absent: 1. */
  idleFactor?: number;
  board: SceneBoard;
  bodies: readonly SceneBody[];
  nozzle: SceneNozzle | null;
  preheater: ScenePreheater | null;
  segments: readonly SceneSegment[];
};
