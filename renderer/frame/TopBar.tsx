import { LibraryBig, Printer } from 'lucide-react';
import type { Side } from '../../shared-types/geometry.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { shownKeys } from '../actions/chords.ts';
import { actionById } from '../actions/table.ts';
import { toolActions } from '../actions/view-actions.ts';
import type { ToolName } from '../state/canvas-model.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { ActionButton } from '../widgets/ActionButton.tsx';
import { Button, IconButton, Segmented, WithTip } from '../widgets/Buttons.tsx';
import { FindBox } from './FindBox.tsx';

export function TopBar() {
  return (
    <header className="top-bar">
      <TitleGroup />
      <ToolGroup />
      <EndingGroup />
    </header>
  );
}

function TitleGroup() {
  const app = useApp();
  const title = useAppState((state) => ({
    number: state.ticket?.document.plan.ticket.number ?? '',
    board: state.ticket?.document.board.name ?? '',
  }));
  return (
    <div>
      <span className="shelf-button">
        <IconButton icon={LibraryBig} label={words.shelf} keys="Ctrl+O" onPress={() => void app.tickets.close()} />
      </span>
      <div className="ticket-title">
        <h1>{title.number}</h1>
        <span className="board-name">{title.board}</span>
      </div>
      <SaveMark />
    </div>
  );
}

function SaveMark() {
  const save = useAppState((state) => state.ticket?.save);
  if (!save) return null;
  const time = save.at ? new Date(save.at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' }) : '';
  return (
    <span className="save-state" data-state={save.state} title={words.savedTip[save.state]} role="status">
      <span className="dot" aria-hidden="true" />
      {words.save[save.state]}
      {save.state === 'filed' && time ? ` ${time}` : ''}
    </span>
  );
}

function ToolGroup() {
  const app = useApp();
  const tool = useAppState((state) => state.view.tool);
  const choices = toolActions.map((action) => {
    const id = action.id.replace('tool-', '') as ToolName;
    return { id, label: action.label, icon: action.icon, keys: shownKeys(action.keys) };
  });
  return (
    <div>
      <Segmented
        label={words.tools}
        value={tool}
        choices={choices}
        iconsOnly
        onChange={(next) => actionById(`tool-${next}`).run(app)}
      />
      <span className="bar-rule" />
      <HistoryButtons />
      <span className="bar-rule" />
      <ActionButton id="turn-left" />
      <ActionButton id="turn-right" />
      <ActionButton id="fit-all" />
    </div>
  );
}

function HistoryButtons() {
  const labels = useAppState((state) => ({
    done: state.history.done.at(-1)?.label,
    undone: state.history.undone.at(-1)?.label,
  }));
  return (
    <>
      <ActionButton id="undo" label={labels.done && editLabels.undo(labels.done)} />
      <ActionButton id="redo" label={labels.undone && editLabels.redo(labels.undone)} />
    </>
  );
}

function EndingGroup() {
  const app = useApp();
  const { side, busy } = useAppState((state) => ({ side: state.view.side, busy: state.busy }));
  const sides: { id: Side; label: string; keys: string }[] = [
    { id: 'top', label: words.top, keys: 'O' },
    { id: 'bottom', label: words.bottom, keys: 'O' },
  ];
  return (
    <div className="ending">
      <FindBox />
      <span className="bar-rule" />
      <Segmented label={words.side} value={side} choices={sides} onChange={(next) => app.setView({ side: next })} />
      <span className="bar-rule" />
      <WithTip label={actionById('print-map').label} keys="Ctrl+P">
        <Button look="primary" icon={Printer} disabled={busy} onPress={() => actionById('print-map').run(app)}>
          {busy ? words.printing : words.printMap}
        </Button>
      </WithTip>
    </div>
  );
}
