import type { Finding } from '../../../shared-types/evaluation.ts';
import type { Source } from '../../../shared-types/library/library-types.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import type { FindingCode } from '../../../shared-types/words/findings.ts';
import { compareDesignators } from '../context.ts';

type Place = Finding['place'];

/** Makes a finding. The code has a sentence, by type. */
export const finding = (
  code: FindingCode,
  weight: Finding['weight'],
  place: Place,
  figures: Figures,
  source: Source | null,
): Finding => ({ code, weight, place, figures, source });

export const onBoard: Place = { kind: 'board', id: 'board' };
export const onStation: Place = { kind: 'station', id: 'station' };
export const onSite = (id: string): Place => ({ kind: 'site', id });
export const onRun = (id: string): Place => ({ kind: 'run', id });
export const onPart = (id: string): Place => ({ kind: 'part', id });

const NAMED = 6;

/** 'C12, C14' and how many more, for a sentence about many parts. */
export function namesOf(refdes: readonly string[]): { count: number; names: string; more: number } {
  const sorted = [...refdes].sort(compareDesignators);
  return {
    count: sorted.length,
    names: sorted.slice(0, NAMED).join(', '),
    more: Math.max(0, sorted.length - NAMED),
  };
}

/** One finding about many parts instead of one each, placed at the worst of them; none for an empty list. */
export function grouped<T extends { refdes: string }>(
  code: FindingCode,
  weight: Finding['weight'],
  entries: readonly T[],
  badness: (entry: T) => number,
  figures: (worst: T) => Figures,
  source: Source | null,
): Finding[] {
  if (entries.length === 0) return [];
  const worst = entries.reduce((most, entry) => (badness(entry) > badness(most) ? entry : most));
  const all = { ...namesOf(entries.map((entry) => entry.refdes)), worst: worst.refdes, ...figures(worst) };
  return [finding(code, weight, onPart(worst.refdes), all, source)];
}
