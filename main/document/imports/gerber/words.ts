import { applyAttribute, attributeInComment, parseAttribute } from './attributes.ts';
import { readPoint, splitWord, type WordFields } from './coordinates.ts';
import { beginRegion, endRegion, operate } from './draw.ts';
import { note, type ReaderState } from './state.ts';

/** Executes one word: G and M codes, aperture selection, coordinates with D01, D02 or D03. */
export function executeWord(state: ReaderState, word: string, line: number): void {
  if (/^G0?4(?!\d)/.test(word)) {
    const attribute = attributeInComment(word);
    const command = attribute === null ? null : parseAttribute(attribute);
    if (command) applyAttribute(state.attributes, command);
    return;
  }
  const fields = splitWord(word);
  if (fields === null) {
    note(state, 'unknownCommand', word.slice(0, 40), line);
    return;
  }
  state.commands++;
  const operation = applyCodes(state, fields, line);
  const moves = fields.codes.some(({ letter }) => letter === 'X' || letter === 'Y' || letter === 'I' || letter === 'J');
  if (operation === null && !moves) return;
  if (operation !== null) state.operation = operation;
  // A coordinate without a D code repeats the last operation: deprecated, but old files do it (section 8.1).
  const effective = operation ?? state.operation;
  if (effective === null) {
    note(state, 'unknownCommand', word.slice(0, 40), line);
    return;
  }
  const { point, offset } = readPoint(state, fields, line);
  operate(state, effective, point, offset, line);
}

function applyCodes(state: ReaderState, { codes }: WordFields, line: number): 1 | 2 | 3 | null {
  let operation: 1 | 2 | 3 | null = null;
  for (const { letter, value } of codes) {
    if (letter === 'G') applyGCode(state, Number(value), line);
    else if (letter === 'M') state.ended ||= Number(value) === 2 || Number(value) === 0;
    else if (letter === 'D') {
      const code = Number(value);
      if (code === 1 || code === 2 || code === 3) operation = code;
      else if (code >= 10) state.apertureCode = code;
      else note(state, 'unknownCommand', `D${value}`, line);
    } else if (!'XYIJN'.includes(letter)) note(state, 'unknownCommand', `${letter}${value}`, line);
  }
  return operation;
}

const INCH_MM = 25.4;

function applyGCode(state: ReaderState, code: number, line: number): void {
  switch (code) {
    case 1:
    case 10:
    case 11:
    case 12:
      state.interpolation = 'line';
      return;
    case 2:
      state.interpolation = 'clockwise';
      return;
    case 3:
      state.interpolation = 'counterclockwise';
      return;
    case 36:
      beginRegion(state);
      return;
    case 37:
      endRegion(state, line);
      return;
    case 54:
    case 55:
      return;
    case 70:
      state.mmPerUnit ??= INCH_MM;
      return;
    case 71:
      state.mmPerUnit ??= 1;
      return;
    case 74:
      state.quadrant = 'single';
      return;
    case 75:
      state.quadrant = 'multi';
      return;
    case 90:
      state.incremental = false;
      return;
    case 91:
      state.incremental = true;
      return;
    default:
      note(state, 'unknownCommand', `G${code}`, line);
  }
}
