import type { Part } from '../board.ts';
import { classById } from '../library/classes.ts';
import { limitsOf } from '../library/limits.ts';
import { BAKE_TEMPERATURES_C } from '../library/moisture.ts';
import { found } from '../library/sources.ts';

/** What electrolytics stand for the hours of a bake, C. */
export const ELECTROLYTIC_BAKE_C = {
  value: 105,
  source: found('Electrolytics do not stand a bake above 105 to 115 °C (SMTnet 6904 on J-STD-033)', 'M'),
};

/** What a part stands for the hours of a bake, C: an electrolytic far less than for the seconds of a reflow. */
function standsC(part: Part): number {
  const limits = limitsOf(part);
  const peak = Math.min(limits.body?.celsius ?? Infinity, limits.skin?.celsius ?? Infinity);
  const { id } = classById(part.class);
  const wet = id.startsWith('electrolytic') || id === 'polymer-capacitor';
  return wet ? Math.min(peak, ELECTROLYTIC_BAKE_C.value) : peak;
}

/** The part that stands the least among those that stay on while the board is baked; null: none is fitted. */
export function weakestInBake(staying: readonly Part[]): { part: Part; standsC: number } | null {
  return staying
    .filter((part) => part.fitted)
    .reduce<{ part: Part; standsC: number } | null>((weakest, part) => {
      const celsius = standsC(part);
      return !weakest || celsius < weakest.standsC ? { part, standsC: celsius } : weakest;
    }, null);
}

/** The hottest of the standard's bakes that a part stands, C; 0: none of them. */
export const hottestBakeC = (standing: number): number =>
  BAKE_TEMPERATURES_C.find((celsius) => celsius <= standing) ?? 0;

/** What sentences about the bake of a board need. */
export function bakeFigures(staying: readonly Part[]) {
  const weakest = weakestInBake(staying);
  return {
    bakeC: hottestBakeC(weakest?.standsC ?? Infinity),
    weakest: weakest?.part.refdes ?? '',
    className: weakest ? classById(weakest.part.class).name : '',
    standsC: weakest?.standsC ?? 0,
  };
}
