import { closeRepeat, executeExtended } from './extended.ts';
import { newState, note, type ReaderState } from './state.ts';
import { gerberTokens } from './tokens.ts';
import type { GerberFailure, GerberResult } from './types.ts';
import { executeWord } from './words.ts';

/**
 * Reads one Gerber file (RS-274X, X2, X2 in comments) into strokes, flashes and regions, lengths in mm.
 * Follows The Gerber Layer Format Specification, revision 2023.03. Never throws: text of another kind gives a failure.
 */
export function readGerber(text: string): GerberResult {
  const state = newState();
  let line = 1;
  for (const token of gerberTokens(text)) {
    line = token.line;
    if (token.kind === 'word') executeWord(state, token.text, token.line);
    else executeExtended(state, token.blocks, token.line);
    if (state.failure) return { ok: false, failure: state.failure };
    if (state.ended) break;
    if (hopeless(state)) return { ok: false, failure: notGerber(line) };
  }
  closeOpen(state, line);
  if (state.failure) return { ok: false, failure: state.failure };
  if (state.formatX === null && state.objectCount === 0) return { ok: false, failure: notGerber(line) };
  if (!state.ended) note(state, 'noEnd', '', line);
  const file = state.attributes.file;
  return {
    ok: true,
    image: {
      fileFunction: file.get('.FileFunction') ?? [],
      fileAttributes: file,
      unit: state.mmPerUnit === 25.4 ? 'inch' : 'mm',
      objects: state.objects,
      notes: [...state.notes.values()],
    },
  };
}

function notGerber(line: number): GerberFailure {
  return { reason: 'notGerber', line, detail: '' };
}

const MANY_UNKNOWN = 100;

/** A text of another kind: nothing but unknown words so far. Stops early instead of chewing through it. */
function hopeless(state: ReaderState): boolean {
  return state.notes.size >= MANY_UNKNOWN && state.objectCount === 0 && state.formatX === null;
}

/** A file cut short may leave repeats and blocks open: what was drawn in them counts once. */
function closeOpen(state: ReaderState, line: number): void {
  while (state.open.length > 0 && !state.failure) {
    closeRepeat(state, line);
    const open = state.open.at(-1);
    if (open?.kind === 'block') {
      state.open.pop();
      state.objects = open.outer;
    }
  }
}
