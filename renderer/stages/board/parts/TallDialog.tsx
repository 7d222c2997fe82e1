import { useState } from 'react';
import { Input, Label } from 'react-aria-components';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import { partEditWords, arrangeWords as words } from '../../../../shared-types/words/window/parts.ts';
import { setHeight } from '../../../editing/parts.ts';
import { common } from '../../../inspector/common.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';

const HEIGHT_ID = 'tall-height';

/** Asks the height of the selected parts, and nothing else: a key, a figure, Enter. */
export function TallDialog({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const { lengthSign, readMm, showMm } = useUnits();
  const selected = useAppState((state) => state.selection.parts);
  const parts = useDocument().board.parts.filter((part) => selected.has(part.refdes));
  const refdes = parts.map((part) => part.refdes);
  const now = common(parts, (part) => part.package.heightMm);
  const [typed, setTyped] = useState(now === null ? '' : String(Math.round(showMm(now) * 100) / 100));
  const heightMm = readMm(Number(typed.trim().replace(',', '.')));
  const fits = typed.trim() !== '' && heightMm > 0 && heightMm <= 200;
  const set = () => {
    if (!fits) return;
    onClose();
    app.bench.apply(partEditWords.height(refdes), (document) => setHeight(document, refdes, heightMm));
    app.canvas.current?.focus();
  };
  return (
    <Dialogue
      title={words.heightTitle(refdes)}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={!fits} onPress={set}>
            {words.apply}
          </Button>
        </>
      }
    >
      <div className="field">
        <Label className="label" htmlFor={HEIGHT_ID}>
          {words.height}
        </Label>
        <span className="entry number">
          <Input
            id={HEIGHT_ID}
            autoFocus
            inputMode="decimal"
            value={typed}
            onFocus={(event) => event.currentTarget.select()}
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => event.key === 'Enter' && set()}
          />
          <span className="unit">{lengthSign}</span>
        </span>
      </div>
    </Dialogue>
  );
}
