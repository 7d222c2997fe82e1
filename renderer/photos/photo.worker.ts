import { type Problem, succeed } from '../../shared-types/problem.ts';
import { isHeif } from '../../shared-types/rules/image-type.ts';
import { uprightTransform } from '../../shared-types/rules/orientation.ts';
import { isPrintable } from '../../shared-types/rules/printable-picture.ts';
import { photoWords } from '../../shared-types/words/window/photo.ts';
import { type ImageHeader, readImageHeader } from './image-header.ts';
import type { PhotoAnswer, PhotoJob, PictureLevels, PreparedPhoto } from './photo-messages.ts';
import { decodeTiff } from './tiff.ts';
import { fitWithin, LARGEST_MEGAPIXELS, WORKING_LONG_SIDE_PX } from './working-size.ts';

/** Decoding, setting upright and reducing, off the window's thread. */
self.onmessage = async ({ data }: MessageEvent<PhotoJob>) => {
  if (data.kind === 'levels') {
    const levels = await levelsOf(new Blob([data.bytes], { type: data.mediaType })).catch(() => null);
    answer({ kind: 'levels', levels }, levels ? [...levels] : []);
    return;
  }
  const prepared = await prepare(data.file).catch((): Problem => ({ code: 'damaged-picture' }));
  if ('code' in prepared) {
    answer({ kind: 'prepare', result: { ok: false, problem: { ...prepared, file: data.file.name } } }, []);
    return;
  }
  answer({ kind: 'prepare', result: succeed(prepared) }, []);
};

const answer = (message: PhotoAnswer, moved: Transferable[]) =>
  (self as unknown as { postMessage(message: PhotoAnswer, moved: Transferable[]): void }).postMessage(message, moved);

async function prepare(file: File): Promise<PreparedPhoto | Problem> {
  const read = await look(file);
  if ('code' in read) return read;
  const { header, stored, printable } = read;
  const megapixels = (header.widthPx * header.heightPx) / 1e6;
  if (megapixels > LARGEST_MEGAPIXELS)
    return { code: 'too-large', detail: { limit: photoWords.megapixels(LARGEST_MEGAPIXELS) } };
  const upright = uprightTransform(header.orientation, header.widthPx, header.heightPx);
  const { widthPx, heightPx } = upright;
  const about = { mediaType: header.type, widthPx, heightPx, orientation: header.orientation };
  const isSmall = Math.max(widthPx, heightPx) <= WORKING_LONG_SIDE_PX;
  const serves = header.orientation === 1 && isSmall && printable;
  if (serves) {
    // Decoded all the same: a file that cannot be drawn must not come in.
    (await createImageBitmap(stored)).close();
    const mediaType = header.type === 'image/png' ? header.type : 'image/jpeg';
    return { ...about, working: { bytes: null, mediaType, widthPx, heightPx } };
  }
  return { ...about, working: await reduce(header, stored) };
}

type Look = { header: ImageHeader; stored: Blob; printable: boolean };

/** Reads the file once; for the decoder it is then handed on as places in the file, so that its bytes need not stay in memory. */
async function look(file: File): Promise<Look | Problem> {
  const bytes = await file.arrayBuffer().then(
    (buffer) => new Uint8Array(buffer),
    () => null,
  );
  if (bytes === null) return { code: 'not-readable' };
  const header = readImageHeader(bytes);
  if (header === null) return { code: 'not-a-picture', detail: isHeif(bytes) ? photoWords.heif : {} };
  if (header === 'cut-off') return { code: 'damaged-picture' };
  const pieces = header.unturned.map((piece) =>
    piece.buffer === bytes.buffer ? file.slice(piece.byteOffset, piece.byteOffset + piece.byteLength) : piece,
  );
  return { header: { ...header, unturned: [] }, stored: new Blob(pieces), printable: isPrintable(bytes) };
}

/** The upright working copy as a JPEG on white, so that transparent places do not turn black. */
async function reduce(header: ImageHeader, stored: Blob): Promise<PreparedPhoto['working']> {
  const size = fitWithin(header.widthPx, header.heightPx, WORKING_LONG_SIDE_PX);
  const picture = await decode(header, stored, size);
  const { a, b, c, d, e, f, widthPx, heightPx } = uprightTransform(header.orientation, size.widthPx, size.heightPx);
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, widthPx, heightPx);
  context.setTransform(a, b, c, d, e, f);
  context.drawImage(picture, 0, 0);
  picture.close();
  const encoded = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  return { bytes: encoded, mediaType: 'image/jpeg', widthPx, heightPx };
}

/** The stored picture at the wanted size; the browser lets go of the full size inside. */
async function decode(
  header: ImageHeader,
  stored: Blob,
  size: { widthPx: number; heightPx: number },
): Promise<ImageBitmap> {
  const options = { resizeWidth: size.widthPx, resizeHeight: size.heightPx, resizeQuality: 'high' as const };
  if (header.type !== 'image/tiff') return createImageBitmap(stored, options);
  return createImageBitmap(decodeTiff(new Uint8Array(await stored.arrayBuffer())), options);
}

const SMALLEST_LEVEL_PX = 700;

async function levelsOf(blob: Blob): Promise<PictureLevels> {
  const levels = [await createImageBitmap(blob)];
  for (;;) {
    const last = levels[levels.length - 1];
    const [resizeWidth, resizeHeight] = [Math.round(last.width / 2), Math.round(last.height / 2)];
    if (Math.max(resizeWidth, resizeHeight) < SMALLEST_LEVEL_PX) return levels;
    levels.push(await createImageBitmap(last, { resizeWidth, resizeHeight, resizeQuality: 'medium' }));
  }
}
