import { CircleDot, Plus, RectangleHorizontal, SquareDashedTopSolid } from 'lucide-react';
import { nextPin1 } from '../../shared-types/rules/pin1.ts';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { partEditWords } from '../../shared-types/words/window/parts.ts';
import { deleteParts } from '../editing/add-parts.ts';
import { removeCover } from '../editing/covers.ts';
import { setPartFields, setPin1 } from '../editing/parts.ts';
import { pin1OfNext } from '../editing/placing.ts';
import { strapGroupsNaming } from '../editing/strap-references.ts';
import type { App } from '../state/app.ts';
import type { AppState } from '../state/app-state.ts';
import type { ToolName } from '../state/canvas-model.ts';
import { PACKAGE_BOX_ID } from '../state/element-ids.ts';
import { focusDrawn } from '../state/focus-drawn.ts';
import { type Action, hasParts, hasTicket } from './action.ts';

const onBoard = (state: AppState): boolean => hasTicket(state) && state.view.stage === 'board';

const placing = (state: AppState): boolean =>
  onBoard(state) && state.view.tool === 'place' && state.view.placing.offer !== null;

const boardTool = (name: ToolName, label: string, keys: string[], icon: Action['icon']): Action => ({
  id: `tool-${name}`,
  group: 'board',
  label,
  keys,
  icon,
  on: (state) => state.view.tool === name,
  enabled: hasTicket,
  run(app) {
    app.setView({ stage: 'board', tool: name });
    app.canvas.current?.focus();
  },
});

/** Tools that draw on the board, and what their keys do. They lead into the stage Board. */
export const boardActions: readonly Action[] = [
  {
    ...boardTool('place', labels.placePart, ['A'], Plus),
    run(app) {
      const tool = app.store.get().view.placing.offer ? { tool: 'place' as const } : {};
      const change = () => {
        app.setView({ stage: 'board', panelOpen: true, ...tool });
        app.bench.clearSelection();
      };
      focusDrawn(change, () => document.getElementById(PACKAGE_BOX_ID));
    },
  },
  boardTool('body', labels.drawBody, ['Shift+A'], RectangleHorizontal),
  boardTool('pin1', labels.markPin1, ['Shift+C'], CircleDot),
  boardTool('cover', labels.drawCover, [], SquareDashedTopSolid),
  {
    id: 'next-pin1',
    group: 'board',
    label: labels.nextPin1,
    keys: ['C'],
    enabled: (state) => placing(state) || (onBoard(state) && hasParts(state)),
    run(app) {
      if (placing(app.store.get())) return app.bench.setPlacing(pin1OfNext(app.store.get().view.placing));
      const refdes = [...app.store.get().selection.parts];
      app.bench.apply(partEditWords.pin1(refdes), (document) => setPin1(document, refdes, nextPin1));
    },
  },
  {
    id: 'empty-position',
    group: 'board',
    label: labels.emptyPosition,
    keys: ['G'],
    on: emptyOn,
    enabled: (state) => placing(state) || (onBoard(state) && hasParts(state)),
    run(app) {
      const fitted = emptyOn(app.store.get());
      if (placing(app.store.get())) return app.bench.setPlacing({ fitted });
      const refdes = [...app.store.get().selection.parts];
      app.bench.apply(editLabels.part(refdes), (document) => setPartFields(document, refdes, { fitted }));
    },
  },
  {
    id: 'tall',
    group: 'board',
    label: labels.tall,
    keys: ['Q'],
    enabled: hasParts,
    run: (app) => app.store.set((state) => ({ ...state, dialog: 'tall' })),
  },
];

/** True while the next part, or everything that is selected, is an empty position. */
function emptyOn(state: AppState): boolean {
  if (placing(state)) return !state.view.placing.fitted;
  const chosen = state.ticket?.document.board.parts.filter((part) => state.selection.parts.has(part.refdes)) ?? [];
  return chosen.length > 0 && chosen.every((part) => !part.fitted);
}

/** True when Delete takes parts or a cover off the drawing: in the stage Board only. */
export function deletesFromBoard(state: AppState): boolean {
  const { parts, coverId } = state.selection;
  return onBoard(state) && (parts.size > 0 || coverId !== null);
}

export function deleteFromBoard(app: App): void {
  const { parts, coverId } = app.store.get().selection;
  const refdes = [...parts];
  const { ticket } = app.store.get();
  const groups = ticket ? strapGroupsNaming(ticket.document, refdes) : [];
  if (groups.length > 0) app.bench.hint(partEditWords.namedByStraps(groups));
  else if (refdes.length > 0)
    app.bench.apply(partEditWords.remove(refdes), (document) => deleteParts(document, refdes));
  else if (coverId) app.bench.apply(partEditWords.removeCover(coverId), (document) => removeCover(document, coverId));
}
