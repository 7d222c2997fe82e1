import { useState } from 'react';
import { arrayShifts } from '../../../../shared-types/rules/part-rings.ts';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import { partEditWords, arrangeWords as words } from '../../../../shared-types/words/window/parts.ts';
import { addParts, copiesOf } from '../../../editing/add-parts.ts';
import { spanOf } from '../../../editing/arrange.ts';
import { partsOf } from '../../../editing/move-parts.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';

/** Copies of the selection in columns and rows; one row or one column is a row. */
export function ArrayDialog({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const document = useDocument();
  const refdes = useAppState((state) => state.selection.parts);
  const parts = partsOf(document, [...refdes]);
  const reach = (axis: 'x' | 'y') => {
    const spans = parts.map((part) => spanOf(part, axis));
    const room = Math.max(...spans.map((span) => span.most)) - Math.min(...spans.map((span) => span.least));
    return Math.round((room + 0.5) * 10) / 10;
  };
  const [draft, setDraft] = useState({ columns: 4, rows: 1, pitchX: reach('x'), pitchY: reach('y') });
  const change = (fields: Partial<typeof draft>) => setDraft((before) => ({ ...before, ...fields }));
  const shifts = arrayShifts(draft.columns, draft.rows, draft.pitchX, draft.pitchY);
  const place = () => {
    onClose();
    const copies = copiesOf(
      document,
      [...refdes],
      shifts.map((by) => ({ by })),
    );
    app.bench.apply(partEditWords.array, (before) => addParts(before, copies.parts));
    app.bench.select(
      copies.refdes.map((one) => ({ kind: 'part', refdes: one })),
      'add',
    );
  };
  const count = (label: string, field: 'columns' | 'rows') => (
    <NumberEntry
      label={label}
      value={draft[field]}
      least={1}
      most={200}
      decimals={0}
      autoFocus={field === 'columns'}
      onChange={(value) => value !== null && change({ [field]: value })}
    />
  );
  return (
    <Dialogue
      title={words.arrayTitle([...refdes])}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={shifts.length === 0} onPress={place}>
            {words.makes(shifts.length * parts.length)}
          </Button>
        </>
      }
    >
      <p className="place-hint">{words.arrayText}</p>
      {count(words.columns, 'columns')}
      <LengthEntry label={words.pitchX} value={draft.pitchX} onChange={(pitchX) => pitchX && change({ pitchX })} />
      {count(words.rowCount, 'rows')}
      <LengthEntry label={words.pitchY} value={draft.pitchY} onChange={(pitchY) => pitchY && change({ pitchY })} />
    </Dialogue>
  );
}
