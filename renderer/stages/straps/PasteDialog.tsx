import { useState } from 'react';
import type { StrapDraft } from '../../../shared-types/rules/straps/draft.ts';
import { draftFromTable } from '../../../shared-types/rules/straps/paste-group.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { useDocument } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

type Props = { onClose: () => void; onDraft: (draft: StrapDraft) => void };

/** Takes a whole table; what was read is looked over in the editor before it is kept. */
export function PasteDialog({ onClose, onDraft }: Props) {
  const { board } = useDocument();
  const [text, setText] = useState('');
  const draft = draftFromTable(text, board, '');
  return (
    <Dialogue
      title={words.pasteTitle}
      size="wide"
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={!draft} onPress={() => draft && onDraft(draft)}>
            {words.takeTable}
          </Button>
        </>
      }
    >
      <p className="soft">{words.pasteText}</p>
      <TextEntry
        label={words.pasteArea}
        value={text}
        lines={12}
        stacked
        mono
        autoFocus
        longest={100_000}
        onType={setText}
        onDone={setText}
      />
      {text.trim() !== '' && !draft && <p role="status">{words.pasteNoColumn}</p>}
    </Dialogue>
  );
}
