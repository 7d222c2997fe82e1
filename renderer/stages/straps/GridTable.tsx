import { X } from 'lucide-react';
import { type ClipboardEvent, type KeyboardEvent, useRef } from 'react';
import { isBlank, pasteInto, splitCells } from '../../../shared-types/rules/straps/cells.ts';
import type { DraftFault, DraftTable } from '../../../shared-types/rules/straps/draft.ts';
import { strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { IconButton } from '../../widgets/Buttons.tsx';

type Props = {
  table: DraftTable;
  heads: readonly string[];
  rows: readonly (readonly string[])[];
  faults: readonly DraftFault[];
  onChange: (rows: string[][]) => void;
};

/**
 * A table to type into or to paste cells into, as in a spreadsheet. An empty row at its end takes the next entry;
 * Enter and the arrows go from row to row, Tab from cell to cell.
 */
export function GridTable({ table, heads, rows, faults, onChange }: Props) {
  const body = useRef<HTMLTableSectionElement>(null);
  const shown = [...rows, heads.map(() => '')];
  const put = (next: string[][]) => {
    while (next.length > 0 && isBlank(next[next.length - 1])) next.pop();
    onChange(next);
  };
  const type = (row: number, column: number, value: string) =>
    put(pasteInto(rows, { row, column }, [[value]], heads.length));
  const paste = (event: ClipboardEvent, row: number, column: number) => {
    const text = event.clipboardData.getData('text');
    const cells = splitCells(text);
    if (cells.length <= 1 && (cells[0]?.length ?? 0) <= 1) return;
    event.preventDefault();
    put(pasteInto(rows, { row, column }, cells, heads.length));
  };
  const step = (event: KeyboardEvent, row: number, column: number) => {
    const by = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const cell = body.current?.rows[row + by]?.cells[column]?.querySelector('input');
    cell?.focus();
    cell?.select();
  };
  const faulty = (row: number, column: number) => faults.some((one) => one.row === row && one.column === column);
  return (
    <table className="strap-grid" aria-label={words.tables[table]}>
      <thead>
        <tr>
          {heads.map((head, column) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: heads may repeat while they are typed
            <th key={column}>{head}</th>
          ))}
          <th />
        </tr>
      </thead>
      <tbody ref={body}>
        {shown.map((cells, row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is nothing but its place
          <tr key={row}>
            {heads.map((head, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a cell is nothing but its place
              <td key={column}>
                <input
                  aria-label={words.cell(table, row + 1, head)}
                  aria-invalid={faulty(row, column) || undefined}
                  value={cells[column] ?? ''}
                  maxLength={200}
                  spellCheck={false}
                  onChange={(event) => type(row, column, event.currentTarget.value)}
                  onPaste={(event) => paste(event, row, column)}
                  onKeyDown={(event) => step(event, row, column)}
                />
              </td>
            ))}
            <td className="of-row">
              {row < rows.length && (
                <IconButton
                  icon={X}
                  small
                  label={words.removeRow(row + 1)}
                  onPress={() => put(rows.filter((_, index) => index !== row).map((one) => [...one]))}
                />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
