import { useState } from 'react';
import type { Part } from '../../shared-types/board.ts';
import type { Side } from '../../shared-types/geometry.ts';
import {
  arrangeWords,
  ownPackageWords,
  placeWords,
  partEditWords as words,
} from '../../shared-types/words/window/parts.ts';
import { refdesFault, renamePart } from '../editing/add-parts.ts';
import { boundToSide, flipParts, setPose } from '../editing/move-parts.ts';
import { ownFromPart } from '../editing/own-packages.ts';
import { setPackage } from '../editing/parts.ts';
import { PackageBox } from '../stages/board/parts/PackageBox.tsx';
import { PackageEditor } from '../stages/board/parts/PackageEditor.tsx';
import { useApp, useDocument } from '../state/use-app.ts';
import { Button } from '../widgets/Buttons.tsx';
import { Choice } from '../widgets/Choice.tsx';
import { NumberEntry } from '../widgets/NumberEntry.tsx';
import { Section } from '../widgets/Section.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';
import { common } from './common.ts';

type Props = { parts: readonly Part[] };

/** Name, package and place of the selected parts in figures; of several the common values, and a change goes to all. */
export function PoseSection({ parts }: Props) {
  const app = useApp();
  const refdes = parts.map((part) => part.refdes);
  const pose = (fields: Partial<Pick<Part, 'x' | 'y' | 'turn'>>) =>
    app.bench.apply(words.move(refdes), (document) => setPose(document, refdes, fields));
  return (
    <Section title={arrangeWords.place} action={parts.length === 1 && <KeepPackage part={parts[0]} />}>
      {parts.length === 1 && <RenameField part={parts[0]} />}
      <PackageBox
        label={placeWords.package}
        chosen={common(parts, (part) => part.package.name) ?? ''}
        placeholder={parts.length > 1 ? arrangeWords.several : undefined}
        refdes={refdes[0]}
        onChoose={(offer) => app.bench.apply(words.package(refdes), (document) => setPackage(document, refdes, offer))}
      />
      <div className="pose-grid">
        <LengthEntry
          label={placeWords.x}
          value={common(parts, (part) => part.x)}
          emptyIs={arrangeWords.several}
          onChange={(x) => x !== null && pose({ x })}
        />
        <NumberEntry
          label={placeWords.turn}
          value={common(parts, (part) => part.turn)}
          unit="°"
          emptyIs={arrangeWords.several}
          onChange={(turn) => turn !== null && pose({ turn })}
        />
        <LengthEntry
          label={placeWords.y}
          value={common(parts, (part) => part.y)}
          emptyIs={arrangeWords.several}
          onChange={(y) => y !== null && pose({ y })}
        />
        <SideField parts={parts} />
      </div>
    </Section>
  );
}

/** Makes the part's package one of the board's or the user's own. */
function KeepPackage({ part }: { part: Part }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button look="link" small onPress={() => setOpen(true)}>
        {ownPackageWords.keepFromPart}
      </Button>
      {open && (
        <PackageEditor draft={{ home: 'board', former: null, own: ownFromPart(part) }} onClose={() => setOpen(false)} />
      )}
    </>
  );
}

const sides = (['top', 'bottom'] as const).map((id) => ({ id, label: arrangeWords.sides[id] }));

function SideField({ parts }: Props) {
  const app = useApp();
  const document = useDocument();
  const set = (side: Side) => {
    const refdes = parts.filter((part) => part.side !== side).map((part) => part.refdes);
    const bound = boundToSide(document, refdes);
    if (bound.length > 0) app.bench.hint(words.boundToSide(bound));
    else app.bench.apply(words.flip(refdes), (before) => flipParts(before, refdes));
  };
  return (
    <Choice
      label={arrangeWords.side}
      value={common(parts, (part) => part.side)}
      placeholder={arrangeWords.several}
      items={sides}
      onChange={set}
    />
  );
}

function RenameField({ part }: { part: Part }) {
  const app = useApp();
  const document = useDocument();
  const [refused, setRefused] = useState<{ name: string; free: string } | null>(null);
  const rename = (typed: string) => {
    const name = typed.trim();
    if (name === part.refdes) return;
    const fault = refdesFault(document, name, part.refdes);
    setRefused(fault && { name, free: fault.free });
    if (fault) return;
    app.bench.apply(words.rename(part.refdes), (before) => renamePart(before, part.refdes, name));
    app.bench.select([{ kind: 'part', refdes: name }], 'replace');
  };
  return (
    <>
      <TextEntry label={placeWords.refdes} value={part.refdes} longest={64} needed mono onDone={rename} />
      {refused && (
        <p className="field-fault" role="alert">
          {placeWords.taken(refused.name, refused.free)}
        </p>
      )}
    </>
  );
}
