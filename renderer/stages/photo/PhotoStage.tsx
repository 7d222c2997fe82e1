import { chosenPhoto } from '../../photos/chosen-photo.ts';
import { useAppState, useDocument } from '../../state/use-app.ts';
import '../stages.css';
import { MatchSection } from './MatchSection.tsx';
import { PhotoFields } from './PhotoFields.tsx';
import { PhotoList } from './PhotoList.tsx';
import './photo.css';

/** Photos of the shown side, and how the chosen one is laid on the drawing. */
export function PhotoStage() {
  const { photos } = useDocument().board;
  const { side, photoId } = useAppState(({ view }) => ({ side: view.side, photoId: view.photoId }));
  const ofSide = photos.filter((photo) => photo.side === side);
  const chosen = chosenPhoto(photos, side, photoId);
  return (
    <>
      <PhotoList photos={ofSide} side={side} chosenId={chosen?.id ?? null} />
      {chosen && <MatchSection photo={chosen} />}
      {chosen && <PhotoFields photo={chosen} />}
    </>
  );
}
