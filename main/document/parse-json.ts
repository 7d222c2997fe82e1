import { type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';

/** Largest JSON text that is read, characters. */
export const LARGEST_JSON = 64 * 1024 * 1024;
const DEEPEST = 100;

/**
 * JSON text to a value.
 * Errors: too-large, not-json (with the line where the text breaks off making sense, or nesting deeper than 100).
 */
export function parseJson(text: string, file: string): Result<unknown> {
  if (text.length > LARGEST_JSON) return fail('too-large', { file, detail: { limit: '64 MB' } });
  if (nestingOf(text) > DEEPEST) return fail('not-json', { file, detail: { reason: `nested deeper than ${DEEPEST}` } });
  try {
    return succeed(JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text));
  } catch {
    const { where, reason } = firstFault(text);
    return fail('not-json', { file, where, detail: { reason } });
  }
}

/** Deepest nesting of brackets outside strings. */
function nestingOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inString = false;
  for (let index = 0; index < text.length; index++) {
    const character = text[index];
    if (inString) {
      if (character === '\\') index++;
      else if (character === '"') inString = false;
    } else if (character === '"') inString = true;
    else if (character === '{' || character === '[') deepest = Math.max(deepest, ++depth);
    else if (character === '}' || character === ']') depth--;
  }
  return deepest;
}

/** Line and column of the first thing that is wrong, and what it is, by a parser that goes on after an error. */
function firstFault(text: string): { where?: string; reason: string } {
  if (text.trim() === '') return { reason: 'the file is empty' };
  const errors: ParseError[] = [];
  parseTree(text.replace(/^\uFEFF/, ' '), errors, { disallowComments: true, allowTrailingComma: false });
  if (errors.length === 0) return { reason: 'it does not end where it should' };
  const before = text.slice(0, errors[0].offset).split('\n');
  const words = printParseErrorCode(errors[0].error)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return { where: `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`, reason: words };
}
