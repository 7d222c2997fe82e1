import type { Part } from '../../../shared-types/board.ts';
import type { Finding } from '../../../shared-types/evaluation.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import { limitsOf } from '../../../shared-types/library/limits.ts';
import { BAKE_TEMPERATURES_C } from '../../../shared-types/library/moisture.ts';
import { comesOff, type PlanningContext } from '../context.ts';
import { BAKE_ABOVE_C, ELECTROLYTIC_BAKE_C } from '../published.ts';
import { finding, onBoard } from './make.ts';

/** What a part stands for the hours of a bake, C: an electrolytic far less than for the seconds of a reflow. */
function standsC(part: Part): number {
  const limits = limitsOf(part);
  const peak = Math.min(limits.body?.celsius ?? Infinity, limits.skin?.celsius ?? Infinity);
  const { id } = classById(part.class);
  const wet = id.startsWith('electrolytic') || id === 'polymer-capacitor';
  return wet ? Math.min(peak, ELECTROLYTIC_BAKE_C.value) : peak;
}

/** The part that stays on while the board is baked and stands the least; null on a board where all comes off. */
function weakestOf(context: PlanningContext): { part: Part; standsC: number } | null {
  const staying = context.board.parts.filter((part) => part.fitted && !comesOff(context, part.refdes));
  return staying.reduce<{ part: Part; standsC: number } | null>((weakest, part) => {
    const celsius = standsC(part);
    return !weakest || celsius < weakest.standsC ? { part, standsC: celsius } : weakest;
  }, null);
}

/**
 * J-STD-033 asks whether a board is baked before rework where bodies pass 200 C; targets count as much as neighbours. The
 * bake is no hotter than the weakest part stands that stays on.
 */
export function bakeFindings(context: PlanningContext): Finding[] {
  const hot = context.evaluation.parts.filter((exposure) => exposure.body.maxC > BAKE_ABOVE_C.value);
  if (hot.length === 0) return [];
  const weakest = weakestOf(context);
  const standing = weakest?.standsC ?? Infinity;
  const figures = {
    count: hot.length,
    aboveC: BAKE_ABOVE_C.value,
    bakeC: BAKE_TEMPERATURES_C.find((celsius) => celsius <= standing) ?? 0,
    hottestBakeC: BAKE_TEMPERATURES_C[0],
    weakest: weakest?.part.refdes ?? '',
    className: weakest ? classById(weakest.part.class).name : '',
    standsC: weakest?.standsC ?? 0,
  };
  return [finding('bake-first', 'note', onBoard, figures, BAKE_ABOVE_C.source)];
}
