import { FilePlus2, FolderInput, Keyboard, PenTool, Settings2 } from 'lucide-react';
import { FileTrigger } from 'react-aria-components';
import { problemWords } from '../../../shared-types/words/problems.ts';
import { actionLabels } from '../../../shared-types/words/window/actions.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { startWords as words } from '../../../shared-types/words/window/start.ts';
import type { DialogName } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { SampleCard, ShelfCard } from './TicketCards.tsx';
import { takeFiles } from './take-files.ts';
import './start.css';

/** The ticket shelf, and the samples below it. */
export function StartPage() {
  const shelf = useAppState((state) => state.shelf);
  return (
    <main className="start scrolls">
      <div className="page">
        <Masthead folder={shelf.folder} />
        {shelf.problem && <Trouble problem={shelf.problem} />}
        {shelf.cards.length > 0 && (
          <ul className="cards" aria-label={words.title}>
            {shelf.cards.map((card) => (
              <ShelfCard key={card.id} card={card} />
            ))}
          </ul>
        )}
        {shelf.cards.length === 0 && !shelf.problem && (
          <div className="nothing">
            <p>{shelf.state === 'loading' ? words.loading : words.emptyTitle}</p>
            {shelf.state === 'ready' && <p>{words.emptyText}</p>}
          </div>
        )}
        {shelf.samples.length > 0 && (
          <section aria-label={words.samples}>
            <header className="samples-head">
              <h2>{words.samples}</h2>
              <p className="soft">{words.samplesText}</p>
            </header>
            <ul className="cards">
              {shelf.samples.map((card) => (
                <SampleCard key={card.id} card={card} />
              ))}
            </ul>
          </section>
        )}
      </div>
    </main>
  );
}

function Trouble({ problem }: { problem: Parameters<typeof problemWords>[0] }) {
  const { what, todo } = problemWords(problem);
  return (
    <div className="nothing" role="alert">
      <p>{what}.</p>
      <p>{todo}</p>
    </div>
  );
}

function Masthead({ folder }: { folder: string }) {
  const app = useApp();
  const busy = useAppState((state) => state.busy);
  const open = (dialog: DialogName) => app.store.set((state) => ({ ...state, dialog }));
  return (
    <header className="masthead">
      <div>
        <p>{frameWords.program}</p>
        <h1>{words.title}</h1>
        <p className="folder">{folder || '\u00a0'}</p>
      </div>
      <div className="doing">
        <IconButton icon={Keyboard} label={actionLabels.help} keys="?" onPress={() => open('help')} />
        <IconButton icon={Settings2} label={actionLabels.settings} keys="Ctrl+," onPress={() => open('settings')} />
        <FileTrigger allowsMultiple onSelect={(files) => files && void takeFiles(app, [...files])}>
          <Button icon={FolderInput} disabled={busy}>
            {words.importFiles}
          </Button>
        </FileTrigger>
        <Button icon={PenTool} disabled={busy} onPress={() => open('draw')}>
          {words.drawBoard}
        </Button>
        <Button look="primary" icon={FilePlus2} disabled={busy} onPress={() => open('new')}>
          {words.newTicket}
        </Button>
      </div>
    </header>
  );
}
