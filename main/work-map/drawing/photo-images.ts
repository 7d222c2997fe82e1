import type { Board } from '../../../shared-types/board.ts';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { fitPhoto, type PhotoFit } from '../../../shared-types/rules/photo-fit.ts';
import { isPrintable } from '../../../shared-types/rules/printable-picture.ts';

/** Pictures of the ticket by hash. */
export type Pictures = ReadonlyMap<string, Uint8Array>;

/** A picture as the PDF library has opened it, and as it came. */
export type SheetImage = { opened: PDFKit.Mixins.ImageSrc; bytes: Uint8Array; widthPx: number; heightPx: number };

/** A photo that is printed: its bytes stand in the file once, however often it is drawn. */
export type SheetPhoto = { photo: BoardPhoto; fit: PhotoFit; image: SheetImage };

/** Why a shown photo is not on the sheet. */
export type PhotoLeftOut = { name: string; why: 'notMatched' | 'notThere' | 'notPrintable' };

/** A larger copy than the window makes is none of ours. */
const LARGEST_BYTES = 24 * 1024 * 1024;

/** Opens the photos that are shown and matched; nothing is decoded. */
export function openPhotos(
  document: PDFKit.PDFDocument,
  board: Board,
  pictures: Pictures,
): { photos: SheetPhoto[]; leftOut: PhotoLeftOut[] } {
  const photos: SheetPhoto[] = [];
  const leftOut: PhotoLeftOut[] = [];
  for (const photo of board.photos) {
    if (!photo.shown || photo.opacity === 0) continue;
    const opened = openPhoto(document, photo, pictures.get(photo.working.sha256));
    if (typeof opened === 'string') leftOut.push({ name: photo.name, why: opened });
    else photos.push(opened);
  }
  return { photos, leftOut };
}

function openPhoto(
  document: PDFKit.PDFDocument,
  photo: BoardPhoto,
  bytes: Uint8Array | undefined,
): SheetPhoto | PhotoLeftOut['why'] {
  const fitted = fitPhoto(photo.pairs, photo.side, photo.fit);
  if (!fitted.ok) return 'notMatched';
  if (!bytes) return 'notThere';
  if (bytes.length > LARGEST_BYTES || !isPrintable(bytes)) return 'notPrintable';
  try {
    // The library's published types miss that it opens pictures by themselves.
    const { openImage } = document as unknown as { openImage(source: Uint8Array): PDFKit.Mixins.ImageSrc };
    const { widthPx, heightPx } = photo.working;
    const image = { opened: openImage.call(document, bytes), bytes, widthPx, heightPx };
    return { photo, fit: fitted.fit, image };
  } catch {
    return 'notPrintable';
  }
}
