import type { ObjectAttributes } from './types.ts';

/** `TF`, `TA`, `TO` or `TD` with its fields; from an extended command or from a comment (`G04 #@! TA...`). */
export interface AttributeCommand {
  readonly command: 'TF' | 'TA' | 'TO' | 'TD';
  readonly name: string;
  readonly fields: readonly string[];
}

/** Gerber format specification, sections 5.1 (attributes) and 5.1.1 (attributes in comments). */
export function parseAttribute(text: string): AttributeCommand | null {
  const match = /^(TF|TA|TO|TD)([^,]*)(?:,(.*))?$/s.exec(text);
  if (!match) return null;
  const fields = match[3] === undefined ? [] : match[3].split(',').map(unescapeField);
  return { command: match[1] as AttributeCommand['command'], name: match[2].trim(), fields };
}

/** The attribute text inside a `G04` comment, or null for an ordinary comment. */
export function attributeInComment(word: string): string | null {
  const match = /^G0?4\s*#@!\s*(T[FAOD].*)$/s.exec(word);
  return match ? match[1].trim() : null;
}

/** Characters may be written as `\u002C` (section 3.4.4). */
function unescapeField(field: string): string {
  return field.replace(/\\u([0-9A-Fa-f]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** The attribute dictionaries of a reader. */
export interface AttributeState {
  readonly file: Map<string, readonly string[]>;
  readonly aperture: Map<string, readonly string[]>;
  readonly object: Map<string, readonly string[]>;
  /** The object attributes in force: one shared value until they change; null when it must be made anew. */
  current: ObjectAttributes | null;
}

export function newAttributes(): AttributeState {
  return { file: new Map(), aperture: new Map(), object: new Map(), current: null };
}

export function applyAttribute(state: AttributeState, { command, name, fields }: AttributeCommand): void {
  state.current = null;
  if (command === 'TF') state.file.set(name, fields);
  else if (command === 'TA') state.aperture.set(name, fields);
  else if (command === 'TO') state.object.set(name, fields);
  else deleteAttribute(state, name);
}

function deleteAttribute(state: AttributeState, name: string): void {
  if (name === '') {
    state.aperture.clear();
    state.object.clear();
  } else if (!state.object.delete(name)) state.aperture.delete(name);
}

/** The function that apertures defined, and regions drawn, now get. */
export function apertureFunctionOf(state: AttributeState): string | undefined {
  return state.aperture.get('.AperFunction')?.join(',');
}

/** Object attributes now in force, without an aperture's function. */
export function objectAttributesOf(state: AttributeState): ObjectAttributes {
  if (state.current === null) {
    const pin = state.object.get('.P');
    const refdes = pin?.[0] ?? state.object.get('.C')?.[0];
    state.current = refdes === undefined ? {} : { refdes, pin: pin?.[1], pinName: pin?.[2] };
  }
  return state.current;
}
