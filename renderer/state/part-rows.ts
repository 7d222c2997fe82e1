import type { Part } from '../../shared-types/board.ts';
import type { Assessment, PartAction, PartExposure } from '../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Tag } from '../../shared-types/tags.ts';

/** A part with everything the window says about it. */
export type PartRow = {
  part: Part;
  exposure: PartExposure | null;
  action: PartAction | null;
  notEvaluated: 'off-board' | 'not-fitted' | 'removed' | null;
  tags: readonly Tag[];
  /** How much it wants to be looked at: 0 first. */
  rank: number;
};

const ACTION_RANK: Record<PartAction['action'], number> = {
  'cannot-be-saved': 0,
  'remove-first': 2,
  secure: 3,
  shield: 4,
  target: 5,
  'leave-will-reflow': 6,
  leave: 7,
};

/** Rank from which on a part is ordinary: left where it is. */
export const ORDINARY_RANK = 6;

/** One row a part, in the order of the board. */
export function partRowsOf(document: TicketDocument, assessment: Assessment | null): PartRow[] {
  const exposures = new Map(assessment?.evaluation.parts.map((one) => [one.refdes, one]));
  const actions = new Map(assessment?.actions.map((one) => [one.refdes, one]));
  const left = new Map(assessment?.evaluation.notEvaluated.map((one) => [one.refdes, one.reason]));
  const tags = tagsByPart(document.plan.tags);
  return document.board.parts.map((part) => {
    const { refdes } = part;
    const row = {
      part,
      exposure: exposures.get(refdes) ?? null,
      action: actions.get(refdes) ?? null,
      notEvaluated: left.get(refdes) ?? null,
      tags: tags.get(refdes) ?? [],
    };
    return { ...row, rank: rankOf(row) };
  });
}

function rankOf({ exposure, action, tags }: Omit<PartRow, 'rank'>): number {
  // A part that planning leaves in peace is ordinary though its joints pass a limit: it may reflow where it lies.
  const byAction = action ? ACTION_RANK[action.action] : ORDINARY_RANK + 2;
  if (exposure?.state === 'unsure' || tags.length > 0) return Math.min(byAction, ORDINARY_RANK - 1);
  return byAction;
}

function tagsByPart(tags: readonly Tag[]): Map<string, Tag[]> {
  const byPart = new Map<string, Tag[]>();
  for (const tag of tags) {
    if (tag.refdes === null) continue;
    const list = byPart.get(tag.refdes);
    if (list) list.push(tag);
    else byPart.set(tag.refdes, [tag]);
  }
  return byPart;
}

/** The last rows made, kept while document and assessment stay the same objects. */
export function rememberRows(): (document: TicketDocument, assessment: Assessment | null) => PartRow[] {
  let last: { document: TicketDocument; assessment: Assessment | null; rows: PartRow[] } | null = null;
  return (document, assessment) => {
    const same =
      last !== null &&
      last.assessment === assessment &&
      last.document.board.parts === document.board.parts &&
      last.document.plan.tags === document.plan.tags;
    if (!same || !last) last = { document, assessment, rows: partRowsOf(document, assessment) };
    return last.rows;
  };
}

export const partRows = rememberRows();
