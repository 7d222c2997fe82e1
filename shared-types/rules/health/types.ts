/** What can be odd about a board, gravest first: this is the order of the list. */
export const HEALTH_KINDS = [
  'site-lost',
  'site-side',
  'tag-lost',
  'no-parts',
  'overlap',
  'lies-over',
  'outside',
  'over-cutout',
  'same-name',
  'body-odd',
  'cover-low',
  'no-layers',
  'class-unknown',
  'class-guessed',
  'height-missing',
  'layers-guessed',
] as const;
export type HealthKind = (typeof HEALTH_KINDS)[number];

/**
 * One thing to look at. `refdes`: the parts it is about, the one to jump to first. `figures`: what its sentence needs,
 * lengths in mm. `siteId`, `tagId`, `coverId`: what else it is about.
 */
export type HealthEntry = {
  kind: HealthKind;
  refdes: readonly string[];
  siteId?: string;
  tagId?: string;
  coverId?: string;
  figures: Readonly<Record<string, number | string>>;
};
