import type { Laminate } from '../../shared-types/board.ts';

/** Density times specific heat of FR-4, J/m3K: 1900 kg/m3 x 1200 J/kgK (figures.md, section E). */
const LAMINATE_VOLUMETRIC_HEAT = 1900 * 1200;

/** Continuous copper counts: how much of a layer it covers where the board does not say (figures.md, section E). */
const USUAL_COVER_PERCENT = { signal: 20, plane: 80 } as const;

/** What the heat model needs of a laminate, SI. */
export type ArealProperties = {
  thicknessM: number;
  volumetricHeat: number;
  /** Conductivity along and through the board, W/mK. */
  inPlane: number;
  throughPlane: number;
  /** Continuous copper as a share of the thickness. */
  copperShare: number;
};

/**
 * Areal properties of a laminate from its copper layers: fit of Azar and Graebner (1996) as given in figures.md,
 * section E: k along = 0.8 + 350 Zcu/Z, k through = 1 / (1.69 (1 - f) + 0.0026 f), f = Zcu/Z.
 */
export function arealProperties(laminate: Laminate): ArealProperties {
  const thicknessM = laminate.thicknessMm / 1000;
  const copperM = laminate.layers.reduce(
    (sum, layer) => sum + (layer.copperUm * 1e-6 * (layer.coverPercent ?? USUAL_COVER_PERCENT[layer.kind])) / 100,
    0,
  );
  const copperShare = Math.min(1, copperM / thicknessM);
  return {
    thicknessM,
    volumetricHeat: LAMINATE_VOLUMETRIC_HEAT,
    inPlane: 0.8 + 350 * copperShare,
    throughPlane: 1 / (1.69 * (1 - copperShare) + 0.0026 * copperShare),
    copperShare,
  };
}
