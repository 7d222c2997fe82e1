import type { Part } from '../../shared-types/board.ts';
import { classById } from '../../shared-types/library/classes.ts';
import { volumeOf } from '../../shared-types/library/limits.ts';
import { DROP_OFF_G_PER_IN2 } from './published.ts';

const MM2_PER_IN2 = 25.4 ** 2;

/** Mass of a body by its volume, and share of its plan area that is pads. */
type Build = { gramsPerCm3: number; padShare: number };

/**
 * By class: mean density of the whole body and pads over plan area. Rounded from typical parts, from memory; the
 * board's own mass and pad area win. Only used to warn of parts that may drop, so dense and few pads is the wary side.
 */
const BUILDS: Record<string, Build> = {
  'chip-resistor': { gramsPerCm3: 3.2, padShare: 0.4 },
  'chip-array': { gramsPerCm3: 3.2, padShare: 0.4 },
  'chip-capacitor': { gramsPerCm3: 5.5, padShare: 0.4 },
  'chip-capacitor-large': { gramsPerCm3: 5.5, padShare: 0.4 },
  'chip-ferrite': { gramsPerCm3: 4.8, padShare: 0.4 },
  ntc: { gramsPerCm3: 5.5, padShare: 0.4 },
  tantalum: { gramsPerCm3: 3.5, padShare: 0.3 },
  so: { gramsPerCm3: 2, padShare: 0.3 },
  qfp: { gramsPerCm3: 2, padShare: 0.2 },
  qfn: { gramsPerCm3: 2, padShare: 0.4 },
  bga: { gramsPerCm3: 2, padShare: 0.2 },
  'bga-lidded': { gramsPerCm3: 4.5, padShare: 0.2 },
  csp: { gramsPerCm3: 2.3, padShare: 0.2 },
  lga: { gramsPerCm3: 2, padShare: 0.4 },
  'power-inductor': { gramsPerCm3: 4.8, padShare: 0.4 },
  transformer: { gramsPerCm3: 3.5, padShare: 0.15 },
  relay: { gramsPerCm3: 2, padShare: 0.1 },
  'electrolytic-small': { gramsPerCm3: 1.7, padShare: 0.2 },
  'electrolytic-medium': { gramsPerCm3: 1.7, padShare: 0.2 },
  'electrolytic-large': { gramsPerCm3: 1.7, padShare: 0.2 },
  'polymer-capacitor': { gramsPerCm3: 1.9, padShare: 0.2 },
  crystal: { gramsPerCm3: 3, padShare: 0.35 },
  'heat-sink': { gramsPerCm3: 1.5, padShare: 0.1 },
  'metal-hardware': { gramsPerCm3: 4, padShare: 0.3 },
};
const ANY_BUILD: Build = { gramsPerCm3: 2.2, padShare: 0.15 };

const buildOf = (part: Part): Build => BUILDS[classById(part.class).id] ?? ANY_BUILD;

/** What the drop-off rule says of an underside part whose joints melt. */
export type DropOff = {
  massG: number;
  massFrom: 'board' | 'estimated';
  padAreaMm2: number;
  padFrom: 'board' | 'estimated';
  gramsPerSquareInch: number;
  mayDrop: boolean;
};

/**
 * Mass over pad area of a part, g per square inch, against the published 30.
 * Mass and pad area from the board where it has them, else estimated from the body by class.
 */
export function dropOffOf(part: Part): DropOff {
  const build = buildOf(part);
  const { shape, lengthMm, widthMm } = part.package;
  const planMm2 = lengthMm * widthMm * (shape === 'round' ? Math.PI / 4 : 1);
  const massG = part.massG ?? (volumeOf(part) / 1000) * build.gramsPerCm3;
  const padAreaMm2 = part.padAreaMm2 ?? planMm2 * build.padShare;
  const gramsPerSquareInch = (massG / padAreaMm2) * MM2_PER_IN2;
  return {
    massG,
    massFrom: part.massG === undefined ? 'estimated' : 'board',
    padAreaMm2,
    padFrom: part.padAreaMm2 === undefined ? 'estimated' : 'board',
    gramsPerSquareInch,
    mayDrop: gramsPerSquareInch > DROP_OFF_G_PER_IN2.value,
  };
}
