import { crc32, inflateRawSync } from 'node:zlib';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
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
  const names = entries.map((entry) => entry.name);
  const odd = names.find((name, index) => !SAFE_NAME.test(name) || name.includes('..') || names.indexOf(name) < index);
  if (odd !== undefined) return fail('damaged-ticket', { file, where: oneLine(odd) });
  const size = entries.reduce((sum, entry) => sum + entry.size, 0);
  if (size > LARGEST_CONTENT) return fail('too-large', { file, detail: { limit: '1 GB unpacked' } });
  const damaged = entries.find((entry) => !isSound(bytes, entry));
  if (damaged) return fail('damaged-ticket', { file, where: damaged.name });
  const unpacked = unpackTicket(bytes, file);
  return unpacked.ok ? succeed(unpacked.value) : unpacked;
}

/** Unpacks no more than the directory promises, so a bomb stops at its own lie. */
function isSound(bytes: Uint8Array, entry: ZipEntry): boolean {
  const packed = bytes.subarray(entry.start, entry.start + entry.packedSize);
  if (packed.byteLength !== entry.packedSize) return false;
  try {
    const content = entry.stored ? packed : inflateRawSync(packed, { maxOutputLength: Math.max(1, entry.size) });
    return content.byteLength === entry.size && crc32(content) === entry.crc;
  } catch {
    return false;
  }
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what has to go
const oneLine = (name: string): string => name.slice(0, 80).replace(/[\u0000-\u001f\u007f]/g, '?');
