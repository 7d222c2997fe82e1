import { AIR_HEAT, airConductivity, airDensity, airViscosity, STEFAN_BOLTZMANN, ZERO_CELSIUS_K } from './air.ts';
import { columnX, type HeatGrid, rowY } from './grid.ts';
import type { NozzleMouth, SceneFence, SceneNozzle } from './scene.ts';

/** Mean board temperature that the jet's air properties are taken against, °C (assumption of the model). */
const JET_BOARD_C = 150;
const SWEEP_POINTS = 32;
const BORDER_M = 1e-9;

/** Hydraulic diameter of the mouth: its own for a round one, 2 w l / (w + l) for a rectangle. */
export function mouthDiameter(mouth: NozzleMouth): number {
  if (mouth.shape === 'round') return mouth.diameterM;
  return (2 * mouth.widthM * mouth.lengthM) / (mouth.widthM + mouth.lengthM);
}

/** What the flow makes of the nozzle at one moment. */
export type JetStrength = {
  reynolds: number;
  /** Factor of the footprint, W/m2K: the film is strength x geometry. */
  strength: number;
};

/**
 * Strength of the nozzle for an outlet temperature (°C) and a flow (L/min at 20 °C, 101325 Pa).
 * Open nozzle: K of Martin's single round jet (Martin 1977; figures.md E3); hood: film inside its rim.
 */
export function jetStrength(nozzle: SceneNozzle, gasC: number, flow: number): JetStrength {
  const diameter = mouthDiameter(nozzle.mouth);
  const film = (gasC + JET_BOARD_C) / 2 + ZERO_CELSIUS_K;
  const viscosity = airViscosity(film);
  const massFlow = (flow / 60000) * airDensity(20 + ZERO_CELSIUS_K);
  const reynolds = (4 * massFlow) / (Math.PI * diameter * viscosity);
  const factor = nozzle.filmFactor ?? 1;
  if (nozzle.hood) return { reynolds, strength: factor * nozzle.hood.filmAt30 * (flow / 30) ** 0.6 };
  const conductivity = airConductivity(film);
  const prandtl = (AIR_HEAT * viscosity) / conductivity;
  const spread = 2 * Math.sqrt(reynolds) * Math.sqrt(1 + 0.005 * reynolds ** 0.55);
  return { reynolds, strength: factor * (conductivity / diameter) * prandtl ** 0.42 * spread };
}

/** What an emitter of a temperature (°C) sends beyond what the room sends, W/m2 (Stefan-Boltzmann, grey). */
export function emitterFlux(emissivity: number, emitterC: number, roomC: number): number {
  const fourth = (celsius: number) => (celsius + ZERO_CELSIUS_K) ** 4;
  return Math.max(0, emissivity * STEFAN_BOLTZMANN * (fourth(emitterC) - fourth(roomC)));
}

/**
 * View factor from a small area that faces a parallel rectangle to that rectangle. The element lies under one corner;
 * sides a and b, distance h, all m (Howell's catalogue, B-3; from memory, checked by its limits in the tests).
 */
function cornerView(a: number, b: number, h: number): number {
  const [x, y] = [a / h, b / h];
  const [p, q] = [Math.sqrt(1 + x * x), Math.sqrt(1 + y * y)];
  return ((x / p) * Math.atan(y / p) + (y / q) * Math.atan(x / q)) / (2 * Math.PI);
}

/** View factor to the aperture of a place at (along, across) from its middle: four corners added, with their signs. */
export function apertureView(lengthM: number, widthM: number, h: number, along: number, across: number): number {
  const ends = (half: number, at: number) => [half - at, half + at];
  let view = 0;
  for (const a of ends(lengthM / 2, along))
    for (const b of ends(widthM / 2, across))
      view += Math.sign(a) * Math.sign(b) * cornerView(Math.abs(a), Math.abs(b), h);
  return view;
}

/** Nearest that an emitter stands, m: below, its view would jump from cell to cell. */
const LEAST_EMITTER_M = 0.002;

/** Stand-off term c of Martin's law. */
function standOffTerm(nozzle: SceneNozzle): number {
  const ratio = nozzle.standOffM / mouthDiameter(nozzle.mouth);
  return 0.1 * (Math.min(12, Math.max(2, ratio)) - 6);
}

/** h/K of an open nozzle at distance r from its axis: constant inside 2.5 D, the implied local value outside. */
export function openJetShape(r: number, diameter: number, c: number): number {
  const edge = 2.5 * diameter;
  if (r <= edge) return (0.4 * (1 - 1.1 * 0.4)) / (1 + c * 0.4);
  const below = r + c * diameter;
  return ((diameter / (2 * r)) * (r * r + 2 * c * diameter * r - 1.1 * c * diameter * diameter)) / (below * below);
}

/** h/K where the jet is strongest; times the strength it is the plateau's film. */
export function plateauShape(nozzle: SceneNozzle): number {
  return nozzle.hood ? 1 : openJetShape(0, mouthDiameter(nozzle.mouth), standOffTerm(nozzle));
}

/** Geometry of the nozzle over the board: film = strength x shape, gas = entrained + dilution x (gas - entrained). */
export type Footprint = { shape: Float64Array; dilution: Float64Array };

/** Offset of the footprint of a tilted nozzle from its centre, in metres. */
export function tiltOffset(nozzle: SceneNozzle): [number, number] {
  const shift = nozzle.standOffM * Math.tan((nozzle.tiltDeg * Math.PI) / 180);
  const heading = (nozzle.headingDeg * Math.PI) / 180;
  return [shift * Math.cos(heading), shift * Math.sin(heading)];
}

