import type { BoardPhoto } from '../../shared-types/photo.ts';
import type { CanvasModel } from '../state/canvas-model.ts';
import type { PictureLevels } from './photo-messages.ts';

/** Decoded pictures by hash; 'missing': the ticket does not hold it or it cannot be drawn. */
export type Pictures = ReadonlyMap<string, PictureLevels | 'missing'>;

type Looked = Pick<CanvasModel, 'document' | 'shownSide' | 'pictures' | 'blinked'>;
export type ShownPhoto = { photo: BoardPhoto; levels: PictureLevels };

/** The photos that are drawn, the undermost first. */
export function shownPhotos({ document, shownSide, pictures, blinked }: Looked): ShownPhoto[] {
  if (blinked) return [];
  return document.board.photos.flatMap((photo) => {
    const levels = pictures.get(photo.working.sha256);
    return photo.side === shownSide && photo.shown && photo.opacity > 0 && levels && levels !== 'missing'
      ? [{ photo, levels }]
      : [];
  });
}

/** True when the drawing must let a photo through. */
export const photoShown = (model: Looked): boolean =>
  model.document.board.photos.length > 0 && shownPhotos(model).length > 0;
