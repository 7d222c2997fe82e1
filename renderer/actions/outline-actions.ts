import { PenTool } from 'lucide-react';
import { actionLabels } from '../../shared-types/words/window/actions.ts';
import { frameOfBoardWords as words } from '../../shared-types/words/window/outline.ts';
import { type Frame, lowerLeft, moveOrigin, turnBoard } from '../editing/board-frame.ts';
import { type Action, hasTicket } from './action.ts';

const frame = (id: string, label: string, edit: string, change: Pick<Frame, 'mirror' | 'quarters'>): Action => ({
  id,
  group: 'edit',
  label,
  keys: [],
  enabled: hasTicket,
  run(app) {
    app.bench.apply(edit, (document) => turnBoard(document, change));
    app.canvas.current?.fit(null);
  },
});

/** Opens the stage with the tool: its fields stand there. */
export const outlineToolAction: Action = {
  id: 'tool-outline',
  group: 'tool',
  label: actionLabels.toolOutline,
  keys: ['E'],
  icon: PenTool,
  on: (state) => state.view.tool === 'outline',
  enabled: hasTicket,
  run(app) {
    app.setView({ tool: 'outline', stage: 'board', panelOpen: true });
    app.canvas.current?.focus();
  },
};

/** The whole board in another place. */
export const outlineActions: readonly Action[] = [
  {
    id: 'origin-to-corner',
    group: 'edit',
    label: words.toOrigin,
    keys: [],
    enabled: hasTicket,
    run: (app) => app.bench.apply(words.edits.origin, (document) => moveOrigin(document, lowerLeft(document.board))),
  },
  frame('turn-board-left', words.turnLeft, words.edits.turn, { mirror: false, quarters: 1 }),
  frame('turn-board-right', words.turnRight, words.edits.turn, { mirror: false, quarters: 3 }),
  frame('mirror-board', words.mirror, words.edits.mirror, { mirror: true, quarters: 0 }),
];
