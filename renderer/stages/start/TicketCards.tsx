import { Ellipsis } from 'lucide-react';
import { useState } from 'react';
import { Button as BareButton, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { TicketCard } from '../../../shared-types/contract.ts';
import { problemWords } from '../../../shared-types/words/problems.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { startWords as words } from '../../../shared-types/words/window/start.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { Button, Icon } from '../../widgets/Buttons.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { BoardDrawing } from './BoardDrawing.tsx';
import { nameOf, titleOf } from './card-name.ts';
import { freeNumber } from './free-number.ts';
import { VersionsDialog } from './VersionsDialog.tsx';

export function ShelfCard({ card }: { card: TicketCard }) {
  const app = useApp();
  const { busy, cards } = useAppState((state) => ({ busy: state.busy, cards: state.shelf.cards }));
  const [asking, setAsking] = useState<'versions' | 'remove' | null>(null);
  const title = titleOf(card, cards);
  return (
    <li className="card">
      <BareButton
        className="open-card"
        aria-label={words.openTicket(title)}
        isDisabled={busy || card.problem !== null}
        onPress={() => void app.tickets.open(card.id)}
      >
        <Picture card={card} />
        <Caption card={card} title={title} />
      </BareButton>
      <MenuTrigger>
        <BareButton className="icon-button small card-more" aria-label={words.more(title)}>
          <Icon of={Ellipsis} size={16} />
        </BareButton>
        <Popover className="popover" placement="bottom end">
          <Menu className="menu" onAction={(key) => setAsking(key === 'remove' ? 'remove' : 'versions')}>
            <MenuItem id="versions" className="menu-item">
              {words.versions}
            </MenuItem>
            <MenuItem id="remove" className="menu-item">
              {words.remove}
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
      {asking === 'versions' && <VersionsDialog card={card} onClose={() => setAsking(null)} />}
      {asking === 'remove' && <RemoveDialog card={card} onClose={() => setAsking(null)} />}
    </li>
  );
}

function RemoveDialog({ card, onClose }: { card: TicketCard; onClose: () => void }) {
  const app = useApp();
  const remove = () => {
    onClose();
    void app.tickets.remove(card.id);
  };
  return (
    <Dialogue
      title={words.removeTitle(nameOf(card))}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" onPress={remove}>
            {words.removeDo}
          </Button>
        </>
      }
    >
      <p>{card.fileName}</p>
      <p className="soft">{words.removeText}</p>
    </Dialogue>
  );
}

export function SampleCard({ card }: { card: TicketCard }) {
  const app = useApp();
  const { busy, cards } = useAppState((state) => ({ busy: state.busy, cards: state.shelf.cards }));
  return (
    <li className="card">
      <BareButton
        className="open-card"
        aria-label={words.takeSample(card.boardName)}
        isDisabled={busy}
        onPress={() => void app.tickets.fromSample(card.id, freeNumber(cards, card.number))}
      >
        <Picture card={card} />
        <Caption card={card} title={card.boardName} />
      </BareButton>
    </li>
  );
}

const Picture = ({ card }: { card: TicketCard }) => (
  <div className="drawing">
    <BoardDrawing drawing={card.drawing} />
  </div>
);

function Caption({ card, title }: { card: TicketCard; title: string }) {
  if (card.problem) {
    const { what, todo } = problemWords(card.problem);
    return (
      <div className="caption of-file">
        <span className="number">{card.fileName}</span>
        <span className="facts">
          {what}. {todo}
        </span>
      </div>
    );
  }
  const day = new Date(card.changedAt).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
  const kind = card.sample ? 'of-sample' : title === card.number ? '' : 'of-file';
  return (
    <div className={`caption ${kind}`}>
      <span className="number">{title}</span>
      {!card.sample && <span className="when">{day}</span>}
      <span className="board">
        {title === card.boardName ? '' : `${card.boardName}, `}
        {card.target ? words.target(card.target) : words.noTarget}
      </span>
      <span className="facts">{words.counts(card.counts)}</span>
      {card.invented && <span className="mark-invented">{words.invented}</span>}
    </div>
  );
}
