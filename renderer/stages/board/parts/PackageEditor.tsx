import { useState } from 'react';
import { PART_CLASSES } from '../../../../shared-types/library/classes.ts';
import type { OwnPackage } from '../../../../shared-types/own-package.ts';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import { placeWords, ownPackageWords as words } from '../../../../shared-types/words/window/parts.ts';
import { useApp } from '../../../state/use-app.ts';
import { Button, Segmented } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { TextEntry } from '../../../widgets/TextEntry.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';
import { type Home, keepPackage, type PackageDraft } from './keep-package.ts';

const homes = (['board', 'user'] as const).map((id) => ({ id, label: words.homeChoice[id] }));
const shapes = (['rectangle', 'round'] as const).map((id) => ({ id, label: words.shapes[id] }));
const classes = PART_CLASSES.map((partClass) => ({ id: partClass.id, label: partClass.name }));

/** Name, size, class and home of an own package. */
export function PackageEditor({ draft, onClose }: { draft: PackageDraft; onClose: () => void }) {
  const app = useApp();
  const [own, setOwn] = useState(draft.own);
  const [home, setHome] = useState<Home>(draft.home);
  const set = (fields: Partial<OwnPackage>) => setOwn((before) => ({ ...before, ...fields }));
  const round = own.shape === 'round';
  const keep = () => {
    onClose();
    keepPackage(app, draft, home, { ...own, name: own.name.trim(), widthMm: round ? own.lengthMm : own.widthMm });
  };
  return (
    <Dialogue
      title={draft.former === null ? words.add : words.edit(draft.former)}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={own.name.trim() === ''} onPress={keep}>
            {words.keep}
          </Button>
        </>
      }
    >
      <TextEntry
        label={words.name}
        value={own.name}
        longest={200}
        autoFocus
        onType={(name) => set({ name })}
        onDone={(name) => set({ name })}
      />
      <div className="field">
        <span className="label">{words.home}</span>
        <Segmented label={words.home} value={home} choices={homes} onChange={setHome} />
      </div>
      <div className="field">
        <span className="label">{words.shape}</span>
        <Segmented label={words.shape} value={own.shape} choices={shapes} onChange={(shape) => set({ shape })} />
      </div>
      <LengthEntry
        label={round ? words.diameter : words.length}
        value={own.lengthMm}
        least={0.1}
        most={2000}
        onChange={(lengthMm) => lengthMm !== null && set({ lengthMm })}
      />
      {!round && (
        <LengthEntry
          label={words.width}
          value={own.widthMm}
          least={0.1}
          most={2000}
          onChange={(widthMm) => widthMm !== null && set({ widthMm })}
        />
      )}
      <LengthEntry
        label={placeWords.height}
        value={own.heightMm}
        least={0.01}
        most={200}
        emptyIs={placeWords.heightFrom.class}
        onChange={(heightMm) => set({ heightMm })}
      />
      <NumberEntry
        label={words.pins}
        value={own.pinCount ?? null}
        least={1}
        most={10000}
        decimals={0}
        emptyIs={words.pinsUnknown}
        onChange={(pins) =>
          setOwn(({ pinCount: _before, ...rest }) => (pins === null ? rest : { ...rest, pinCount: pins }))
        }
      />
      <Choice
        label={placeWords.class}
        stacked
        value={own.class}
        items={classes}
        onChange={(id) => set({ class: id })}
      />
    </Dialogue>
  );
}
