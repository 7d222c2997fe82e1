import { importWords as words } from '../../../shared-types/words/window/start.ts';
import { useAppState } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { Notes } from './Notes.tsx';
import './start.css';

/** What the import had to say of a drawing that became a ticket at once. */
export function NotesDialog({ onClose }: { onClose: () => void }) {
  const notes = useAppState((state) => state.openedNotes);
  return (
    <Dialogue
      title={words.notesTitle}
      size="wide"
      onClose={onClose}
      footer={
        <Button look="primary" onPress={onClose}>
          {words.notesDone}
        </Button>
      }
    >
      <Notes notes={notes} />
    </Dialogue>
  );
}
