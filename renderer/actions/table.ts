import type { Action } from './action.ts';
import { arrangeActions } from './arrange-actions.ts';
import { boardActions } from './board-actions.ts';
import { chordsOf, type KeyPress } from './chords.ts';
import { editActions } from './edit-actions.ts';
import { outlineActions } from './outline-actions.ts';
import { photoActions } from './photo-actions.ts';
import { stepActionList } from './step-actions.ts';
import { strapActions } from './strap-actions.ts';
import { tagActions } from './tag-actions.ts';
import { ticketActions } from './ticket-actions.ts';
import { stageActions, toolActions, viewActions } from './view-actions.ts';

/** Everything the window can do. */
export const ACTIONS: readonly Action[] = [
  ...editActions,
  ...boardActions,
  ...arrangeActions,
  ...tagActions,
  ...strapActions,
  ...stepActionList,
  ...viewActions,
  ...toolActions,
  ...photoActions,
  ...stageActions,
  ...ticketActions,
  ...outlineActions,
];

const byId = new Map(ACTIONS.map((action) => [action.id, action]));
const byChord = chordTable(ACTIONS);

export function actionById(id: string): Action {
  const action = byId.get(id);
  if (!action) throw new Error(`No action ${id}`);
  return action;
}

/** Chord -> action. Two actions on one key are refused. */
export function chordTable(actions: readonly Action[]): Map<string, Action> {
  const table = new Map<string, Action>();
  for (const action of actions) {
    for (const chord of action.keys) {
      const other = table.get(chord);
      if (other) throw new Error(`${chord} is taken twice: ${other.id} and ${action.id}`);
      table.set(chord, action);
    }
  }
  return table;
}

export function actionForPress(press: KeyPress): Action | undefined {
  return chordsOf(press)
    .map((chord) => byChord.get(chord))
    .find((action) => action !== undefined);
}
