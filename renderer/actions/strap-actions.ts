import { strapEdits, strapWords } from '../../shared-types/words/window/straps.ts';
import { moveTagged, tagMoves } from '../editing/straps.ts';
import type { AppState } from '../state/app-state.ts';
import { strapPlanOf } from '../state/strap-plan.ts';
import type { Action } from './action.ts';

/** What the stage Straps offers, from everywhere. */
export const strapActions: readonly Action[] = [
  {
    id: 'tag-strap-moves',
    group: 'tag',
    label: strapWords.tagAllMoves,
    keys: [],
    enabled: hasUntaggedMoves,
    run: (app) => app.bench.apply(strapEdits.tags, (document) => tagMoves(document, strapPlanOf(document).moves)),
  },
];

function hasUntaggedMoves({ ticket }: AppState): boolean {
  return ticket !== null && strapPlanOf(ticket.document).moves.some((move) => !moveTagged(ticket.document, move));
}
