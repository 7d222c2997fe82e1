import { ChevronsUp, Eye, EyeOff, ImagePlus, X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import type { Side } from '../../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { photoEdits as edits, photoWords as words } from '../../../shared-types/words/window/photo.ts';
import { raisePhoto, removePhoto, setPhoto } from '../../editing/photos.ts';
import { choosePhotos } from '../../photos/add-photos.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

type Props = { photos: readonly BoardPhoto[]; side: Side; chosenId: string | null };

export function PhotoList({ photos, side, chosenId }: Props) {
  const app = useApp();
  const coming = useAppState((state) => state.photosComing);
  const add = (
    <Button small icon={ImagePlus} onPress={() => choosePhotos(app)}>
      {words.add}
    </Button>
  );
  return (
    <Section title={words.ofSide(side)} count={photos.length || undefined} action={add}>
      {photos.length === 0 && coming.length === 0 && (
        <div className="photo-none">
          <p>{words.none(side)}</p>
          <p className="soft">{words.noneHint}</p>
        </div>
      )}
      <ul className="rows">
        {[...photos].reverse().map((photo, index) => (
          <PhotoRow key={photo.id} photo={photo} chosen={photo.id === chosenId} isTop={index === 0} />
        ))}
      </ul>
      {coming.map((name) => (
        <p key={name} className="photo-coming soft" role="status">
          {words.preparing(name)}
        </p>
      ))}
    </Section>
  );
}

function PhotoRow({ photo, chosen, isTop }: { photo: BoardPhoto; chosen: boolean; isTop: boolean }) {
  const app = useApp();
  const picture = useAppState((state) => state.pictures.get(photo.working.sha256));
  const { id, name, shown } = photo;
  const state = picture === 'missing' ? words.missing : shown && !picture ? words.loading : null;
  return (
    <li className="row" data-selected={chosen ? '' : undefined}>
      <IconButton
        icon={shown ? Eye : EyeOff}
        small
        label={shown ? words.hide(name) : words.show(name)}
        onPress={() => app.bench.apply(edits.show, (document) => setPhoto(document, id, { shown: !shown }))}
      />
      <BareButton className="who" onPress={() => app.setView({ photoId: id, pairId: null })}>
        <span className="photo-name">{name}</span>
        <span className="why">
          {words.size(photo.widthPx, photo.heightPx)}
          {photo.orientation !== 1 && `, ${words.turned}`}
          {state && `. ${state}`}
        </span>
      </BareButton>
      <span className="ends">
        {!isTop && (
          <IconButton
            icon={ChevronsUp}
            small
            label={words.raise(name)}
            onPress={() => app.bench.apply(edits.raise, (document) => raisePhoto(document, id))}
          />
        )}
        <IconButton
          icon={X}
          small
          label={words.remove(name)}
          onPress={() => app.bench.apply(edits.remove(name), (document) => removePhoto(document, id))}
        />
      </span>
    </li>
  );
}
