import { COVER_CHOICES } from '../../../../shared-types/import-choices.ts';
import { importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import type { Choose } from './choose.ts';

const all = COVER_CHOICES.map((id) => ({ id, label: words.coverChoices[id] }));

/** Parts that are, or may be, shield cans and frames: what each was taken for and why, to be changed. */
export function CoverSection({ imported, choose }: { imported: ImportedBoard; choose: Choose }) {
  const { measures } = useUnits();
  const { covers } = imported.read.report;
  if (covers.length === 0) return null;
  return (
    <Section title={words.covers} count={covers.length}>
      {covers.map(({ refdes, as, by, chosen, under, lengthMm, widthMm }) => {
        const size =
          lengthMm === null || widthMm === null
            ? words.coverSizeUnknown
            : `${measures.length(lengthMm)} × ${measures.length(widthMm)}`;
        return (
          <Choice
            key={refdes}
            label={`${refdes} (${[chosen ? words.coverBy.chosen : words.coverBy[by], size, words.coverUnder(under)].join(', ')})`}
            value={as}
            items={lengthMm === null ? all.filter(({ id }) => id === 'part') : all}
            onChange={(next) => choose({ covers: { ...imported.choices.covers, [refdes]: next } })}
          />
        );
      })}
    </Section>
  );
}
