import type { Board } from '../../shared-types/board.ts';
import type { Evaluation, PartExposure } from '../../shared-types/evaluation.ts';
import { classById } from '../../shared-types/library/classes.ts';

/** True when body and skin stay under their limits by more than their bands. */
function bodyIsClear({ margins, bands }: PartExposure): boolean {
  if (!bands) return false;
  const clear = (marginK: number | null, bandK: number) => marginK === null || marginK > bandK;
  return clear(margins.body, bands.bodyK) && clear(margins.skin, bands.skinK);
}

/**
 * Small reflow-rated parts are left where they lie whether their solder melts or not: one whose solder alone lies within the
 * band is no exception, so it is told as clear. What may be cooked stays unsure.
 */
export function withoutOrdinaryDoubt(board: Board, evaluation: Evaluation): Evaluation {
  const classOf = new Map(board.parts.map((part) => [part.refdes, classById(part.class)]));
  const isOrdinary = (exposure: PartExposure): boolean => {
    const partClass = classOf.get(exposure.refdes);
    if (!partClass?.smallPart || !partClass.reflowRated || partClass.oneReflow) return false;
    return exposure.state === 'unsure' && exposure.governedBy === 'joint' && bodyIsClear(exposure);
  };
  const parts = evaluation.parts.map((part) => (isOrdinary(part) ? { ...part, state: 'clear' as const } : part));
  return { ...evaluation, parts };
}
