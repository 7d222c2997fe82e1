import { useState } from 'react';
import type { Part } from '../../../../shared-types/board.ts';
import { boardUpdateWords, mentionWords } from '../../../../shared-types/words/board-update.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import type { Fate } from '../../../editing/board-update.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice, type ChoiceItem } from '../../../widgets/Choice.tsx';
import { Fold, Section } from '../../../widgets/Section.tsx';
import type { BoardUpdate } from './use-board-update.ts';

const FIRST_LINES = 40;

/** Parts that the files do not have any more, those that the ticket says something of first, and what becomes of each. */
export function GoneFold({ update }: { update: BoardUpdate }) {
  const [shown, setShown] = useState(FIRST_LINES);
  const { changes, mentions } = update;
  if (changes.gone.length === 0) return null;
  const said = (part: Part) => mentions.get(part.refdes)?.length ?? 0;
  const sorted = changes.gone.toSorted((a, b) => Number(said(b) > 0) - Number(said(a) > 0));
  const named = sorted.filter((part) => said(part) > 0).length;
  return (
    <Fold title={boardUpdateWords.gone} summary={String(sorted.length)} open={sorted.length <= 8 || named > 0}>
      {named > 0 && <p className="soft reason">{words.goneText}</p>}
      <ul className="change-lines" aria-label={boardUpdateWords.gone}>
        {sorted.slice(0, shown).map((part) => (
          <GoneRow key={part.refdes} part={part} update={update} />
        ))}
      </ul>
      {sorted.length > shown && (
        <Button look="link" small onPress={() => setShown(shown + 200)}>
          {words.more(sorted.length - shown)}
        </Button>
      )}
    </Fold>
  );
}

function GoneRow({ part: { refdes }, update }: { part: Part; update: BoardUpdate }) {
  const { changes, decisions, mentions } = update;
  const said = mentions.get(refdes) ?? [];
  const now = changes.renamed.get(refdes);
  const strapped = said.some(({ kind }) => kind === 'strap');
  const items: ChoiceItem<Fate | 'renamed'>[] = [
    { id: 'orphan', label: said.length > 0 ? words.orphanKept : words.fates.orphan },
    // The drawing lets no part go that a strap group names; then only its place in the group can be kept.
    ...(said.length > 0 && !strapped ? [{ id: 'clear' as const, label: words.fates.clear }] : []),
    { id: 'stay', label: words.fates.stay },
    ...(now ? [{ id: 'renamed' as const, label: words.isNow(now) }] : []),
  ];
  const choose = (next: Fate | 'renamed') =>
    next === 'renamed'
      ? update.decide({ renames: { ...decisions.renames, [refdes]: now ?? refdes } })
      : update.decide({ fates: { ...decisions.fates, [refdes]: next } });
  return (
    <li className="gone-line">
      <div>
        <span className="name">{refdes}</span>{' '}
        <span className="said">{[...said.map(mentionWords), ...(now ? [words.newAt(now)] : [])].join('; ')}</span>
      </div>
      <Choice
        bare
        label={words.fate(refdes)}
        value={decisions.fates[refdes] ?? 'orphan'}
        items={items}
        onChange={choose}
      />
    </li>
  );
}

/** Parts that were said to be the same under another designator, and the way back. */
export function RenamedSection({ update: { decisions, decide } }: { update: BoardUpdate }) {
  const renames = Object.entries(decisions.renames);
  if (renames.length === 0) return null;
  return (
    <Section title={words.renamed} count={renames.length}>
      <ul className="change-lines">
        {renames.map(([from, to]) => (
          <li key={from} className="gone-line">
            <span className="name">{words.renamedTo(from, to)}</span>
            <Button
              small
              onPress={() => decide({ renames: Object.fromEntries(renames.filter(([one]) => one !== from)) })}
            >
              {words.undoRename(from)}
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
