// biome-ignore-all lint/a11y/useSemanticElements: a virtualised grid cannot be a table element
import type { MouseEvent } from 'react';
import { classById } from '../../shared-types/library/classes.ts';
import { ACTION_NAMES } from '../../shared-types/words/planning.ts';
import { bandWords } from '../../shared-types/words/uncertainty.ts';
import { partStateWords, tableWords as words } from '../../shared-types/words/window/table.ts';
import type { PartRow } from '../state/part-rows.ts';
import { type Units, useUnits } from '../state/use-units.ts';
import { StateMark } from '../widgets/StateMark.tsx';
import { TagGlyph } from '../widgets/TagGlyph.tsx';
import { shownState } from './shown-state.ts';
import { COLUMNS, type Column, governingLimit } from './table-rows.ts';

type RowProps = {
  row: PartRow;
  index: number;
  top: number;
  selected: boolean;
  current: boolean;
  onPress: (refdes: string, how: { shift: boolean; control: boolean }) => void;
};

export function TableRow({ row, index, top, selected, current, onPress }: RowProps) {
  const units = useUnits();
  const { refdes } = row.part;
  const press = (event: MouseEvent) =>
    onPress(refdes, { shift: event.shiftKey, control: event.ctrlKey || event.metaKey });
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid handles the keys of all its rows
    <div
      id={`row-${refdes}`}
      className="table-row"
      role="row"
      tabIndex={-1}
      aria-rowindex={index + 2}
      aria-selected={selected}
      data-selected={selected ? '' : undefined}
      data-current={current ? '' : undefined}
      style={{ transform: `translateY(${top}px)` }}
      onMouseDown={focusGrid}
      onClick={press}
    >
      {COLUMNS.map((column) => (
        <div key={column} role="gridcell" tabIndex={-1} className={`cell ${column}`}>
          {cellOf(row, column, units)}
        </div>
      ))}
    </div>
  );
}

/** The grid has the focus, not the cell under the pointer: its keys work from there, and Shift selects rows, not text. */
function focusGrid(event: MouseEvent<HTMLElement>): void {
  event.preventDefault();
  event.currentTarget.closest<HTMLElement>('[role="grid"]')?.focus({ preventScroll: true });
}

function cellOf(row: PartRow, column: Column, units: Units) {
  const { part, exposure, action, tags } = row;
  const degrees = (celsius: number | undefined | null) =>
    celsius === undefined || celsius === null ? '' : units.measures.degrees(celsius);
  switch (column) {
    case 'refdes':
      return part.refdes;
    case 'side':
      return words.sides[part.side];
    case 'class':
      return (
        <span title={part.classGuessed ? words.guessed : undefined} className={part.classGuessed ? 'guess' : undefined}>
          {classById(part.class).name}
        </span>
      );
    case 'clearance':
      return exposure ? units.showMm(exposure.clearanceMm).toFixed(units.lengthSign === 'mil' ? 0 : 1) : '';
    case 'body':
      return degrees(exposure?.body.maxC);
    case 'skin':
      return degrees(exposure?.skin.maxC);
    case 'joint':
      return degrees(exposure?.joint.maxC);
    case 'limit':
      return degrees(governingLimit(row));
    case 'margin':
      return marginFigure(row, units);
    case 'state':
      return <StateCell row={row} />;
    case 'action':
      return action ? ACTION_NAMES[action.action] : '';
    case 'tag':
      return tags.map((tag) => <TagGlyph key={tag.id} kind={tag.kind} size={18} order={tag.order} />);
  }
}

function marginFigure(row: PartRow, units: Units): string {
  if (!row.exposure || governingLimit(row) === null) return '';
  const { marginK, bandK } = row.exposure;
  const scale = units.temperatureSign === '°F' ? 1.8 : 1;
  const figure = Math.round(marginK * scale);
  const band = bandK === null ? '' : ` ${bandWords.plusMinus(String(Math.round(bandK * scale)))}`;
  return `${figure < 0 ? `−${-figure}` : `+${figure}`}${band}`;
}

function StateCell({ row }: { row: PartRow }) {
  const state = shownState(row);
  if (!state) return <span className="soft">{row.notEvaluated ? words.notEvaluated[row.notEvaluated] : ''}</span>;
  return (
    <>
      <StateMark state={state} />
      <span aria-hidden="true">{partStateWords[state]}</span>
    </>
  );
}
