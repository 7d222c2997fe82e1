import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { readBoard, readPlan, writeBoard, writePlan } from './open-document.ts';

/** Largest unpacked size of the two JSON entries together and of one photo, bytes. */
export const LARGEST_JSON = 64 * 1024 * 1024;
const LARGEST_PHOTO = 256 * 1024 * 1024;
const MOST_ENTRIES = 1000;
/** ZIP keeps local dates from 1980 on; a fixed one makes equal tickets equal bytes. */
const FIXED_DATE = new Date(1980, 0, 1);

/** What a ticket file holds: its document, and photos by entry name (a hash), stored uncompressed. */
export type TicketContents = { document: TicketDocument; photos: ReadonlyMap<string, Uint8Array> };

/** A ticket as the bytes of its file: a ZIP of board.json, plan.json and photos/. The same ticket gives the same bytes. */
export function packTicket({ document, photos }: TicketContents): Uint8Array {
  const entries: Zippable = {
    'board.json': [strToU8(writeBoard(document.board)), { mtime: FIXED_DATE }],
    'plan.json': [strToU8(writePlan(document.plan)), { mtime: FIXED_DATE }],
  };
  for (const [name, bytes] of [...photos].sort(([a], [b]) => (a < b ? -1 : 1))) {
    entries[`photos/${name}`] = [bytes, { level: 0, mtime: FIXED_DATE }];
  }
  return zipSync(entries);
}

/** True when the bytes begin like a ZIP. */
export const looksLikeZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

/**
 * Bytes of a ticket file to its contents. Entries other than the three kinds are ignored; sizes are checked before unpacking.
 * Errors: damaged-ticket, missing-entry, too-large, and those of readBoard and readPlan.
 */
export function unpackTicket(bytes: Uint8Array, file: string): Result<TicketContents> {
  const entries = unpackEntries(bytes, file);
  if (!entries.ok) return entries;
  const board = textEntry(entries.value, 'board.json', file);
  if (!board.ok) return board;
  const plan = textEntry(entries.value, 'plan.json', file);
  if (!plan.ok) return plan;
  const document = readTicketDocument(board.value, plan.value, file);
  if (!document.ok) return document;
  const photos = Object.entries(entries.value).flatMap(([name, photo]): [string, Uint8Array][] =>
    name.startsWith('photos/') ? [[name.slice('photos/'.length), photo]] : [],
  );
  return succeed({ document: document.value, photos: new Map(photos) });
}

/** The two texts of a ticket. Errors: those of readBoard and readPlan. */
export function readTicketDocument(board: string, plan: string, file: string): Result<TicketDocument> {
  const boardRead = readBoard(board, `${file}: board.json`);
  if (!boardRead.ok) return boardRead;
  const planRead = readPlan(plan, `${file}: plan.json`);
  return planRead.ok ? succeed({ board: boardRead.value, plan: planRead.value }) : planRead;
}

const isWanted = (name: string): boolean =>
  name === 'board.json' || name === 'plan.json' || /^photos\/[A-Za-z0-9._-]+$/.test(name);

function unpackEntries(bytes: Uint8Array, file: string): Result<Record<string, Uint8Array>> {
  let tooLarge = false;
  let count = 0;
  try {
    const entries = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!isWanted(name) || ++count > MOST_ENTRIES) return false;
        tooLarge ||= originalSize > (name.startsWith('photos/') ? LARGEST_PHOTO : LARGEST_JSON);
        return !tooLarge;
      },
    });
    return tooLarge
      ? fail('too-large', { file, detail: { limit: '64 MB of JSON or 256 MB a photo' } })
      : succeed(entries);
  } catch {
    return fail('damaged-ticket', { file });
  }
}

function textEntry(entries: Record<string, Uint8Array>, entry: string, file: string): Result<string> {
  const bytes = entries[entry];
  return bytes ? succeed(strFromU8(bytes)) : fail('missing-entry', { file, detail: { entry } });
}
