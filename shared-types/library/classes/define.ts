import type { ClassLimit, PartClass, Source } from '../library-types.ts';
import { THERMAL_FIGURES } from '../sources.ts';

/** Bodies by material: volumetric heat capacity (J/m3K) and conductivity (W/mK). Typical values, our assumption. */
export const MATERIAL = {
  mould: { heatCapacityJm3K: 2.0e6, conductivityWmK: 0.9 },
  alumina: { heatCapacityJm3K: 3.1e6, conductivityWmK: 20 },
  titanate: { heatCapacityJm3K: 3.0e6, conductivityWmK: 3 },
  ferrite: { heatCapacityJm3K: 3.6e6, conductivityWmK: 4 },
  wound: { heatCapacityJm3K: 3.4e6, conductivityWmK: 5 },
  ceramicCan: { heatCapacityJm3K: 2.0e6, conductivityWmK: 3 },
  lidded: { heatCapacityJm3K: 2.6e6, conductivityWmK: 10 },
  wetCan: { heatCapacityJm3K: 2.0e6, conductivityWmK: 0.5 },
  plastic: { heatCapacityJm3K: 2.0e6, conductivityWmK: 0.3 },
  cell: { heatCapacityJm3K: 2.5e6, conductivityWmK: 2 },
  aluminium: { heatCapacityJm3K: 2.43e6, conductivityWmK: 200 },
  steelShell: { heatCapacityJm3K: 1.0e6, conductivityWmK: 15 },
} as const;

/** Joint conductances incl. half the body, W/m2K of plan area: our assumption, corrected by calibration. */
export const JOINT = { wide: 20000, medium: 5000, connector: 700, leads: 300, cell: 200 } as const;

type Definition = {
  id: string;
  name: string;
  mark: string;
  heightMm: number;
  material: keyof typeof MATERIAL;
  joint: keyof typeof JOINT;
  body?: ClassLimit | 'by-volume';
  skin?: ClassLimit | 'by-volume';
  reflowRated?: boolean;
  oneReflow?: boolean;
  alwaysRemove?: boolean;
  smallPart?: boolean;
  arrayPart?: boolean;
  source?: Source;
};

/** A class with the flags that are usual for it: reflow-rated, not small, no array. */
export function define(definition: Definition): PartClass {
  const { body, skin, joint, material, heightMm, source, ...rest } = definition;
  return {
    reflowRated: true,
    oneReflow: false,
    alwaysRemove: false,
    smallPart: false,
    arrayPart: false,
    ...rest,
    defaultHeightMm: heightMm,
    jointWm2K: JOINT[joint],
    ...MATERIAL[material],
    bodyLimit: body ?? null,
    skinLimit: skin ?? null,
    source: source ?? THERMAL_FIGURES,
  };
}

export const limit = (celsius: number, source: Source): ClassLimit => ({ celsius, source });
