import { LENGTH_WORDS, type LengthWord } from '../../../../shared-types/import-choices.ts';
import { unitWords, importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import type { Choose } from './choose.ts';

const lengths = LENGTH_WORDS.map((id) => ({ id: id as string, label: unitWords[id] }));
const isLength = (id: string): id is LengthWord => (LENGTH_WORDS as readonly string[]).includes(id);

/** Units of DXF and SVG drawings, which few of them say; one choice holds for all. */
export function DrawingSection({ imported, choose }: { imported: ImportedBoard; choose: Choose }) {
  const { drawings } = imported.read.report;
  if (drawings.length === 0) return null;
  return (
    <Section title={words.drawings} count={drawings.length > 1 ? drawings.length : undefined}>
      {drawings.map(({ file, unit, unitBy }) => (
        <Choice
          key={file}
          label={words.drawingUnit(file, unitBy)}
          value={unit}
          // Pixels are a reading of the file's own, no unit to be chosen.
          items={isLength(unit) ? lengths : [...lengths, { id: unit, label: unit }]}
          onChange={(next) => isLength(next) && choose({ drawingUnit: next })}
        />
      ))}
    </Section>
  );
}
