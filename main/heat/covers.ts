import type { Cover } from '../../shared-types/board.ts';
import type { SceneBody } from './scene.ts';

/** Volumetric heat (J/m3K) and conductivity (W/mK) of sheet metals; handbook values from memory. */
const METALS: Record<Cover['material'], { volumetricHeat: number; conductivity: number }> = {
  'nickel-silver': { volumetricHeat: 3.4e6, conductivity: 30 },
  'tinned-steel': { volumetricHeat: 3.7e6, conductivity: 50 },
  aluminium: { volumetricHeat: 2.43e6, conductivity: 200 },
  'stainless-steel': { volumetricHeat: 3.9e6, conductivity: 16 },
  copper: { volumetricHeat: 3.45e6, conductivity: 390 },
};

/** Conductance of the contact between metal and board by the way it is fixed, W/m2K (assumption of ours). */
const FIXING: Record<Cover['fixing'], number> = { soldered: 20000, clipped: 1000, screwed: 1500, bonded: 2000 };

/** Emissivity of shiny metal (heat-model.md, section 3). */
const SHINY = 0.1;

/** Still air at about 150 °C, for the gap under a can, W/mK. */
const GAP_AIR = 0.035;

/** A wall stands on a land wider than its sheet, m (assumption of ours). */
const LAND_M = 0.0008;

/** A can, frame or stiffener as a body of one temperature: its metal's whole heat spread over its plan area. */
export function bodyOfCover(cover: Cover): SceneBody {
  const lengthM = cover.lengthMm / 1000;
  const widthM = cover.widthMm / 1000;
  const heightM = cover.heightMm / 1000;
  const sheetM = cover.sheetMm / 1000;
  const metal = METALS[cover.material];
  const perimeterM = 2 * (lengthM + widthM);
  const wallM = Math.min(Math.max(sheetM, LAND_M), lengthM / 2, widthM / 2);
  const ringM2 = lengthM * widthM - (lengthM - 2 * wallM) * (widthM - 2 * wallM);
  const wallsM3 = perimeterM * heightM * sheetM;
  const metalM3 = { can: lengthM * widthM * sheetM + wallsM3, frame: wallsM3, stiffener: lengthM * widthM * heightM };
  const planM2 = cover.kind === 'frame' ? ringM2 : lengthM * widthM;
  return {
    id: cover.id,
    side: cover.side,
    xM: cover.x / 1000,
    yM: cover.y / 1000,
    lengthM,
    widthM,
    turnDeg: cover.turn,
    shape: cover.kind === 'stiffener' ? 'rect' : cover.kind,
    wallM,
    heightM,
    jointConductance: FIXING[cover.fixing],
    gapConductance: GAP_AIR / heightM,
    volumetricHeat: (metalM3[cover.kind] * metal.volumetricHeat) / (planM2 * heightM),
    conductivity: metal.conductivity,
    emissivity: SHINY,
    shieldResistance: 0,
    shieldArealHeat: 0,
    metal: true,
    trialShield: null,
  };
}
