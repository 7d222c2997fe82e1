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
  } catch (error) {
    return fail('not-json', { file, where: lineOf(text, error), detail: { reason: shortReason(text) } });
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

function lineOf(text: string, error: unknown): string | undefined {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
  if (position === undefined) return undefined;
  return `line ${text.slice(0, Number(position)).split('\n').length}`;
}

function shortReason(text: string): string {
  const start = text.trimStart();
  if (start === '') return 'the file is empty';
  if (!start.startsWith('{') && !start.startsWith('[') && !start.startsWith('\uFEFF'))
    return 'it does not begin with {';
  return 'it breaks off or has a stray character';
}
