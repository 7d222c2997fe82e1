/**
 * What the heat model is not sure of (heat-model.md, section 8). A term is told as a step in its own coordinate: the
 * logarithm of a factor, or a plain difference for the dilution's exponent and the outlet (K).
 */
export const TERM_IDS = ['nozzle', 'dilution', 'outlet', 'preheater', 'inPlane', 'joints', 'idle'] as const;
export type TermId = (typeof TERM_IDS)[number];

/** Steps of the terms from the model's own values; absent: 0. */
export type TermSteps = Partial<Record<TermId, number>>;

/** Half width of a 90 % band in standard deviations of a normal distribution (handbook value, from memory). */
export const BAND_90 = 1.645;

/** 90 % bands of one part's figures: K, and seconds above its limit. */
export type PartBands = {
  bodyK: number;
  skinK: number;
  jointK: number;
  secondsOverS: number;
  /** The term that widens the band of the governing figure most, and its share of the variance; 'repeat': the hand. */
  mostly: TermId | 'repeat';
  mostlyShare: number;
  /** Half width that the governing figure's band would have if the outlet had been measured, K; null: it has been. */
  outletMeasuredK: number | null;
};

export type TargetBands = {
  coldestK: number;
  hottestK: number;
  skinK: number;
  allAboveS: number;
  anyAboveS: number;
  /** Null: in part of the band the target does not melt at all. */
  moltenS: number | null;
};

/** A place where a thermocouple makes the figures surer; the first ones first. */
export type ThermocouplePlace = {
  side: 'top' | 'bottom';
  /** mm. */
  x: number;
  y: number;
  /** The part it sits on; null: on the board, at a corner of the site's target. */
  refdes: string | null;
  siteId: string | null;
  /** Heat run in which it gets hottest, its expected peak there (C) and that figure's band before it is read (K). */
  runId: string;
  expectedC: number;
  bandK: number;
  /** Band of the targets' coldest joint that is left once this one and those before it are read, K. */
  targetBandK: number;
};

/** What the bands of an evaluation rest on. */
export type Uncertainty = {
  /** Each term's standard deviation in its own coordinate, and whether a calibration gave it. */
  terms: { id: TermId; sigma: number; calibrated: boolean }[];
  /** Repeat of a hand-held run, one standard deviation at the target, K; 0: not held by hand. */
  repeatK: number;
};
