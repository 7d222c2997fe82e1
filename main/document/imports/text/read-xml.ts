import { SaxesParser } from 'saxes';

const CHUNK_BYTES = 65_536;
/** No element of any format that is read has so many: they would all be kept until it ends. */
const MAX_ATTRIBUTES = 5000;

export interface XmlHandlers<Refusal extends string> {
  /** Name without its prefix. Anything but null ends the reading. */
  open(name: string, attributes: Readonly<Record<string, string>>): Refusal | null;
  close(name: string): void;
  text?(text: string): void;
}

export type XmlResult<Refusal extends string> =
  | { readonly ok: true }
  | {
      readonly ok: false;
      readonly reason: Refusal | 'notWellFormed' | 'ownEntities' | 'tooMany';
      readonly line: number;
    };

/** Reads XML chunk by chunk, so that memory does not grow with it. Entities of its own are refused; never throws. */
export function readXml<Refusal extends string>(bytes: Uint8Array, handlers: XmlHandlers<Refusal>): XmlResult<Refusal> {
  const parser = new SaxesParser({});
  let refused: Refusal | 'ownEntities' | 'tooMany' | null = null;
  const refuse = (reason: Refusal | 'ownEntities' | 'tooMany' | null): void => {
    if (reason === null) return;
    refused = reason;
    throw new Error(reason);
  };
  parser.on('doctype', (content) => refuse(content.includes('[') ? 'ownEntities' : null));
  let attributeCount = 0;
  parser.on('opentagstart', () => {
    attributeCount = 0;
  });
  parser.on('attribute', () => refuse(++attributeCount > MAX_ATTRIBUTES ? 'tooMany' : null));
  parser.on('opentag', ({ name, attributes }) => refuse(handlers.open(withoutPrefix(name), attributes)));
  parser.on('closetag', ({ name }) => handlers.close(withoutPrefix(name)));
  if (handlers.text) parser.on('text', (text) => handlers.text?.(text));
  try {
    const decoder = xmlDecoder(bytes);
    for (let start = 0; start < bytes.length; start += CHUNK_BYTES) {
      parser.write(decoder.decode(bytes.subarray(start, start + CHUNK_BYTES), { stream: true }));
    }
    parser.write(decoder.decode()).close();
    return { ok: true };
  } catch {
    return { ok: false, reason: refused ?? 'notWellFormed', line: parser.line };
  }
}

export function xmlDecoder(bytes: Uint8Array): TextDecoder {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le');
  return new TextDecoder(first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8');
}

function withoutPrefix(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
