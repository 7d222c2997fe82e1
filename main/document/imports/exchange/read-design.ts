import { readXml, xmlDecoder } from '../text/read-xml.ts';
import { makeGatherer } from './gather.ts';
import type { Design, DesignFailure } from './types.ts';

const HEAD_BYTES = 4000;

/** True when the file's first element is that of IPC-2581. */
export function looksLikeDesign(bytes: Uint8Array): boolean {
  return /<(\w+:)?IPC-2581[\s>]/.test(xmlDecoder(bytes).decode(bytes.subarray(0, HEAD_BYTES)));
}

/**
 * Reads IPC-2581 (revisions B and C) chunk by chunk: only what the board needs is kept, so memory does not grow with the
 * file. Lengths come out in mm. Own entities are refused; never throws.
 */
export function readDesign(bytes: Uint8Array): { ok: true; design: Design } | { ok: false; failure: DesignFailure } {
  const gatherer = makeGatherer();
  const read = readXml(bytes, gatherer);
  if (read.ok) return { ok: true, design: gatherer.design() };
  return { ok: false, failure: { reason: read.reason, line: read.line } };
}
