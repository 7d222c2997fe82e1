import { unzipSync } from 'fflate';
import { readXml } from '../text/read-xml.ts';
import { readCells, readSharedTexts, type SheetRows } from './cells.ts';
import { readOpenDocument } from './open-document.ts';

export interface Sheet {
  readonly name: string;
  readonly rows: SheetRows;
}

const MAX_SHEETS = 50;
/** What the parts that are read may unpack to together. */
const MAX_UNPACKED_BYTES = 128 * 1024 * 1024;
const WANTED =
  /^content\.xml$|^xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|worksheets\/[^/]+\.xml)$/i;

/** The visible sheets of a workbook (XLSX, or ODS of OpenDocument) in their order. Null when it cannot be opened or is too large. Never throws. */
export function readWorkbook(bytes: Uint8Array): Sheet[] | null {
  const parts = unpackParts(bytes);
  if (parts === null) return null;
  const content = parts.get('content.xml');
  const workbook = parts.get('xl/workbook.xml');
  if (content && !workbook) return readOpenDocument(content);
  const relations = parts.get('xl/_rels/workbook.xml.rels');
  if (!workbook || !relations) return null;
  const places = readRelations(relations);
  const listed = readSheetList(workbook);
  const texts = parts.get('xl/sharedStrings.xml');
  const shared = texts ? readSharedTexts(texts) : [];
  if (places === null || listed === null || shared === null) return null;
  const sheets: Sheet[] = [];
  for (const { name, id } of listed.slice(0, MAX_SHEETS)) {
    const part = parts.get(places.get(id) ?? '');
    const rows = part ? readCells(part, shared) : [];
    if (rows === null) return null;
    sheets.push({ name, rows });
  }
  return sheets;
}

/** Stated sizes bound the unpacking: nothing is written beyond them. */
function unpackParts(bytes: Uint8Array): Map<string, Uint8Array> | null {
  let room = MAX_UNPACKED_BYTES;
  try {
    const found = unzipSync(bytes, {
      filter({ name, originalSize }) {
        if (!WANTED.test(name)) return false;
        room -= originalSize;
        return room >= 0;
      },
    });
    return room < 0 ? null : new Map(Object.entries(found));
  } catch {
    return null;
  }
}

/** Relation id to the part it leads to (ECMA-376 part 2, 9.3). */
function readRelations(bytes: Uint8Array): Map<string, string> | null {
  const places = new Map<string, string>();
  const read = readXml<never>(bytes, {
    open(name, { Id, Target }) {
      if (name === 'Relationship' && Id && Target) {
        places.set(Id, Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`);
      }
      return null;
    },
    close: () => undefined,
  });
  return read.ok ? places : null;
}

function readSheetList(bytes: Uint8Array): { name: string; id: string }[] | null {
  const sheets: { name: string; id: string }[] = [];
  const read = readXml<never>(bytes, {
    open(element, { name, state, ...rest }) {
      const id = Object.entries(rest).find(([key]) => /(^|:)id$/.test(key))?.[1];
      const visible = state === undefined || state === 'visible';
      if (element === 'sheet' && name && id && visible) sheets.push({ name, id });
      return null;
    },
    close: () => undefined,
  });
  return read.ok ? sheets : null;
}

/** A sheet as text with tabs, as the readers of tables take it. */
export function sheetText({ rows }: Sheet): string {
  return rows.map((cells) => cells.map(quoted).join('\t')).join('\n');
}

function quoted(cell: string): string {
  return /["\t\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
