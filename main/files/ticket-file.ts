import { crc32, inflateRawSync } from 'node:zlib';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { type TicketContents, unpackTicket } from '../document/ticket-archive.ts';
import { readZipDirectory, type ZipEntry } from './zip-directory.ts';

/** Largest ticket file and largest content of one, bytes: far above any real ticket, far below what hurts a machine. */
export const LARGEST_TICKET = 512 * 1024 * 1024;
const LARGEST_CONTENT = 1024 * 1024 * 1024;
const SAFE_NAME = /^(board\.json|plan\.json|photos\/|photos\/[A-Za-z0-9._-]+)$/;

/**
 * Bytes of a ticket file to its contents, after the archive itself was checked: names, sizes and checksums.
 * A ticket holds board.json, plan.json and photos/ and nothing else. Errors: damaged-ticket, too-large, and those of `unpackTicket`.
 */
export function readTicketFile(bytes: Uint8Array, file: string): Result<TicketContents> {
  if (bytes.byteLength > LARGEST_TICKET) return fail('too-large', { file, detail: { limit: '512 MB' } });
  const entries = readZipDirectory(bytes);
  if (!entries) return fail('damaged-ticket', { file });
  const problem = listingProblem(entries, file);
  if (problem) return { ok: false, problem };
  const damaged = entries.find((entry) => !isSound(bytes, entry));
  if (damaged) return fail('damaged-ticket', { file, where: damaged.name });
  const unpacked = unpackTicket(bytes, file);
  return unpacked.ok ? succeed(unpacked.value) : unpacked;
}

/** What is wrong with the names and sizes of a ticket's entries, or null. */
export function listingProblem(entries: readonly { name: string; size: number }[], file: string): Problem | null {
  const names = entries.map((entry) => entry.name);
  const odd = names.find((name, index) => !SAFE_NAME.test(name) || name.includes('..') || names.indexOf(name) < index);
  if (odd !== undefined) return { code: 'damaged-ticket', file, where: oneLine(odd) };
  const size = entries.reduce((sum, entry) => sum + entry.size, 0);
  return size > LARGEST_CONTENT ? { code: 'too-large', file, detail: { limit: '1 GB unpacked' } } : null;
}

/** Unpacks no more than the directory promises, so a bomb stops at its own lie. */
function isSound(bytes: Uint8Array, entry: ZipEntry): boolean {
  return soundContent(bytes.subarray(entry.start, entry.start + entry.packedSize), entry) !== null;
}

/** The content of an entry, after its size and checksum; null when they are not what the directory says. */
export function soundContent(packed: Uint8Array, entry: Omit<ZipEntry, 'start'>): Uint8Array | null {
  if (packed.byteLength !== entry.packedSize) return null;
  try {
    const content = entry.stored ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.size) });
    return content.byteLength === entry.size && crc32(content) === entry.crc ? content : null;
  } catch {
    return null;
  }
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what has to go
const oneLine = (name: string): string => name.slice(0, 80).replace(/[\u0000-\u001f\u007f]/g, '?');
