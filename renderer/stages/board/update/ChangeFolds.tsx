import { type ReactNode, useState } from 'react';
import {
  ASPECT_WORDS,
  aspectWords,
  boardUpdateWords,
  coverChangeWords,
} from '../../../../shared-types/words/board-update.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Check } from '../../../widgets/Check.tsx';
import { Fold } from '../../../widgets/Section.tsx';
import { type BoardUpdate, type Tickable, tickables } from './use-board-update.ts';

/** Every kind of change with its lines, each to be taken or left. */
export function ChangeFolds({ update }: { update: BoardUpdate }) {
  const { measures } = useUnits();
  const { document, changes, decisions, mentions } = update;
  const { aspects, added, covers, whole } = tickables(document, changes, decisions);
  return (
    <>
      {aspects.map(({ aspect, lines }) => (
        <TickFold
          key={aspect}
          title={ASPECT_WORDS[aspect]}
          update={update}
          lines={lines}
          say={({ change }) => aspectWords(aspect, change, measures)}
        />
      ))}
      <TickFold
        title={boardUpdateWords.added}
        update={update}
        lines={added}
        say={({ part }) => [part.package.name, part.value].filter(Boolean).join(', ')}
      />
      <TickFold
        title={words.covers}
        update={update}
        lines={covers}
        say={({ change }) => coverChangeWords(change, mentions.get(change.cover.id), measures)}
      />
      <TickFold title={words.board} update={update} lines={whole} say={({ key }) => boardUpdateWords[key](changes)} />
    </>
  );
}

const FIRST_LINES = 40;

type TickFoldProps<T extends Tickable> = {
  title: string;
  update: BoardUpdate;
  lines: readonly T[];
  say: (line: T) => ReactNode;
};

function TickFold<T extends Tickable>({ title, update, lines, say }: TickFoldProps<T>) {
  const [shown, setShown] = useState(FIRST_LINES);
  if (lines.length === 0) return null;
  const taken = lines.filter(({ on }) => on).length;
  return (
    <Fold title={title} summary={words.of(taken, lines.length)} open={lines.length <= 8}>
      {lines.length > 1 && (
        <Check
          on={taken === lines.length ? true : taken === 0 ? false : null}
          onChange={(on) =>
            update.tick(
              lines.map(({ key }) => key),
              on,
            )
          }
        >
          {words.all(title.toLowerCase())}
        </Check>
      )}
      <ul className="change-lines" aria-label={title}>
        {lines.slice(0, shown).map((line) => (
          <li key={line.key}>
            <Check on={line.on} onChange={(on) => update.tick([line.key], on)}>
              {line.refdes && <span className="name">{line.refdes}</span>} <span className="said">{say(line)}</span>
            </Check>
          </li>
        ))}
      </ul>
      {lines.length > shown && (
        <Button look="link" small onPress={() => setShown(shown + 200)}>
          {words.more(lines.length - shown)}
        </Button>
      )}
    </Fold>
  );
}
