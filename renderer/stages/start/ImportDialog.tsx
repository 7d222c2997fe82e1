import { useState } from 'react';
import type { Board } from '../../../shared-types/board.ts';
import { bodyOf } from '../../../shared-types/board.ts';
import type { TicketCard } from '../../../shared-types/contract.ts';
import { boxOf, flattenContour } from '../../../shared-types/geometry.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { newTicketWords, importWords as words } from '../../../shared-types/words/window/start.ts';
import type { Imported } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { BoardDrawing } from './BoardDrawing.tsx';
import { nextNumber } from './free-number.ts';
import { Notes } from './Notes.tsx';
import { startingPlan } from './starting-plan.ts';

/** What was found in the files, with every note, before a ticket is made of it. */
export function ImportDialog({ onClose }: { onClose: () => void }) {
  const imported = useAppState((state) => state.imported);
  return imported && <Found imported={imported} onClose={onClose} />;
}

function Found({ imported, onClose }: { imported: Imported; onClose: () => void }) {
  const app = useApp();
  const cards = useAppState((state) => state.shelf.cards);
  const [number, setNumber] = useState(() => nextNumber(cards));
  const [name, setName] = useState(imported.board.name);
  const create = async () => {
    onClose();
    if (app.store.get().ticket) await app.tickets.close();
    const plan = startingPlan(emptyPlan(number.trim()), app.store.get().settings);
    await app.tickets.create(number.trim(), { board: { ...imported.board, name: name.trim() }, plan });
  };
  return (
    <Dialogue
      title={words.title}
      size="wide"
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={!number.trim() || !name.trim()} onPress={() => void create()}>
            {words.create}
          </Button>
        </>
      }
    >
      <div className="found">
        <div className="picture">
          <BoardDrawing drawing={drawingOf(imported.board)} />
        </div>
        <div>
          <TextEntry
            label={newTicketWords.number}
            value={number}
            longest={100}
            mono
            onType={setNumber}
            onDone={setNumber}
          />
          <TextEntry label={words.boardName} value={name} longest={200} onType={setName} onDone={setName} />
          <Facts board={imported.board} />
          <Notes notes={imported.notes} />
        </div>
      </div>
    </Dialogue>
  );
}

function Facts({ board }: { board: Board }) {
  const { measures } = useUnits();
  const box = boxOf(flattenContour(board.outline, 0.2));
  const top = board.parts.filter((part) => part.side === 'top').length;
  const guessed = board.parts.filter((part) => part.classGuessed).length;
  const facts = [
    [words.partsLabel, words.parts(top, board.parts.length - top)],
    [words.size, `${measures.length(box.maxX - box.minX)} × ${measures.length(box.maxY - box.minY)}`],
    [words.cutouts, String(board.cutouts.length)],
    [words.layers, String(board.laminate.layers.length)],
    [words.guessed, String(guessed)],
  ];
  return (
    <dl className="facts-list">
      {facts.map(([label, value]) => (
        <div key={label} style={{ display: 'contents' }}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The drawing of a card, made of a whole board. */
export function drawingOf(board: Board): TicketCard['drawing'] {
  const bodies = board.parts.filter((part) => part.side === 'top').map(bodyOf);
  return {
    outline: flattenContour(board.outline, 0.2).map((point) => [point.x, point.y]),
    top: bodies.map((body) => [body.x, body.y, body.lengthMm, body.widthMm, body.turnDeg]),
    sites: [],
  };
}
