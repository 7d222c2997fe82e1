// biome-ignore-all lint/a11y/useSemanticElements: a virtualised grid cannot be a table element
import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useMemo, useRef, useState } from 'react';
import { tableWords as words } from '../../shared-types/words/window/table.ts';
import { ORDINARY_RANK, type PartRow, partRows } from '../state/part-rows.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { Button } from '../widgets/Buttons.tsx';
import { TableHead } from './TableHead.tsx';
import { TableRow } from './TableRow.tsx';
import { TableTools } from './TableTools.tsx';
import { shownRows, startingTable, type TableView } from './table-rows.ts';
import { useTableKeys } from './use-table-keys.ts';

const ROW_HEIGHT = 28;

/** Every part with what it gets and what is to be done: sorted, filtered, and in step with the selection on the board. */
export function PartsTable() {
  const document = useDocument();
  const assessment = useAppState((state) => state.evaluation.assessment);
  const [view, setView] = useState<TableView>(startingTable);
  const rows = partRows(document, assessment);
  const usable = useMemo(() => (assessment ? view : { ...view, filter: 'all' as const }), [assessment, view]);
  const shown = useMemo(() => shownRows(rows, usable), [rows, usable]);
  const change = (fields: Partial<TableView>) => setView((before) => ({ ...before, ...fields }));
  return (
    <div className="table">
      <TableTools view={view} shown={shown.length} all={rows.length} hasFigures={assessment !== null} change={change} />
      <Rows shown={shown} view={view} change={change} />
      <Ordinary rows={rows} view={usable} onShow={() => change({ filter: 'all' })} />
    </div>
  );
}

type RowsProps = {
  shown: readonly PartRow[];
  view: TableView;
  change: (fields: Partial<TableView>) => void;
};

function Rows({ shown, view, change }: RowsProps) {
  const app = useApp();
  const scroll = useRef<HTMLDivElement>(null);
  const selected = useAppState((state) => state.selection.parts);
  const keys = useTableKeys(app, shown);
  const virtual = useVirtualizer({
    count: shown.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 12,
  });
  const only = selected.size === 1 ? [...selected][0] : null;
  const at = only ? shown.findIndex((row) => row.part.refdes === only) : -1;
  useEffect(() => {
    if (at >= 0) virtual.scrollToIndex(at, { align: 'auto' });
  }, [at, virtual]);
  return (
    <div
      ref={scroll}
      className="rows-area scrolls"
      role="grid"
      aria-label={words.title}
      aria-multiselectable="true"
      aria-rowcount={shown.length + 1}
      tabIndex={0}
      aria-activedescendant={keys.current ? `row-${keys.current}` : undefined}
      onKeyDown={keys.onKeyDown}
    >
      <TableHead sorting={view.sorting} onSort={(sorting) => change({ sorting })} />
      <div className="rows-body" style={{ height: virtual.getTotalSize() }}>
        {virtual.getVirtualItems().map((item) => (
          <TableRow
            key={shown[item.index].part.refdes}
            row={shown[item.index]}
            index={item.index}
            top={item.start}
            selected={selected.has(shown[item.index].part.refdes)}
            current={keys.current === shown[item.index].part.refdes}
            onPress={keys.press}
          />
        ))}
      </div>
      {shown.length === 0 && <p className="table-empty">{view.text ? words.noMatch : words.noExceptions}</p>}
    </div>
  );
}

/** The parts that are left where they are, in one line instead of a row each. */
function Ordinary({ rows, view, onShow }: { rows: readonly PartRow[]; view: TableView; onShow: () => void }) {
  if (view.filter !== 'exceptions' || view.text !== '') return null;
  const ordinary = rows.filter((row) => row.rank >= ORDINARY_RANK && row.exposure);
  if (ordinary.length === 0) return null;
  const reflow = ordinary.filter((row) => row.exposure?.reflow !== 'none').length;
  return (
    <p className="ordinary">
      {words.ordinary(ordinary.length, reflow)}
      <Button look="link" small onPress={onShow}>
        {words.showOrdinary}
      </Button>
    </p>
  );
}
