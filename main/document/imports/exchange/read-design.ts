import { SaxesParser } from 'saxes';
import { makeGatherer } from './gather.ts';
import type { Design, DesignFailure } from './types.ts';

const CHUNK_BYTES = 65_536;
const HEAD_BYTES = 4000;

/** True when the file's first element is that of IPC-2581. */
export function looksLikeDesign(bytes: Uint8Array): boolean {
  return /<(\w+:)?IPC-2581[\s>]/.test(decoderFor(bytes).decode(bytes.subarray(0, HEAD_BYTES)));
}

/**
 * Reads IPC-2581 (revisions B and C) chunk by chunk: only what the board needs is kept, so memory does not grow with the
 * file. Lengths come out in mm. Own entities are refused; never throws.
 */
export function readDesign(bytes: Uint8Array): { ok: true; design: Design } | { ok: false; failure: DesignFailure } {
  const parser = new SaxesParser({});
  const gatherer = makeGatherer();
  let refused: DesignFailure['reason'] | null = null;
  const refuse = (reason: DesignFailure['reason'] | null): void => {
    if (reason === null) return;
    refused = reason;
    throw new Error(reason);
  };
  parser.on('doctype', (content) => refuse(content.includes('[') ? 'ownEntities' : null));
  parser.on('opentag', ({ name, attributes }) => refuse(gatherer.open(withoutPrefix(name), attributes)));
  parser.on('closetag', ({ name }) => gatherer.close(withoutPrefix(name)));
  try {
    const decoder = decoderFor(bytes);
    for (let start = 0; start < bytes.length; start += CHUNK_BYTES) {
      parser.write(decoder.decode(bytes.subarray(start, start + CHUNK_BYTES), { stream: true }));
    }
    parser.write(decoder.decode()).close();
    return { ok: true, design: gatherer.design() };
  } catch {
    return { ok: false, failure: { reason: refused ?? 'notWellFormed', line: parser.line } };
  }
}

function decoderFor(bytes: Uint8Array): TextDecoder {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le');
  return new TextDecoder(first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8');
}

function withoutPrefix(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
