import { useMemo } from 'react';
import { ListBox, ListBoxItem, ListLayout, Virtualizer } from 'react-aria-components';
import { mirrorWords as words } from '../../shared-types/words/window/mirror.ts';
import type { App } from '../state/app.ts';
import { type PartRow, partRows } from '../state/part-rows.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { shownState } from '../table/shown-state.ts';
import { byDesignator } from '../table/table-rows.ts';
import './mirror.css';

/** The canvas as a list for assistive technology: the parts of the shown side, selectable like on the drawing. */
export function PartsMirror() {
  const app = useApp();
  const document = useDocument();
  const { side, selected, assessment } = useAppState((state) => ({
    side: state.view.side,
    selected: state.selection.parts,
    assessment: state.evaluation.assessment,
  }));
  const rows = partRows(document, assessment);
  const items = useMemo(
    () =>
      rows
        .filter((row) => row.part.side === side)
        .toSorted((a, b) => byDesignator(a.part.refdes, b.part.refdes))
        .map((row) => ({ id: row.part.refdes, row })),
    [rows, side],
  );
  return (
    <div className="parts-mirror">
      <Virtualizer layout={ListLayout} layoutOptions={{ rowHeight: 24 }}>
        <ListBox
          aria-label={words.title(side)}
          selectionMode="multiple"
          items={items}
          selectedKeys={selected}
          onSelectionChange={(keys) => selectAll(app, keys === 'all' ? items.map((item) => item.id) : [...keys])}
        >
          {({ id, row }) => <MirrorItem id={id} row={row} />}
        </ListBox>
      </Virtualizer>
    </div>
  );
}

function selectAll(app: App, keys: readonly (string | number)[]): void {
  app.bench.select(
    keys.map((key) => ({ kind: 'part', refdes: String(key) })),
    'replace',
  );
}

function MirrorItem({ id, row }: { id: string; row: PartRow }) {
  const { measures } = useUnits();
  const { part, exposure, tags } = row;
  const text = words.part({
    refdes: part.refdes,
    classId: part.class,
    place: words.place(measures.length(part.x), measures.length(part.y)),
    peak: exposure ? measures.temperature(exposure.body.maxC) : null,
    state: shownState(row),
    tags: tags.map((tag) => tag.kind),
  });
  return (
    <ListBoxItem id={id} textValue={text}>
      {text}
    </ListBoxItem>
  );
}
