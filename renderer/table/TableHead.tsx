// biome-ignore-all lint/a11y/useSemanticElements: a virtualised grid cannot be a table element
import { ArrowDown, ArrowUp } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import { tableWords as words } from '../../shared-types/words/window/table.ts';
import { Icon } from '../widgets/Buttons.tsx';
import { COLUMNS, type Column, type Sorting } from './table-rows.ts';

/** Column heads: press to sort, again to turn it round, a third time for exceptions first. */
export function TableHead({ sorting, onSort }: { sorting: Sorting; onSort: (sorting: Sorting) => void }) {
  return (
    <div className="table-row head" role="row" tabIndex={-1} aria-rowindex={1}>
      {COLUMNS.map((column) => (
        <Head key={column} column={column} sorting={sorting} onSort={onSort} />
      ))}
    </div>
  );
}

type HeadProps = { column: Column; sorting: Sorting; onSort: (sorting: Sorting) => void };

function Head({ column, sorting, onSort }: HeadProps) {
  const sorted = sorting.column === column;
  const next = (): Sorting => {
    if (!sorted) return { column, down: false };
    return sorting.down ? { column: null, down: false } : { column, down: true };
  };
  return (
    <div
      className={`cell ${column}`}
      role="columnheader"
      aria-sort={sorted ? (sorting.down ? 'descending' : 'ascending') : 'none'}
      tabIndex={-1}
    >
      <BareButton className="head-button" excludeFromTabOrder onPress={() => onSort(next())}>
        {words.columns[column]}
        {sorted && <Icon of={sorting.down ? ArrowDown : ArrowUp} size={12} />}
      </BareButton>
    </div>
  );
}
