import type { Finding } from '../../../shared-types/evaluation.ts';
import { BAKE_TEMPERATURES_C } from '../../../shared-types/library/moisture.ts';
import { bakeFigures } from '../../../shared-types/rules/bake.ts';
import { comesOff, type PlanningContext } from '../context.ts';
import { BAKE_ABOVE_C } from '../published.ts';
import { finding, onBoard } from './make.ts';

/**
 * J-STD-033 asks whether a board is baked before rework where bodies pass 200 C; targets count as much as neighbours. The
 * bake is no hotter than the weakest part stands that stays on.
 */
export function bakeFindings(context: PlanningContext): Finding[] {
  const hot = context.evaluation.parts.filter((exposure) => exposure.body.maxC > BAKE_ABOVE_C.value);
  if (hot.length === 0) return [];
  const staying = context.board.parts.filter(({ refdes }) => !comesOff(context, refdes));
  const figures = {
    count: hot.length,
    aboveC: BAKE_ABOVE_C.value,
    hottestBakeC: BAKE_TEMPERATURES_C[0],
    ...bakeFigures(staying),
  };
  return [finding('bake-first', 'note', onBoard, figures, BAKE_ABOVE_C.source)];
}
