import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { flattenContour } from '../../../../shared-types/geometry.ts';
import { importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Section } from '../../../widgets/Section.tsx';
import { BoardDrawing } from '../BoardDrawing.tsx';
import type { Choose } from './choose.ts';

type Candidate = { id: string; lengthMm: number; widthMm: number; sharePercent: number; polygon: [number, number][] };

/** The loops that could be the board's outline, as small pictures to choose from. */
export function OutlineSection({ imported, choose }: { imported: ImportedBoard; choose: Choose }) {
  const { measures } = useUnits();
  const { outline } = imported.read.report;
  if (outline.others.length === 0) return null;
  const taken = String(imported.choices.outline ?? 0);
  const polygon = flattenContour(imported.read.board.outline, 0.2).map(({ x, y }): [number, number] => [x, y]);
  const candidates: Candidate[] = [
    { ...outline, id: taken, polygon },
    ...outline.others.map((other) => ({ ...other, id: String(other.rank) })),
  ].toSorted((a, b) => Number(a.id) - Number(b.id));
  return (
    <Section title={words.outline} count={candidates.length}>
      <ToggleButtonGroup
        className="outline-choices"
        aria-label={words.outline}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[taken]}
        onSelectionChange={([next]) => next !== undefined && next !== taken && choose({ outline: Number(next) })}
      >
        {candidates.map(({ id, lengthMm, widthMm, sharePercent, polygon: corners }) => (
          <ToggleButton key={id} id={id}>
            <BoardDrawing drawing={{ outline: corners, top: [], sites: [] }} />
            {words.outlineOf(measures.length(lengthMm), measures.length(widthMm), sharePercent)}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
    </Section>
  );
}
