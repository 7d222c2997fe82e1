import { useState } from 'react';
import { classById, PART_CLASSES } from '../../../../shared-types/library/classes.ts';
import { draftOf } from '../../../../shared-types/rules/new-part.ts';
import { partEditWords, placeWords as words } from '../../../../shared-types/words/window/parts.ts';
import { addParts, takenRefdes } from '../../../editing/add-parts.ts';
import { chosen, nextRefdes, type Placing, pin1Choices, placedPart } from '../../../editing/placing.ts';
import { PACKAGE_BOX_ID } from '../../../state/element-ids.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import { ActionButton } from '../../../widgets/ActionButton.tsx';
import { Button } from '../../../widgets/Buttons.tsx';
import { Check } from '../../../widgets/Check.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { Section } from '../../../widgets/Section.tsx';
import { TextEntry } from '../../../widgets/TextEntry.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';
import { PackageBox } from './PackageBox.tsx';
import './place.css';

/** Choose a package, say the first designator, and place one after the other. */
export function PlaceSection() {
  const app = useApp();
  const placing = useAppState((state) => state.view.placing);
  const tool = useAppState((state) => state.view.tool);
  const document = useDocument();
  const refdes = nextRefdes(placing, document);
  return (
    <Section
      title={words.title}
      action={
        <span className="tool-row" role="toolbar" aria-label={words.tools}>
          <ActionButton id="tool-body" small />
          <ActionButton id="tool-pin1" small />
          <ActionButton id="tool-cover" small />
        </span>
      }
    >
      <PackageBox
        id={PACKAGE_BOX_ID}
        label={words.package}
        chosen={placing.offer?.name ?? ''}
        refdes={placing.refdes}
        onChoose={(offer, typedRefdes, by) => {
          app.bench.setPlacing(chosen(app.store.get().view.placing, offer, typedRefdes, document.board.parts));
          app.setView({ tool: 'place' });
          // After Enter the keys go to the drawing; Tab goes on to the designator.
          if (by === 'enter') app.canvas.current?.focus();
        }}
      />
      {placing.offer && (
        <>
          {tool === 'place' && <p className="place-hint">{words.clickHint}</p>}
          {tool === 'place' && isTall(placing) && <p className="place-hint">{words.tallHint}</p>}
          <RefdesField refdes={refdes} />
          <PlacingFields placing={placing} refdes={refdes} />
          <PlaceByNumbers placing={placing} refdes={refdes} />
        </>
      )}
      <SnapFields placing={placing} />
    </Section>
  );
}

/** From this height on the foot of a body and its top lie apart in a photo, mm. */
const TALL_MM = 4;
const isTall = ({ heightMm, offer }: Placing): boolean => (heightMm ?? offer?.heightMm ?? 0) >= TALL_MM;

function RefdesField({ refdes }: { refdes: string }) {
  const app = useApp();
  const document = useDocument();
  const [refused, setRefused] = useState<string | null>(null);
  const set = (typed: string) => {
    const wanted = typed.trim();
    if (wanted === '' || wanted === refdes) return;
    setRefused(takenRefdes(document).has(wanted) ? wanted : null);
    app.bench.setPlacing({ refdes: wanted });
  };
  return (
    <>
      <TextEntry label={words.refdes} value={refdes} longest={64} needed mono onDone={set} />
      {refused && takenRefdes(document).has(refused) && (
        <p className="field-fault" role="alert">
          {words.taken(refused, refdes)}
        </p>
      )}
    </>
  );
}

const classes = PART_CLASSES.map((partClass) => ({ id: partClass.id, label: partClass.name }));

function PlacingFields({ placing, refdes }: { placing: Placing; refdes: string }) {
  const app = useApp();
  const { measures } = useUnits();
  const set = (fields: Partial<Placing>) => app.bench.setPlacing(fields);
  if (!placing.offer) return null;
  const draft = draftOf(placing.offer, refdes, placing.value);
  const classId = placing.classId ?? draft.class;
  const own = placing.heightMm === undefined ? draft.package.heightMm : placing.heightMm;
  const from = own === null ? 'class' : placing.heightMm === undefined ? 'package' : 'typed';
  return (
    <>
      <NumberEntry
        label={words.turn}
        value={placing.turn}
        unit="°"
        decimals={1}
        onChange={(turn) => turn !== null && set({ turn })}
      />
      <Pin1Field placing={placing} />
      <div className="flag-grid">
        <Check on={!placing.fitted} onChange={(empty) => set({ fitted: !empty })}>
          {words.empty}
        </Check>
        <Check on={placing.coated} onChange={(coated) => set({ coated })}>
          {words.coated}
        </Check>
      </div>
      <TextEntry
        label={words.value}
        value={placing.value}
        longest={200}
        onType={(value) => set({ value })}
        onDone={(value) => set({ value })}
      />
      <Choice
        label={words.class}
        stacked
        value={classId}
        items={classes}
        onChange={(id) => set({ classId: id === draft.class ? null : id })}
      />
      <LengthEntry
        label={`${words.height}, ${words.heightFrom[from]}`}
        value={own}
        least={0.01}
        most={200}
        emptyIs={measures.length(classById(classId).defaultHeightMm)}
        onChange={(heightMm) => set({ heightMm })}
      />
    </>
  );
}

const UNMARKED = 'none';

/** The same as a pull from the middle: ends or corners of the part as it lies unturned. */
function Pin1Field({ placing }: { placing: Placing }) {
  const app = useApp();
  const places = pin1Choices(placing);
  if (places.length === 0) return null;
  const names = places.length > 2 ? words.pin1Corners : words.pin1Ends;
  const { pin1 } = placing;
  const away = pin1 ? places.map((place) => Math.hypot(place.x - pin1.x, place.y - pin1.y)) : [];
  const now = away.indexOf(Math.min(...away));
  return (
    <Choice
      label={words.pin1}
      value={now < 0 ? UNMARKED : String(now)}
      items={[
        { id: UNMARKED, label: words.pin1None },
        ...places.map((_, index) => ({ id: String(index), label: names[index] })),
      ]}
      onChange={(id) => app.bench.setPlacing({ pin1: places[Number(id)] ?? null })}
    />
  );
}

/** The same as a click, in figures. */
function PlaceByNumbers({ placing, refdes }: { placing: Placing; refdes: string }) {
  const app = useApp();
  const side = useAppState((state) => state.view.side);
  const [at, setAt] = useState({ x: 0, y: 0 });
  const place = () => {
    const part = placedPart(placing, refdes, at, side);
    if (part) app.bench.apply(partEditWords.place(refdes), (document) => addParts(document, [part]));
  };
  return (
    <div className="place-at">
      <LengthEntry label={words.x} value={at.x} onChange={(x) => x !== null && setAt({ ...at, x })} />
      <LengthEntry label={words.y} value={at.y} onChange={(y) => y !== null && setAt({ ...at, y })} />
      <Button small onPress={place}>
        {words.placeAt(refdes)}
      </Button>
    </div>
  );
}

function SnapFields({ placing }: { placing: Placing }) {
  const app = useApp();
  return (
    <div className="snap-fields">
      <LengthEntry
        label={words.grid}
        value={placing.gridMm > 0 ? placing.gridMm : null}
        least={0.01}
        most={50}
        emptyIs={words.noGrid}
        onChange={(gridMm) => app.bench.setPlacing({ gridMm: gridMm ?? 0 })}
      />
      <Check on={placing.rows} onChange={(rows) => app.bench.setPlacing({ rows })}>
        {words.rows}
      </Check>
    </div>
  );
}
