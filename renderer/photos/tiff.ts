import { decode } from 'tiff';

/** PhotometricInterpretation of TIFF 6.0, section 8. */
const PALETTE = 3;

/** The first picture of a TIFF as it is stored, not turned. Throws on forms that the library does not know. */
export function decodeTiff(bytes: Uint8Array<ArrayBuffer>): ImageData {
  const [picture] = decode(bytes, { pages: [0] });
  const { width, height, data, bitsPerSample, maxSampleValue } = picture;
  if (picture.type === PALETTE) throw new Error('palettes are not drawn');
  const channels = data.length / (width * height);
  if (!Number.isInteger(channels) || channels < 1 || channels > 4) throw new Error('unknown channels');
  const scale = 255 / (bitsPerSample === 8 ? 255 : maxSampleValue);
  const pixels = new Uint8ClampedArray(width * height * 4);
  const isGrey = channels < 3;
  for (let from = 0, to = 0; to < pixels.length; from += channels, to += 4) {
    pixels[to] = data[from] * scale;
    pixels[to + 1] = data[isGrey ? from : from + 1] * scale;
    pixels[to + 2] = data[isGrey ? from : from + 2] * scale;
    pixels[to + 3] = channels % 2 === 0 ? data[from + channels - 1] * scale : 255;
  }
  return new ImageData(pixels, width, height);
}
