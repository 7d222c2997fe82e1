import { useState } from 'react';
import type { Side } from '../../../../shared-types/geometry.ts';
import { type Ring, ringPlaces } from '../../../../shared-types/rules/part-rings.ts';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import { partEditWords, placeWords, arrangeWords as words } from '../../../../shared-types/words/window/parts.ts';
import { addParts } from '../../../editing/add-parts.ts';
import { chosen, nextRefdes, placedParts } from '../../../editing/placing.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { Button, Segmented } from '../../../widgets/Buttons.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';
import { PackageBox } from './PackageBox.tsx';

type Draft = {
  way: 'count' | 'pitch';
  count: number;
  pitchMm: number;
  distanceMm: number;
  lies: Ring['lies'];
  on: Side | 'both';
};

const ways = (['count', 'pitch'] as const).map((id) => ({ id, label: words.ways[id] }));
const lies = (['along', 'across'] as const).map((id) => ({ id, label: words.liesWays[id] }));
const sides = (['top', 'bottom', 'both'] as const).map((id) => ({ id, label: words.sides[id] }));

/** A ring of small parts round the selected one, on its side, under it, or both. */
export function RingDialog({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const document = useDocument();
  const placing = useAppState((state) => state.view.placing);
  const [refdes] = useAppState((state) => state.selection.parts);
  const target = document.board.parts.find((part) => part.refdes === refdes);
  const [draft, setDraft] = useState<Draft>({
    way: 'count',
    count: 16,
    pitchMm: 2,
    distanceMm: 1,
    lies: 'across',
    on: target?.side ?? 'top',
  });
  const change = (fields: Partial<Draft>) => setDraft((before) => ({ ...before, ...fields }));
  if (!target) return null;
  const by = draft.way === 'count' ? { count: draft.count } : { pitchMm: draft.pitchMm };
  const { offer } = placing;
  const places = offer ? ringPlaces(target, { by, distanceMm: draft.distanceMm, lies: draft.lies }, offer) : [];
  const onSides: readonly Side[] = draft.on === 'both' ? ['top', 'bottom'] : [draft.on];
  const parts = placedParts(
    placing,
    document,
    onSides.flatMap((side) => places.map((place) => ({ ...place, side }))),
  );
  const place = () => {
    onClose();
    app.bench.apply(partEditWords.ring(target.refdes), (before) => addParts(before, parts));
    app.bench.select(
      parts.map((part) => ({ kind: 'part', refdes: part.refdes })),
      'replace',
    );
  };
  return (
    <Dialogue
      title={words.ringTitle(target.refdes)}
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={parts.length === 0} onPress={place}>
            {words.makes(parts.length)}
          </Button>
        </>
      }
    >
      <PackageBox
        label={placeWords.package}
        chosen={offer?.name ?? ''}
        refdes={placing.refdes || 'C1'}
        onChoose={(next, name) => app.bench.setPlacing(chosen(placing, next, name, document.board.parts))}
      />
      <p className="place-hint">
        {offer ? words.ringText(`${offer.name}, ${nextRefdes(placing, document)}`) : words.noPackage}
      </p>
      <RingFields draft={draft} change={change} />
    </Dialogue>
  );
}

function RingFields({ draft, change }: { draft: Draft; change: (fields: Partial<Draft>) => void }) {
  return (
    <>
      <div className="field">
        <span className="label">{words.by}</span>
        <Segmented label={words.by} value={draft.way} choices={ways} onChange={(way) => change({ way })} />
      </div>
      {draft.way === 'count' ? (
        <NumberEntry
          label={words.count}
          value={draft.count}
          least={1}
          most={500}
          decimals={0}
          onChange={(count) => count !== null && change({ count })}
        />
      ) : (
        <LengthEntry
          label={words.pitch}
          value={draft.pitchMm}
          least={0.1}
          most={100}
          onChange={(pitchMm) => pitchMm !== null && change({ pitchMm })}
        />
      )}
      <LengthEntry
        label={words.distance}
        value={draft.distanceMm}
        least={-20}
        most={100}
        onChange={(distanceMm) => distanceMm !== null && change({ distanceMm })}
      />
      <div className="field">
        <span className="label">{words.lies}</span>
        <Segmented label={words.lies} value={draft.lies} choices={lies} onChange={(way) => change({ lies: way })} />
      </div>
      <div className="field">
        <span className="label">{words.onSides}</span>
        <Segmented label={words.onSides} value={draft.on} choices={sides} onChange={(on) => change({ on })} />
      </div>
    </>
  );
}
