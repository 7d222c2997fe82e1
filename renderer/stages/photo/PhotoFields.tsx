import type { BoardPhoto, PhotoFitKind } from '../../../shared-types/photo.ts';
import { photoEdits as edits, photoWords as words } from '../../../shared-types/words/window/photo.ts';
import { setPhoto } from '../../editing/photos.ts';
import { useApp } from '../../state/use-app.ts';
import { Segmented } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { Section } from '../../widgets/Section.tsx';

const KINDS = ['automatic', 'similarity', 'affine', 'projective'] as const;

/** What is said of one photo besides its pairs. */
export function PhotoFields({ photo }: { photo: BoardPhoto }) {
  const app = useApp();
  const { id } = photo;
  const turnTo = (side: BoardPhoto['side']) => {
    app.bench.apply(edits.side, (document) => setPhoto(document, id, { side }));
    app.setView({ side, photoId: id });
  };
  const takeKind = (kind: (typeof KINDS)[number]) => {
    const fit: PhotoFitKind | null = kind === 'automatic' ? null : kind;
    app.bench.apply(edits.fit, (document) => setPhoto(document, id, { fit }));
  };
  return (
    <Section title={words.looks}>
      <OpacityField photo={photo} />
      <div className="field">
        <span className="field-label">{words.side}</span>
        <Segmented
          label={words.side}
          value={photo.side}
          choices={[
            { id: 'top', label: words.sides.top },
            { id: 'bottom', label: words.sides.bottom },
          ]}
          onChange={turnTo}
        />
      </div>
      <Choice
        label={words.kind}
        value={photo.fit ?? 'automatic'}
        items={KINDS.map((kind) => ({ id: kind, label: words.kinds[kind] }))}
        onChange={takeKind}
      />
      <p className="photo-hint">{words.blink}</p>
    </Section>
  );
}

/** Dragged as one step of undo, typed as a figure beside. */
function OpacityField({ photo: { id, opacity } }: { photo: BoardPhoto }) {
  const { bench, store } = useApp();
  const drag = (percent: number) => {
    if (store.get().gesture?.label !== edits.opacity) bench.begin(edits.opacity);
    bench.preview((document) => setPhoto(document, id, { opacity: percent / 100 }));
  };
  const drop = () => {
    if (store.get().gesture?.label === edits.opacity) bench.commit();
  };
  const percent = Math.round(opacity * 100);
  return (
    <div className="photo-opacity">
      <NumberEntry
        label={words.opacity}
        value={percent}
        unit="%"
        least={0}
        most={100}
        decimals={0}
        onChange={(value) =>
          bench.apply(edits.opacity, (document) => setPhoto(document, id, { opacity: (value ?? 0) / 100 }))
        }
      />
      <input
        type="range"
        min={0}
        max={100}
        value={percent}
        aria-label={words.opacity}
        onChange={(event) => drag(Number(event.target.value))}
        onPointerUp={drop}
        onKeyUp={drop}
        onBlur={drop}
      />
    </div>
  );
}
