import { boardUpdateWords } from '../../../../shared-types/words/board-update.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import { updateBoard } from '../../../editing/board-update.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';
import { Section } from '../../../widgets/Section.tsx';
import { AskedSection } from './AskedSection.tsx';
import { ChangeFolds } from './ChangeFolds.tsx';
import { GoneFold, RenamedSection } from './GoneFold.tsx';
import { LieSection } from './LieSection.tsx';
import { UpdateDrawing } from './UpdateDrawing.tsx';
import { type BoardUpdate, countChanges, useBoardUpdate } from './use-board-update.ts';
import '../../start/import/import.css';
import './update.css';

/** What files would change of the open board, before anything is changed. */
export function UpdateDialog({ onClose }: { onClose: () => void }) {
  const imported = useAppState((state) => state.imported);
  const open = useAppState((state) => state.ticket !== null);
  if (!open || !imported?.read) return null;
  return <Changes imported={{ ...imported, read: imported.read }} onClose={onClose} />;
}

function Changes({ imported, onClose }: { imported: ImportedBoard; onClose: () => void }) {
  const app = useApp();
  const update = useBoardUpdate(useDocument(), imported);
  const { changes, decisions } = update;
  const count = countChanges(update);
  const make = () => {
    onClose();
    app.bench.apply(words.edit, (document) => updateBoard(document, changes, decisions));
    app.bench.hint(words.done(count));
  };
  return (
    <Dialogue
      title={words.title}
      size="widest"
      onClose={onClose}
      footer={
        <>
          <Button onPress={() => app.store.set((state) => ({ ...state, dialog: 'import' }))}>{words.back}</Button>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={count === 0} onPress={make}>
            {words.update(count)}
          </Button>
        </>
      }
    >
      <div className="import-sheet update-sheet">
        <UpdateDrawing update={update} />
        <div>
          <p className="same-line">{boardUpdateWords.same(changes.same, changes.common)}.</p>
          <LieSection update={update} />
          <AskedSection update={update} />
          <RenamedSection update={update} />
          <GoneFold update={update} />
          <ChangeFolds update={update} />
          <Untouched update={update} />
        </div>
      </div>
    </Dialogue>
  );
}

/** What the files say nothing of, or what cannot be used. */
function Untouched({ update: { changes } }: { update: BoardUpdate }) {
  const notes = [
    changes.untold > 0 && boardUpdateWords.untold(changes.untold),
    changes.atPin1.length > 0 && boardUpdateWords.atPin1(changes.atPin1),
    changes.unplaced.length > 0 && boardUpdateWords.unplaced(changes.unplaced),
  ].filter((note) => note !== false);
  if (notes.length === 0) return null;
  return (
    <Section title={words.notes}>
      {notes.map((note) => (
        <p key={note}>{note}.</p>
      ))}
    </Section>
  );
}
