import { unzipSync } from 'fflate';
import { fail, type Result, succeed } from '../../../../shared-types/problem.ts';
import { readWorkbook, sheetText } from '../sheets/read-workbook.ts';
import { OFFICE_PARTS } from '../text/decode-text.ts';
import type { GivenFile } from './recognise.ts';

export interface Archive {
  readonly name: string;
  readonly members: readonly string[];
}

export interface Unpacked {
  readonly files: readonly GivenFile[];
  readonly archives: readonly Archive[];
}

const MAX_ENTRIES = 2000;
const MAX_UNPACKED_MB = 256;
const MAX_UNPACKED_BYTES = MAX_UNPACKED_MB * 1024 * 1024;

/**
 * ZIP files replaced by their members, one level deep: an archive within an archive stays an archive. Members whose names
 * lead out of their folder are left out. Workbooks, also those in an archive, are replaced by their sheets as text.
 * What cannot be opened stays as it is. Errors: too-large.
 */
export function unpackFiles(given: readonly GivenFile[]): Result<Unpacked> {
  const files: GivenFile[] = [];
  const archives: Archive[] = [];
  const room = { entries: MAX_ENTRIES, bytes: MAX_UNPACKED_BYTES };
  for (const file of given) {
    const members = isZip(file.bytes) ? unzip(file.bytes, room) : null;
    if (room.entries < 0) return fail('too-large', { file: file.name, detail: { limit: `${MAX_ENTRIES} files` } });
    if (room.bytes < 0) {
      return fail('too-large', { file: file.name, detail: { limit: `${MAX_UNPACKED_MB} MB unpacked` } });
    }
    if (members === null) files.push(file);
    else {
      files.push(...members);
      archives.push({ name: file.name, members: members.map(({ name }) => name) });
    }
  }
  return succeed({ files: files.flatMap(sheetsOf), archives });
}

/** `parts.xlsx [Top]`: each sheet with anything in it as a file of its own. */
function sheetsOf(file: GivenFile): GivenFile[] {
  const sheets = isPacked(file.bytes) && isOffice(file.bytes) ? readWorkbook(file.bytes) : null;
  if (sheets === null) return [file];
  const filled = sheets.filter(({ rows }) => rows.some((cells) => cells.some((cell) => cell.trim() !== '')));
  return filled.map((sheet) => ({
    name: `${file.name} [${sheet.name}]`,
    bytes: new TextEncoder().encode(sheetText(sheet)),
  }));
}

/** A ZIP that is no spreadsheet: those are ZIP files too and name their parts in the first bytes. */
function isZip(bytes: Uint8Array): boolean {
  return isPacked(bytes) && !isOffice(bytes);
}

function isPacked(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
}

function isOffice(bytes: Uint8Array): boolean {
  return OFFICE_PARTS.test(new TextDecoder('latin1').decode(bytes.subarray(0, 4096)));
}

/** Sizes are those the archive states; unpacking never writes more than them. Null when it cannot be opened. */
function unzip(bytes: Uint8Array, room: { entries: number; bytes: number }): GivenFile[] | null {
  try {
    const members = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        room.entries--;
        if (leadsOut(name) || isClutter(name)) return false;
        room.bytes -= originalSize;
        return room.entries >= 0 && room.bytes >= 0;
      },
    });
    return Object.entries(members).map(([name, content]) => ({ name, bytes: content }));
  } catch {
    return null;
  }
}

function leadsOut(name: string): boolean {
  return /^[/\\]|^[A-Za-z]:|(^|[/\\])\.\.([/\\]|$)/.test(name);
}

function isClutter(name: string): boolean {
  return /[/\\]$|(^|\/)__MACOSX\//.test(name);
}
