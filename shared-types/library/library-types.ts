/** Where a figure comes from. `how`: found = read in the named document; memory = from memory of the trade; assumption = ours. */
export type Source = { text: string; how: 'found' | 'memory' | 'computed' | 'assumption'; confidence: 'H' | 'M' | 'L' };

/** A temperature that a class of parts stands, with its source. */
export type ClassLimit = { celsius: number; source: Source };

/**
 * A class of parts: what the program assumes about a body when the board does not say it.
 * Thermal figures in SI; heights in mm.
 */
export type PartClass = {
  id: string;
  name: string;
  /** One or two letters drawn on the part. */
  mark: string;
  defaultHeightMm: number;
  /** Joint conductance incl. half the body, W/m2K of plan area. */
  jointWm2K: number;
  /** Volumetric heat capacity of the body, J/m3K. */
  heatCapacityJm3K: number;
  /** Conductivity of the body, W/mK. */
  conductivityWmK: number;
  /** Limit of the body, judged at its own temperature; null: the class is judged on its skin only. */
  bodyLimit: ClassLimit | 'by-volume' | null;
  /** Limit judged on the skin (plastics, package tops); null: the class is judged on its body. */
  skinLimit: ClassLimit | 'by-volume' | null;
  /** Reflow-rated: may pass solidus with its joints and be left. */
  reflowRated: boolean;
  /** Rated for one reflow only: a further one is over. */
  oneReflow: boolean;
  /** Always off before heat, whatever the distance (cells, batteries, modules on connectors, plastic optics). */
  alwaysRemove: boolean;
  /** Small part that may be left to reflow where it lies. */
  smallPart: boolean;
  /** Array part (balls under the body). */
  arrayPart: boolean;
  source: Source;
};

export type Alloy = {
  id: string;
  name: string;
  solidusC: number;
  liquidusC: number;
  leadFree: boolean;
  source: Source;
};

export type ShieldLayer =
  | {
      kind: 'solid';
      name: string;
      thicknessMm: number;
      conductivityWmK: number;
      arealMassJm2K: number;
      polishedOutside: boolean;
    }
  | { kind: 'air-gap'; gapMm: number };

/** A mass outside the layers: a block on a pad, or a gel that is wet at first. */
export type ShieldMass =
  | { kind: 'block'; arealMassJm2K: number; padWm2K: number }
  | {
      kind: 'gel';
      /** Depth of water where the plan does not say its mass, mm. */
      waterMm: number;
      /** Solids left when it is dry, as a share of the water's mass, and their specific heat, J/kgK. */
      solidsShare: number;
      solidsJkgK: number;
      /** Conductivity wet and dry, W/mK. */
      wetWmK: number;
      dryWmK: number;
    };

/** What of a shield the plan may say otherwise. */
export type ShieldParameter = 'gapMm' | 'layers' | 'waterG';

/** A shield laid over a part: layers from the part outwards, then a mass if it has one. */
export type Shield = {
  id: string;
  name: string;
  layers: ShieldLayer[];
  mass?: ShieldMass;
  adjustable: readonly ShieldParameter[];
  notGoodFor: string;
  source: Source;
};

/** A package of known size. */
export type LibraryPackage = {
  name: string;
  shape: 'rectangle' | 'round';
  lengthMm: number;
  widthMm: number;
  heightMm: number;
  classId: string;
  pinCount?: number;
  source: Source;
};

export type PreheaterKind = {
  id: 'ceramic' | 'quartz' | 'halogen' | 'hot-air';
  name: string;
  filmWm2K: number;
  lagS: number;
  source: Source;
};

/** A class or package read out of words: a guess that the user sees and can override. */
export type PartGuess = {
  classId: string;
  /** Plain words: why. */
  reason: string;
  package: { shape: 'rectangle' | 'round'; lengthMm: number; widthMm: number; heightMm: number | null } | null;
};
