import { FolderInput } from 'lucide-react';
import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { emptyBoard } from '../../../shared-types/board.ts';
import { emptyPlan } from '../../../shared-types/rules/new-plan.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { newTicketWords as words } from '../../../shared-types/words/window/start.ts';
import { rectangleContour } from '../../editing/contour/shapes.ts';
import type { App } from '../../state/app.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { Button, Segmented } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';
import { nextNumber } from './free-number.ts';
import { startingPlan } from './starting-plan.ts';
import { takeFiles } from './take-files.ts';

type Way = 'files' | 'sample' | 'empty';
type Draft = {
  number: string;
  way: Way;
  sampleId: string;
  boardName: string;
  /** null: not said yet. A drawn board starts with the size that was measured, not with one of ours. */
  lengthMm: number | null;
  widthMm: number | null;
  cornerMm: number;
};

const startingDraft: Draft = {
  number: '',
  way: 'files',
  sampleId: '',
  boardName: '',
  lengthMm: null,
  widthMm: null,
  cornerMm: 0,
};

const ways = (['files', 'sample', 'empty'] as const).map((id) => ({ id, label: words.ways[id] }));

/** The same sheet, opened for drawing. */
export const DrawBoardDialog = ({ onClose }: { onClose: () => void }) => (
  <NewTicketDialog onClose={onClose} way="empty" />
);

export function NewTicketDialog({ onClose, way = 'files' }: { onClose: () => void; way?: Way }) {
  const app = useApp();
  const shelf = useAppState((state) => state.shelf);
  const [typed, setTyped] = useState({ ...startingDraft, way });
  // The shelf may still be read while the sheet is open: what was not chosen yet follows it.
  const draft: Draft = {
    ...typed,
    number: typed.number || nextNumber(shelf.cards),
    sampleId: typed.sampleId || (shelf.samples[0]?.id ?? ''),
  };
  const change = (fields: Partial<Draft>) => setTyped((before) => ({ ...before, ...fields }));
  const sized = draft.lengthMm !== null && draft.widthMm !== null;
  const ready = draft.way === 'sample' ? draft.sampleId !== '' : draft.boardName.trim() !== '' && sized;
  const create = () => {
    onClose();
    void createTicket(app, draft);
  };
  return (
    <Dialogue
      title={words.title}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          {draft.way === 'files' ? (
            <FileTrigger allowsMultiple onSelect={(files) => files && void takeFiles(app, [...files])}>
              <Button look="primary" icon={FolderInput}>
                {words.chooseFiles}
              </Button>
            </FileTrigger>
          ) : (
            <Button look="primary" disabled={!ready} onPress={create}>
              {words.create}
            </Button>
          )}
        </>
      }
    >
      <Segmented label={words.from} value={draft.way} choices={ways} onChange={(way) => change({ way })} />
      {/* A figure counts on Enter's way down; on its way up the sheet is done. */}
      <div
        role="presentation"
        onKeyUpCapture={(event) =>
          event.key === 'Enter' && ready && isFigure(event.target) && draft.way === 'empty' && create()
        }
      >
        <WayFields draft={draft} change={change} />
      </div>
    </Dialogue>
  );
}

const isFigure = (target: EventTarget): boolean =>
  target instanceof HTMLInputElement && target.inputMode !== '' && target.inputMode !== 'text';

function WayFields({ draft, change }: { draft: Draft; change: (fields: Partial<Draft>) => void }) {
  const samples = useAppState((state) => state.shelf.samples);
  if (draft.way === 'files') return <p className="way soft">{words.filesText}</p>;
  const number = (
    <TextEntry
      label={words.number}
      value={draft.number}
      longest={100}
      mono
      needed
      onType={(value) => change({ number: value })}
      onDone={(value) => change({ number: value })}
    />
  );
  if (draft.way === 'sample')
    return (
      <div className="way">
        {number}
        <Choice
          label={words.sample}
          value={draft.sampleId}
          placeholder={words.noSamples}
          items={samples.map((card) => ({ id: card.id, label: card.boardName }))}
          onChange={(sampleId) => change({ sampleId })}
        />
      </div>
    );
  return (
    <div className="way">
      {number}
      <TextEntry
        label={words.boardName}
        value={draft.boardName}
        longest={200}
        autoFocus
        onType={(boardName) => change({ boardName })}
        onDone={(boardName) => change({ boardName })}
      />
      <LengthEntry
        label={words.length}
        value={draft.lengthMm}
        least={1}
        most={2000}
        emptyIs={words.measure}
        onChange={(lengthMm) => change({ lengthMm })}
      />
      <LengthEntry
        label={words.width}
        value={draft.widthMm}
        least={1}
        most={2000}
        emptyIs={words.measure}
        onChange={(widthMm) => change({ widthMm })}
      />
      <LengthEntry
        label={words.cornerRadius}
        value={draft.cornerMm}
        least={0}
        most={1000}
        onChange={(value) => value !== null && change({ cornerMm: value })}
      />
    </div>
  );
}

async function createTicket(app: App, draft: Draft): Promise<void> {
  const number = draft.number.trim();
  if (draft.way === 'sample') {
    await app.tickets.fromSample(draft.sampleId, number);
    return;
  }
  const { lengthMm, widthMm, cornerMm } = draft;
  if (lengthMm === null || widthMm === null) return;
  const outline = rectangleContour({ x: 0, y: 0 }, { x: lengthMm, y: widthMm }, cornerMm);
  const board = { ...emptyBoard(draft.boardName.trim(), lengthMm, widthMm), outline };
  await app.tickets.create(number, { board, plan: startingPlan(emptyPlan(number), app.store.get().settings) });
  // An empty board is there to be drawn.
  app.setView({ stage: 'board' });
}
