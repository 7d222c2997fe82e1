import { useState } from 'react';
import type { Cover } from '../../shared-types/board.ts';
import { boardWords } from '../../shared-types/words/window/board.ts';
import { partEditWords, placeWords, coverWords as words } from '../../shared-types/words/window/parts.ts';
import { coverById, liftCover, liftedCover, removeCover, setCover } from '../editing/covers.ts';
import { useApp, useDocument } from '../state/use-app.ts';
import { Button } from '../widgets/Buttons.tsx';
import { Check } from '../widgets/Check.tsx';
import { Choice } from '../widgets/Choice.tsx';
import { NumberEntry } from '../widgets/NumberEntry.tsx';
import { Section } from '../widgets/Section.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';

const choices = <T extends string>(labels: Record<T, string>) =>
  (Object.keys(labels) as T[]).map((id) => ({ id, label: labels[id] }));
const kinds = choices(boardWords.coverKinds);
const materials = choices(words.materials);
const fixings = choices(words.fixings);

/** A can, a frame or a stiffener in figures. */
export function CoverFields({ cover }: { cover: Cover }) {
  const app = useApp();
  const document = useDocument();
  const set = (fields: Partial<Cover>) =>
    app.bench.apply(partEditWords.cover(cover.id), (before) => setCover(before, cover.id, fields));
  const length = (label: string, field: 'x' | 'y' | 'lengthMm' | 'widthMm' | 'heightMm' | 'sheetMm', most?: number) => (
    <LengthEntry
      label={label}
      value={cover[field]}
      least={most === undefined ? undefined : 0.01}
      most={most}
      onChange={(mm) => mm !== null && set({ [field]: mm })}
    />
  );
  return (
    <Section
      title={words.title}
      action={
        <Button
          look="link"
          small
          onPress={() => app.bench.apply(partEditWords.removeCover(cover.id), (d) => removeCover(d, cover.id))}
        >
          {words.remove}
        </Button>
      }
    >
      <NameField cover={cover} />
      <Choice label={words.kind} value={cover.kind} items={kinds} onChange={(kind) => set({ kind })} />
      {length(words.length, 'lengthMm', 2000)}
      {length(words.width, 'widthMm', 2000)}
      {length(cover.kind === 'stiffener' ? words.thickness : words.height, 'heightMm', 100)}
      {cover.kind !== 'stiffener' && length(words.sheet, 'sheetMm', 20)}
      <Choice
        label={words.material}
        value={cover.material}
        items={materials}
        onChange={(material) => set({ material })}
      />
      <Choice label={words.fixing} value={cover.fixing} items={fixings} onChange={(fixing) => set({ fixing })} />
      {length(placeWords.x, 'x')}
      {length(placeWords.y, 'y')}
      <NumberEntry
        label={placeWords.turn}
        value={cover.turn}
        unit="°"
        onChange={(turn) => turn !== null && set({ turn: ((turn % 360) + 360) % 360 })}
      />
      <Check
        on={liftedCover(document, cover.id)}
        onChange={(on) =>
          app.bench.apply(partEditWords.liftCover(cover.id), (before) => liftCover(before, cover.id, on))
        }
      >
        {words.lift}
      </Check>
    </Section>
  );
}

function NameField({ cover }: { cover: Cover }) {
  const app = useApp();
  const document = useDocument();
  const [refused, setRefused] = useState<string | null>(null);
  const rename = (typed: string) => {
    const id = typed.trim();
    if (id === cover.id) return;
    const taken = coverById(document, id) !== undefined || document.board.parts.some((part) => part.refdes === id);
    setRefused(taken ? id : null);
    if (taken || id === '') return;
    app.bench.apply(partEditWords.cover(cover.id), (before) => setCover(before, cover.id, { id }));
    app.bench.select([{ kind: 'cover', id }], 'replace');
  };
  return (
    <>
      <TextEntry label={words.name} value={cover.id} longest={64} needed mono onDone={rename} />
      {refused && (
        <p className="field-fault" role="alert">
          {words.taken(refused)}
        </p>
      )}
    </>
  );
}
