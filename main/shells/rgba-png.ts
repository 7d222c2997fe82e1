import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** ISO/IEC 15948: 8 bits, colour type 6 (RGB and alpha), deflate, filters, not interlaced. */
const RGBA_8 = [8, 6, 0, 0, 0];

/** A PNG of rows that each begin with their filter byte and go on with four bytes a pixel. Stored, not packed: it is read again at once. */
export function rgbaPng(widthPx: number, heightPx: number, rows: Uint8Array): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(widthPx, 0);
  header.writeUInt32BE(heightPx, 4);
  header.set(RGBA_8, 8);
  const pieces = [
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 0 })),
    chunk('IEND', Buffer.alloc(0)),
  ];
  return new Uint8Array(Buffer.concat([Buffer.from(SIGNATURE), ...pieces]));
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}
