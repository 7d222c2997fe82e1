import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { Board } from '../../../shared-types/board.ts';
import { boxOf, flattenContour } from '../../../shared-types/geometry.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { problemWords } from '../../../shared-types/words/problems.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { importDialogWords as dialogWords } from '../../../shared-types/words/window/import-dialog.ts';
import { newTicketWords, importWords as words } from '../../../shared-types/words/window/start.ts';
import type { Imported, ImportedBoard } from '../../state/app-state.ts';
import { chooseImport, forgetImport, importFor, rememberImport } from '../../state/importing.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { nextNumber } from './free-number.ts';
import { CoverSection } from './import/CoverSection.tsx';
import type { Choose } from './import/choose.ts';
import { DrawingSection } from './import/DrawingSection.tsx';
import { FileFold } from './import/FileFold.tsx';
import { OutlineSection } from './import/OutlineSection.tsx';
import { SenseSection } from './import/SenseSection.tsx';
import { SidesPreview } from './import/SidesPreview.tsx';
import { TableSections } from './import/TableSection.tsx';
import { Notes } from './Notes.tsx';
import './import/import.css';
import { startingPlan } from './starting-plan.ts';
import { takeFiles } from './take-files.ts';

/** What was found in the files, with every note, before a ticket is made of it. */
export function ImportDialog({ onClose }: { onClose: () => void }) {
  const imported = useAppState((state) => state.imported);
  return imported && <Found imported={imported} onClose={onClose} />;
}

function Found({ imported, onClose }: { imported: Imported; onClose: () => void }) {
  const app = useApp();
  const cards = useAppState((state) => state.shelf.cards);
  const open = useAppState((state) => state.ticket?.document.board.name ?? null);
  const [number, setNumber] = useState(() => nextNumber(cards));
  const [typed, setName] = useState<string | null>(null);
  const { read, purpose } = imported;
  const name = typed ?? read?.board.name ?? '';
  const choose: Choose = (fields) => void chooseImport(app, { ...imported.choices, ...fields });
  const create = async (board: Board) => {
    rememberImport(app, imported);
    onClose();
    if (app.store.get().ticket) await app.tickets.close();
    const plan = startingPlan(emptyPlan(number.trim()), app.store.get().settings);
    await app.tickets.create(number.trim(), { board: { ...board, name: name.trim() }, plan });
  };
  const compare = () => {
    rememberImport(app, imported);
    app.store.set((state) => ({ ...state, dialog: 'update' }));
  };
  const ready = read !== null && !imported.problem && !imported.reading;
  return (
    <Dialogue
      title={purpose === 'new' ? words.title : dialogWords.updateTitle}
      size="widest"
      onClose={onClose}
      footer={
        <>
          <FileTrigger allowsMultiple onSelect={(files) => files && void takeFiles(app, [...files])}>
            <Button>{dialogWords.addFiles}</Button>
          </FileTrigger>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          {purpose === 'new' ? (
            <Button
              look="primary"
              disabled={!ready || !number.trim() || !name.trim()}
              onPress={() => read && void create(read.board)}
            >
              {words.create}
            </Button>
          ) : (
            <Button look="primary" disabled={!ready} onPress={compare}>
              {dialogWords.compare}
            </Button>
          )}
        </>
      }
    >
      <div className="import-sheet">
        {read ? <SidesPreview board={read.board} stale={!ready} /> : <p className="soft">{dialogWords.noBoard}</p>}
        <div>
          {open !== null && (
            <Choice
              label={dialogWords.purpose}
              value={purpose}
              items={[
                { id: 'new', label: dialogWords.purposes.new },
                { id: 'update', label: dialogWords.purposes.update(open) },
              ]}
              onChange={(next) => void importFor(app, next)}
            />
          )}
          <ChoiceState imported={imported} />
          {purpose === 'new' && (
            <>
              <TextEntry
                label={newTicketWords.number}
                value={number}
                longest={100}
                mono
                onType={setNumber}
                onDone={setNumber}
              />
              <TextEntry label={words.boardName} value={name} longest={200} onType={setName} onDone={setName} />
            </>
          )}
          {read && <Facts board={read.board} />}
          <FileFold files={imported.listed} />
          <TableSections imported={imported} choose={choose} />
          {read && <ReadSections imported={{ ...imported, read }} choose={choose} />}
        </div>
      </div>
    </Dialogue>
  );
}

/** What there is to say and choose once the files give a board. */
function ReadSections({ imported, choose }: { imported: ImportedBoard; choose: Choose }) {
  const { notes } = imported.read;
  return (
    <>
      <DrawingSection imported={imported} choose={choose} />
      <SenseSection imported={imported} choose={choose} />
      <CoverSection imported={imported} choose={choose} />
      <OutlineSection imported={imported} choose={choose} />
      <Section title={words.notes} count={notes.length}>
        <Notes notes={notes} />
      </Section>
    </>
  );
}

/** What the last choice came to, and the way back to the importer's own reading. */
function ChoiceState({ imported }: { imported: Imported }) {
  const app = useApp();
  const { problem, remembered, choices } = imported;
  const chosen = Object.keys(choices).length > 0;
  const wrong = problem && problemWords(problem);
  return (
    <>
      {wrong && (
        <div className="import-problem" role="alert">
          <p>{wrong.what}.</p>
          <p className="soft">
            {wrong.todo} {imported.read ? dialogWords.stays : dialogWords.sayOrAdd}
          </p>
        </div>
      )}
      {chosen && (
        <p className="import-state" role="status">
          {remembered ? dialogWords.remembered : dialogWords.chosen}
          <Button small onPress={() => void forgetImport(app)}>
            {remembered ? dialogWords.forget : dialogWords.reset}
          </Button>
        </p>
      )}
    </>
  );
}

function Facts({ board }: { board: Board }) {
  const { measures } = useUnits();
  const box = boxOf(flattenContour(board.outline, 0.2));
  const top = board.parts.filter((part) => part.side === 'top').length;
  const guessed = board.parts.filter((part) => part.classGuessed).length;
  const facts = [
    [words.partsLabel, words.parts(top, board.parts.length - top)],
    ...(board.covers.length > 0 ? [[dialogWords.covers, String(board.covers.length)]] : []),
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
