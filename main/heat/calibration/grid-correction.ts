import { Matrix } from 'ml-matrix';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { SlopedModel, Terms } from './log-slopes.ts';

/** The models of one log: the coarse grid, the fine one, and the fine one in whole steps for its slopes. */
export type LogModels = { coarse: SlopedModel; fine: SlopedModel; even: SlopedModel };

/**
 * The coarse model with its grid's error near these terms taken off, to first order: readings, and how they rise.
 * The readings alone would not do: where two terms nearly make up for each other, slopes that are a few per cent off
 * turn the direction in which they do. Problems: the models'.
 */
export function corrected({ coarse, fine, even }: LogModels, at: Terms): Result<SlopedModel> {
  const [coarseSays, fineSays] = [coarse.says(at), fine.says(at)];
  if (!coarseSays.ok) return coarseSays;
  if (!fineSays.ok) return fineSays;
  const [coarseRises, fineRises] = [coarse.rises(at), even.rises(at)];
  if (!coarseRises.ok) return coarseRises;
  if (!fineRises.ok) return fineRises;
  const gap = fineSays.value.map((celsius, row) => celsius - coarseSays.value[row]!);
  const rises = Matrix.sub(fineRises.value, coarseRises.value);
  return succeed({
    says: (terms) => {
      const said = coarse.says(terms);
      if (!said.ok) return said;
      const more = rises.mmul(Matrix.columnVector(Array.from(terms, (term, index) => term - at[index]!)));
      return succeed(said.value.map((celsius, row) => celsius + gap[row]! + more.get(row, 0)));
    },
    rises: (terms) => {
      const found = coarse.rises(terms);
      return found.ok ? succeed(Matrix.add(found.value, rises)) : found;
    },
  });
}
