import { useMemo, useState } from 'react';
import type { Point } from '../../../../shared-types/geometry.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import type { Frame } from '../../../../shared-types/rules/board-frame.ts';
import { alignAs, alignBoards } from '../../../../shared-types/rules/board-update/align.ts';
import { compareBoards } from '../../../../shared-types/rules/board-update/compare.ts';
import {
  addedKey,
  aspectKey,
  coverKey,
  takesAdded,
  takesAspect,
  takesCover,
  takesWhole,
  WHOLE_KEYS,
} from '../../../../shared-types/rules/board-update/decide.ts';
import { mentionsIn } from '../../../../shared-types/rules/board-update/mentions.ts';
import { type BoardChanges, PART_ASPECTS } from '../../../../shared-types/rules/board-update/types.ts';
import { nothingDecided, type UpdateDecisions, withRenames } from '../../../editing/board-update.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';

/** How the files' board was laid by hand; `by` null: where most parts then agree. */
export type ChosenLie = Omit<Frame, 'by'> & { by: Point | null };

/** The changes of an update and everything that is decided about it, as they stand. */
export function useBoardUpdate(ticket: TicketDocument, imported: ImportedBoard) {
  const [decisions, setDecisions] = useState<UpdateDecisions>(nothingDecided);
  const [lie, setLie] = useState<ChosenLie | null>(null);
  const [answers, setAnswers] = useState<Record<string, string>>({});
  const { board, report } = imported.read;
  const source = useMemo(() => ({ board, told: report.told }), [board, report]);
  const { renames } = decisions;
  const document = useMemo(() => withRenames(ticket, { ...nothingDecided, renames }), [ticket, renames]);
  const alignment = useMemo(
    () => (lie ? alignAs(document.board, source, lie, lie.by) : alignBoards(document.board, source)),
    [document, source, lie],
  );
  const changes = useMemo(
    () => compareBoards(document.board, source, alignment, answers),
    [document, source, alignment, answers],
  );
  const mentions = useMemo(() => mentionsIn(document), [document]);
  return {
    ...{ document, changes, mentions, decisions, answers, lie, setLie },
    answer: (refdes: string, name: string) => setAnswers((now) => ({ ...now, [refdes]: name })),
    askAgain: (refdes: string) =>
      setAnswers((now) => Object.fromEntries(Object.entries(now).filter(([one]) => one !== refdes))),
    decide: (fields: Partial<UpdateDecisions>) => setDecisions((now) => ({ ...now, ...fields })),
    tick: (keys: readonly string[], taken: boolean) =>
      setDecisions((now) => ({
        ...now,
        ticks: { ...now.ticks, ...Object.fromEntries(keys.map((key) => [key, taken])) },
      })),
  };
}
export type BoardUpdate = ReturnType<typeof useBoardUpdate>;

/** One line that can be taken or left. */
export type Tickable = { key: string; refdes: string; on: boolean };

/** Everything that can be ticked, by its kind. */
export function tickables(document: TicketDocument, changes: BoardChanges, { ticks }: UpdateDecisions) {
  const decided = { ticks, stay: [] };
  const { board } = document;
  return {
    aspects: PART_ASPECTS.map((aspect) => ({
      aspect,
      lines: changes.changed
        .filter(({ aspects }) => aspects.includes(aspect))
        .map((change) => ({
          ...{ key: aspectKey(aspect, change.refdes), refdes: change.refdes, change },
          on: takesAspect(board, change, aspect, decided),
        })),
    })),
    added: changes.added.map((part) => ({
      ...{ key: addedKey(part.refdes), refdes: part.refdes, part },
      on: takesAdded(part.refdes, decided),
    })),
    covers: changes.covers.map((change) => ({
      ...{ key: coverKey(change.cover.id), refdes: change.cover.id, change },
      on: takesCover(change, decided),
    })),
    whole: WHOLE_KEYS.filter((key) => changes[key] !== null).map((key) => ({
      ...{ key, refdes: '' },
      on: takesWhole(board, changes, key, decided),
    })),
  };
}

/** How many changes would be made. */
export function countChanges({ document, changes, decisions }: BoardUpdate): number {
  const { aspects, added, covers, whole } = tickables(document, changes, decisions);
  const lines: Tickable[] = [...aspects.flatMap(({ lines: own }) => own), ...added, ...covers, ...whole];
  const off = changes.gone.filter(({ refdes }) => decisions.fates[refdes] !== 'stay').length;
  return lines.filter(({ on }) => on).length + off + Object.keys(decisions.renames).length;
}
