import { unzlibSync } from 'fflate';

/** 'wOFF', the signature of a WOFF 1.0 file (W3C Recommendation 'WOFF File Format 1.0', section 4). */
const SIGNATURE = 0x774f4646;
const HEADER = 44;
const ENTRY = 20;

type Table = { tag: number; checksum: number; bytes: Uint8Array };

const padded = (length: number): number => (length + 3) & ~3;

/**
 * The plain font inside a WOFF 1.0 file; any other bytes come back as they are. The PDF library reads WOFF too, but it
 * looks past the end of the outlines for an empty last glyph, which only a plain file with further tables survives.
 */
export function unwrapWoff(file: Uint8Array): Uint8Array {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < HEADER || view.getUint32(0) !== SIGNATURE) return file;
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, index): Table => {
    const at = HEADER + index * ENTRY;
    const [offset, packed, length] = [view.getUint32(at + 4), view.getUint32(at + 8), view.getUint32(at + 12)];
    const raw = file.subarray(offset, offset + packed);
    return {
      tag: view.getUint32(at),
      checksum: view.getUint32(at + 16),
      bytes: packed < length ? unzlibSync(raw) : raw,
    };
  });
  return assemble(view.getUint32(4), tables);
}

/** An sfnt file: header, directory in the given order (WOFF keeps it sorted by tag), tables on four-byte borders. */
function assemble(flavour: number, tables: readonly Table[]): Uint8Array {
  const start = 12 + 16 * tables.length;
  const font = new Uint8Array(tables.reduce((sum, table) => sum + padded(table.bytes.length), start));
  const view = new DataView(font.buffer);
  const power = Math.floor(Math.log2(Math.max(1, tables.length)));
  view.setUint32(0, flavour);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * tables.length - 16 * 2 ** power);
  let offset = start;
  for (const [index, table] of tables.entries()) {
    const at = 12 + index * 16;
    view.setUint32(at, table.tag);
    view.setUint32(at + 4, table.checksum);
    view.setUint32(at + 8, offset);
    view.setUint32(at + 12, table.bytes.length);
    font.set(table.bytes, offset);
    offset += padded(table.bytes.length);
  }
  return font;
}
