import type { Part } from '../../shared-types/board.ts';
import { ALLOYS } from '../../shared-types/library/alloys.ts';
import { classById, PART_CLASSES } from '../../shared-types/library/classes.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { confirmClass, type PartFields, setClass, setHeight, setMass, setPartFields } from '../editing/parts.ts';
import { useApp, useTypedEdit } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { Button } from '../widgets/Buttons.tsx';
import { Check } from '../widgets/Check.tsx';
import { Choice } from '../widgets/Choice.tsx';
import { NumberEntry } from '../widgets/NumberEntry.tsx';
import { Fold } from '../widgets/Section.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';
import { common } from './common.ts';
import { OwnLimitFields } from './OwnLimitFields.tsx';

const classes = PART_CLASSES.map((partClass) => ({ id: partClass.id, label: partClass.name }));
const alloys = [
  { id: 'unknown', label: words.alloyUnknown },
  ...ALLOYS.map((alloy) => ({ id: alloy.id, label: alloy.name })),
];
const flags = ['fitted', 'edgeBonded', 'underfilled', 'coated'] as const;

type Props = { parts: readonly Part[] };

/** Data of the selected parts; of several the common values, and a change goes to all. */
export function PartDataSection({ parts, open }: Props & { open?: boolean }) {
  const refdes = parts.map((part) => part.refdes);
  const edit = useEditParts(refdes);
  const className = common(parts, (part) => classById(part.class).name) ?? words.several;
  return (
    <Fold title={words.data} summary={className} open={open}>
      <ClassField parts={parts} edit={edit} />
      <ValueField parts={parts} />
      <BodyFields parts={parts} edit={edit} />
      <Choice
        label={words.alloy}
        value={common(parts, (part) => part.alloy)}
        placeholder={words.several}
        items={alloys}
        onChange={(alloy) => edit((document) => setPartFields(document, refdes, { alloy }))}
      />
      <div className="flag-grid">
        {flags.map((flag) => (
          <Check
            key={flag}
            on={common(parts, (part) => part[flag])}
            onChange={(on) => edit((document) => setPartFields(document, refdes, { [flag]: on } as PartFields))}
          >
            {words[flag]}
          </Check>
        ))}
      </div>
      {parts.length === 1 && <OwnLimitFields part={parts[0]} />}
    </Fold>
  );
}

type Editor = (change: (document: TicketDocument) => TicketDocument) => void;

function useEditParts(refdes: readonly string[]): Editor {
  const app = useApp();
  return (change) => app.bench.apply(editLabels.part(refdes), change);
}

function ClassField({ parts, edit }: Props & { edit: Editor }) {
  const app = useApp();
  const refdes = parts.map((part) => part.refdes);
  const guessed = parts.filter((part) => part.classGuessed).map((part) => part.refdes);
  return (
    <>
      <Choice
        label={words.class}
        stacked
        value={common(parts, (part) => part.class)}
        placeholder={words.several}
        items={classes}
        onChange={(id) => edit((document) => setClass(document, refdes, id))}
      />
      {guessed.length > 0 && (
        <div className="class-line">
          <span className="guess-mark">{words.guessed}</span>
          <Button
            look="link"
            small
            onPress={() => app.bench.apply(editLabels.classes(guessed), (document) => confirmClass(document, guessed))}
          >
            {words.confirm}
          </Button>
        </div>
      )}
    </>
  );
}

function ValueField({ parts }: Props) {
  const refdes = parts.map((part) => part.refdes);
  const typed = useTypedEdit(
    editLabels.part(refdes),
    (value) => (document) => setPartFields(document, refdes, { value }),
  );
  return (
    <TextEntry
      label={words.value}
      value={common(parts, (part) => part.value) ?? ''}
      placeholder={common(parts, (part) => part.value) === null ? words.several : undefined}
      longest={200}
      {...typed}
    />
  );
}

function BodyFields({ parts, edit }: Props & { edit: Editor }) {
  const { measures } = useUnits();
  const refdes = parts.map((part) => part.refdes);
  const classHeight = common(parts, (part) => classById(part.class).defaultHeightMm);
  const [first] = parts;
  return (
    <>
      {parts.length === 1 && (
        <div className="field">
          <span className="label">{words.body2}</span>
          <span className="mono">
            {measures.length(first.package.lengthMm)} × {measures.length(first.package.widthMm)}
          </span>
        </div>
      )}
      <LengthEntry
        label={words.height}
        value={common(parts, (part) => part.package.heightMm)}
        least={0.01}
        most={200}
        emptyIs={classHeight === null ? words.several : words.heightOfClass(measures.length(classHeight))}
        onChange={(height) => edit((document) => setHeight(document, refdes, height))}
      />
      <NumberEntry
        label={words.mass}
        value={common(parts, (part) => part.massG ?? null)}
        unit="g"
        least={0.0001}
        most={10000}
        decimals={3}
        emptyIs={words.massUnknown}
        onChange={(mass) => edit((document) => setMass(document, refdes, mass))}
      />
    </>
  );
}
