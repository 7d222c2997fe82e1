/** One entry of a ZIP's central directory; `local`: where its own header begins. */
export type ListedEntry = {
  name: string;
  stored: boolean;
  crc: number;
  packedSize: number;
  size: number;
  local: number;
};
/** An entry with the place of its bytes. */
export type ZipEntry = Omit<ListedEntry, 'local'> & { start: number };

const END_MARK = 0x06054b50;
const DIRECTORY_MARK = 0x02014b50;
const LOCAL_MARK = 0x04034b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
/** Of the header before an entry's bytes, without its names. */
export const LOCAL_BYTES = 30;
const ENCRYPTED = 1;
const STORED = 0;
const DEFLATED = 8;

/**
 * The central directory of a ZIP (APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16; from memory), read to check names, sizes and
 * checksums before anything is unpacked. Null when it is not sound, encrypted, packed another way, or in the 64-bit form.
 */
export function readZipDirectory(bytes: Uint8Array): ZipEntry[] | null {
  const listed = listZipEntries(bytes, 0);
  if (!listed || listed === 'further-up') return null;
  const entries: ZipEntry[] = [];
  for (const { local, ...entry } of listed.entries) {
    const header = startAfter(bytes.subarray(local, local + LOCAL_BYTES));
    if (header === null) return null;
    entries.push({ ...entry, start: local + header });
  }
  return entries;
}

/** Where an entry's bytes begin, counted from its own header, of which the first `LOCAL_BYTES` are given. Null: it is no header. */
export function startAfter(header: Uint8Array): number | null {
  const view = new DataView(header.buffer, header.byteOffset, header.byteLength);
  if (header.byteLength < LOCAL_BYTES || view.getUint32(0, true) !== LOCAL_MARK) return null;
  return LOCAL_BYTES + view.getUint16(26, true) + view.getUint16(28, true);
}

/**
 * The central directory alone, out of the last bytes of a ZIP, which begin at `base` in the file; `directoryAt`: where it begins. Null as
 * in `readZipDirectory`; 'further-up': it begins before these bytes.
 */
export function listZipEntries(bytes: Uint8Array, base: number): Listing | 'further-up' | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end === null) return null;
  const count = view.getUint16(end + 10, true);
  const directoryAt = view.getUint32(end + 16, true);
  let at = directoryAt - base;
  if (at < 0) return 'further-up';
  const entries: ListedEntry[] = [];
  for (let index = 0; index < count; index++) {
    const read = readEntry(view, bytes, at);
    if (!read) return null;
    entries.push(read.entry);
    at = read.next;
  }
  return at <= end ? { entries, directoryAt } : null;
}

type Listing = { entries: ListedEntry[]; directoryAt: number };

function findEnd(view: DataView): number | null {
  const least = Math.max(0, view.byteLength - END_BYTES - LONGEST_COMMENT);
  for (let at = view.byteLength - END_BYTES; at >= least; at--) {
    if (view.getUint32(at, true) === END_MARK) return at;
  }
  return null;
}

function readEntry(view: DataView, bytes: Uint8Array, at: number): { entry: ListedEntry; next: number } | null {
  if (at + 46 > view.byteLength || view.getUint32(at, true) !== DIRECTORY_MARK) return null;
  const method = view.getUint16(at + 10, true);
  if (view.getUint16(at + 8, true) & ENCRYPTED || (method !== STORED && method !== DEFLATED)) return null;
  const nameBytes = view.getUint16(at + 28, true);
  const entry: ListedEntry = {
    name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameBytes)),
    stored: method === STORED,
    crc: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    local: view.getUint32(at + 42, true),
  };
  return { entry, next: at + 46 + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true) };
}
