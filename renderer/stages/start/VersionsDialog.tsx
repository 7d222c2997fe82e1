import { useEffect, useState } from 'react';
import type { RequestOutput, TicketCard } from '../../../shared-types/contract.ts';
import type { Result } from '../../../shared-types/problem.ts';
import { problemWords } from '../../../shared-types/words/problems.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { versionsWords as words } from '../../../shared-types/words/window/start.ts';
import { useApp } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { nameOf } from './card-name.ts';

type Answer = Result<RequestOutput<'ticket.versions'>>;

/** The earlier versions of a ticket, newest first; each opens as a ticket of its own. */
export function VersionsDialog({ card, onClose }: { card: TicketCard; onClose: () => void }) {
  const app = useApp();
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(() => {
    let gone = false;
    void app.backend.request('ticket.versions', { id: card.id }).then((given) => gone || setAnswer(given));
    return () => {
      gone = true;
    };
  }, [app, card.id]);
  const open = (version: string) => {
    onClose();
    void app.tickets.openVersion(card.id, version);
  };
  return (
    <Dialogue
      title={words.title(nameOf(card))}
      onClose={onClose}
      footer={<Button onPress={onClose}>{frameWords.cancel}</Button>}
    >
      <p className="soft">{words.text}</p>
      {answer && <Versions answer={answer} open={open} />}
    </Dialogue>
  );
}

function Versions({ answer, open }: { answer: Answer; open: (version: string) => void }) {
  if (!answer.ok) {
    const { what, todo } = problemWords(answer.problem);
    return (
      <p role="alert">
        {what}. {todo}
      </p>
    );
  }
  const { versions } = answer.value;
  if (versions.length === 0) return <p className="no-versions">{words.none}</p>;
  return (
    <ul className="version-list" aria-label={words.list}>
      {versions.map(({ id, savedAt }) => {
        const { day, time } = words.moment(new Date(savedAt));
        return (
          <li key={id}>
            <span>{day}</span>
            <span className="time">{time}</span>
            <Button small label={words.openOne(day, time)} onPress={() => open(id)}>
              {words.open}
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
