import { type KeyboardEvent, useState } from 'react';
import type { App } from '../state/app.ts';
import type { PartRow } from '../state/part-rows.ts';
import { showPart } from '../state/show-part.ts';

type Press = (refdes: string, how: { shift: boolean; control: boolean }) => void;

/** Moving through the rows by keys and pointer: arrows move, Shift extends, Ctrl adds, Enter shows the part on the board. */
export function useTableKeys(app: App, shown: readonly PartRow[]) {
  const [current, setCurrent] = useState<string | null>(null);
  const [anchor, setAnchor] = useState<string | null>(null);
  const placeOf = (refdes: string | null) => shown.findIndex((row) => row.part.refdes === refdes);

  const select = (refdes: readonly string[], mode: 'replace' | 'toggle') =>
    app.bench.select(
      refdes.map((one) => ({ kind: 'part', refdes: one })),
      mode,
    );
  const range = (refdes: string) => {
    const [from, to] = [placeOf(anchor ?? refdes), placeOf(refdes)].toSorted((a, b) => a - b);
    select(
      shown.slice(Math.max(0, from), to + 1).map((row) => row.part.refdes),
      'replace',
    );
  };
  const press: Press = (refdes, { shift, control }) => {
    setCurrent(refdes);
    if (shift) {
      range(refdes);
      return;
    }
    setAnchor(refdes);
    if (control) select([refdes], 'toggle');
    else {
      app.setView({ side: shown[placeOf(refdes)]?.part.side ?? app.store.get().view.side });
      select([refdes], 'replace');
    }
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const place = placeOf(current);
    const target = moved(event.key, place, shown.length);
    if (target !== null) {
      event.preventDefault();
      press(shown[target].part.refdes, { shift: event.shiftKey, control: false });
    } else if (event.key === 'Enter' && current && !event.ctrlKey) {
      event.preventDefault();
      showPart(app, current);
    }
  };
  return { current, press, onKeyDown };
}

const PAGE = 10;

/** The row that a key leads to; null: the key moves nothing. */
export function moved(key: string, place: number, count: number): number | null {
  if (count === 0) return null;
  const clamp = (index: number) => Math.max(0, Math.min(count - 1, index));
  if (key === 'ArrowDown') return clamp(place + 1);
  if (key === 'ArrowUp') return clamp(place < 0 ? 0 : place - 1);
  if (key === 'PageDown') return clamp(place + PAGE);
  if (key === 'PageUp') return clamp(place - PAGE);
  if (key === 'Home') return 0;
  return key === 'End' ? count - 1 : null;
}
