import { Search } from 'lucide-react';
import { Group, Input, SearchField, ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { tableWords as words } from '../../shared-types/words/window/table.ts';
import { Icon } from '../widgets/Buttons.tsx';
import { FILTERS, type Filter, type TableView } from './table-rows.ts';

type Props = {
  view: TableView;
  shown: number;
  all: number;
  hasFigures: boolean;
  change: (fields: Partial<TableView>) => void;
};

/** Filter by text and by what is to be done. Before there are figures every part is shown. */
export function TableTools({ view, shown, all, hasFigures, change }: Props) {
  return (
    <div className="table-tools">
      {hasFigures ? (
        <ToggleButtonGroup
          className="chips"
          aria-label={words.show}
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[view.filter]}
          onSelectionChange={([filter]) => filter && change({ filter: filter as Filter })}
        >
          {FILTERS.map((filter) => (
            <ToggleButton key={filter} id={filter} className="chip">
              {words.chips[filter]}
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
      ) : (
        <span className="soft">{words.notFigured}</span>
      )}
      <span className="space" />
      <span className="soft">{words.shown(shown, all)}</span>
      <SearchField aria-label={words.filter} value={view.text} onChange={(text) => change({ text })}>
        <Group className="entry filter">
          <Icon of={Search} size={16} />
          <Input placeholder={words.filterHint} />
        </Group>
      </SearchField>
    </div>
  );
}