/** Exponent of the dilution by entrained air (heat-model.md, section 4; an assumption of the model). */
export const DILUTION_EXPONENT = 0.9;

/** h/K and dilution of an open jet at distance r from its axis, added to a cell's sums. */
function addOpenJet(sums: Footprint, cell: number, r: number, diameter: number, c: number, exponent: number): void {
  const h = openJetShape(r, diameter, c);
  const near = 1.5 * diameter;
  sums.shape[cell]! += h;
  sums.dilution[cell]! += r > near ? h * (near / r) ** exponent : h;
}

/** The same for a hood, at a distance outside its rim. */
function addHood(sums: Footprint, cell: number, outside: number, nozzle: SceneNozzle): void {
  const { rimGapM, leak } = nozzle.hood!;
  const rim = mouthDiameter(nozzle.mouth) / 2;
  const b = 5 * rimGapM;
  const fade = b / (b + outside);
  const inside = outside <= BORDER_M;
  const h = inside ? 1 : leak * fade ** 0.8;
  sums.shape[cell]! += h;
  const diluted = inside ? 1 : Math.sqrt(fade) * (rim / (rim + outside));
  const exponent = nozzle.dilutionExponent ?? DILUTION_EXPONENT;
  // At the model's own exponent the power is 1 to the last bit.
  sums.dilution[cell]! += h * diluted ** (exponent / DILUTION_EXPONENT);
}

/** Adds one stand of the nozzle at (x, y) to the sums of h and h x dilution over all cells. */
function addStand(sums: Footprint, nozzle: SceneNozzle, x: number, y: number, grid: HeatGrid): void {
  const { mouth } = nozzle;
  const diameter = mouthDiameter(mouth);
  const c = standOffTerm(nozzle);
  const exponent = nozzle.dilutionExponent ?? DILUTION_EXPONENT;
  const angle = mouth.shape === 'rect' ? (mouth.turnDeg * Math.PI) / 180 : 0;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  for (let cell = 0; cell < grid.cellCount; cell++) {
    if (!grid.exists[cell]) continue;
    const dx = columnX(grid, cell % grid.columns) - x;
    const dy = rowY(grid, cell) - y;
    let r = Math.sqrt(dx * dx + dy * dy);
    let outside = Math.max(0, r - diameter / 2);
    if (nozzle.infrared) {
      const [length, width] = mouth.shape === 'rect' ? [mouth.lengthM, mouth.widthM] : [diameter, diameter];
      const height = Math.max(LEAST_EMITTER_M, nozzle.standOffM);
      sums.shape[cell]! += apertureView(length, width, height, dx * cos + dy * sin, -dx * sin + dy * cos);
      continue;
    }
    if (mouth.shape === 'rect') {
      const along = Math.max(0, Math.abs(dx * cos + dy * sin) - mouth.lengthM / 2);
      const across = Math.max(0, Math.abs(-dx * sin + dy * cos) - mouth.widthM / 2);
      outside = Math.sqrt(along * along + across * across);
      r = outside > 0 ? diameter / 2 + outside : 0;
    }
    if (nozzle.hood) addHood(sums, cell, outside, nozzle);
    else addOpenJet(sums, cell, r, diameter, c, exponent);
  }
}

/**
 * Footprint over the cells of a grid: computed once per nozzle position, never per step.
 * A swept open nozzle averages h and h T over 32 points of its circle; a hood is not swept.
 */
export function nozzleFootprint(
  nozzle: SceneNozzle,
  centre: readonly [number, number],
  grid: HeatGrid,
  fence: SceneFence | null = null,
): Footprint {
  const sums = { shape: new Float64Array(grid.cellCount), dilution: new Float64Array(grid.cellCount) };
  const [tiltX, tiltY] = tiltOffset(nozzle);
  const sweep = nozzle.hood || nozzle.infrared ? 0 : nozzle.sweepRadiusM;
  const points = sweep > 0 ? SWEEP_POINTS : 1;
  for (let point = 0; point < points; point++) {
    const angle = (2 * Math.PI * point) / points;
    addStand(
      sums,
      nozzle,
      centre[0] + tiltX + sweep * Math.cos(angle),
      centre[1] + tiltY + sweep * Math.sin(angle),
      grid,
    );
  }
  for (let cell = 0; cell < grid.cellCount; cell++) {
    const h = sums.shape[cell]!;
    sums.dilution[cell] = h > 0 ? sums.dilution[cell]! / h : 0;
    sums.shape[cell] = h / points;
  }
  if (fence && !nozzle.hood && !nozzle.infrared) fenceOff(sums, fence, grid);
  return sums;
}

/**
 * Beyond a fence the jet's film and dilution fade with the distance from it, as past a hood's rim: what leaks, spread
 * from five gap heights on (assumption of the model; published: fences at the source took up to 8 % off neighbours' peaks).
 */
function fenceOff(footprint: Footprint, fence: SceneFence, grid: HeatGrid): void {
  const angle = (fence.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const b = 5 * fence.rimGapM;
  for (let cell = 0; cell < grid.cellCount; cell++) {
    if (!grid.exists[cell]) continue;
    const dx = columnX(grid, cell % grid.columns) - fence.xM;
    const dy = rowY(grid, cell) - fence.yM;
    const along = Math.max(0, Math.abs(dx * cos + dy * sin) - fence.lengthM / 2);
    const across = Math.max(0, Math.abs(-dx * sin + dy * cos) - fence.widthM / 2);
    const outside = Math.hypot(along, across);
    if (outside <= BORDER_M) continue;
    const fade = b / (b + outside);
    footprint.shape[cell]! *= fence.leak * fade ** 0.8;
    footprint.dilution[cell]! *= Math.sqrt(fade);
  }
}
