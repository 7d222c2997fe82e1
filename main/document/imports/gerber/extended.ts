import { buildAperture, parseDefinition } from './aperture.ts';
import { apertureFunctionOf, applyAttribute, parseAttribute } from './attributes.ts';
import { strokeWidth } from './draw.ts';
import { placeObject } from './place.ts';
import {
  addObjects,
  type CoordinateFormat,
  mayCopy,
  NO_TRANSFORM,
  note,
  type ReaderState,
  unitScale,
} from './state.ts';

const INCH_MM = 25.4;
const MAX_NESTING = 32;

/** Executes one extended command, the text between two `%`. */
export function executeExtended(state: ReaderState, blocks: readonly string[], line: number): void {
  state.commands++;
  if (blocks[0].startsWith('AM')) {
    state.macros.set(blocks[0].slice(2).trim(), blocks.slice(1));
    return;
  }
  for (const block of blocks) if (block !== '') executeBlock(state, block, line);
}

function executeBlock(state: ReaderState, block: string, line: number): void {
  const code = block.slice(0, 2);
  switch (code) {
    case 'FS':
      setFormat(state, block, line);
      return;
    case 'MO':
      state.mmPerUnit = block.slice(2, 4) === 'IN' ? INCH_MM : 1;
      return;
    case 'AD':
      defineAperture(state, block, line);
      return;
    case 'AB':
      applyBlock(state, block, line);
      return;
    case 'SR':
      stepAndRepeat(state, block, line);
      return;
    case 'LP':
      state.dark = block[2] !== 'C';
      return;
    case 'LM':
    case 'LR':
    case 'LS':
      loadTransform(state, code, block.slice(2).trim());
      return;
    case 'TF':
    case 'TA':
    case 'TO':
    case 'TD': {
      const attribute = parseAttribute(block);
      if (attribute) applyAttribute(state.attributes, attribute);
      return;
    }
    default:
      oldCommand(state, block, line);
  }
}

/** `FSLAX46Y46` (section 4.2.2); `T` instead of `L` and `I` instead of `A` are deprecated (section 8.2.1). */
function setFormat(state: ReaderState, block: string, line: number): void {
  const match = /^FS([LTD]?)([AI]?)(?:N\d+)?(?:G\d+)?X(\d)(\d)Y(\d)(\d)/.exec(block);
  if (!match) {
    note(state, 'unknownCommand', block.slice(0, 40), line);
    return;
  }
  const omitted: CoordinateFormat['omitted'] = match[1] === 'T' ? 'trailing' : 'leading';
  state.incremental = match[2] === 'I';
  state.formatX = { integers: Number(match[3]), decimals: Number(match[4]), omitted };
  state.formatY = { integers: Number(match[5]), decimals: Number(match[6]), omitted };
}

function defineAperture(state: ReaderState, block: string, line: number): void {
  const definition = parseDefinition(block);
  const built = definition && buildAperture(definition, state.macros, unitScale(state, line));
  if (!definition || !built) {
    note(state, 'unknownCommand', block.slice(0, 40), line);
    return;
  }
  const shape = { kind: 'shape' as const, discs: built.discs, widthMm: built.widthMm };
  const withWidth = { ...shape, widthMm: strokeWidth(shape), function: apertureFunctionOf(state.attributes) };
  state.apertures.set(definition.code, withWidth);
  state.shapeCache.delete(definition.code);
}

function loadTransform(state: ReaderState, code: string, value: string): void {
  const { transform } = state;
  if (code === 'LM') state.transform = { ...transform, mirrorX: value.includes('X'), mirrorY: value.includes('Y') };
  const number = Number(value);
  if (code === 'LR' && Number.isFinite(number)) state.transform = { ...transform, degrees: number };
  if (code === 'LS' && number > 0) state.transform = { ...transform, scale: number };
  state.shapeCache.clear();
}

/** `ABD12` opens a block aperture, `AB` closes it (section 4.11). */
function applyBlock(state: ReaderState, block: string, line: number): void {
  const match = /^ABD0*(\d+)/.exec(block);
  if (match) {
    if (tooDeep(state, line)) return;
    state.open.push({ kind: 'block', outer: state.objects, code: Number(match[1]) });
    state.objects = [];
    return;
  }
  const open = state.open.pop();
  if (open?.kind !== 'block') {
    note(state, 'unknownCommand', 'AB', line);
    if (open) state.open.push(open);
    return;
  }
  state.apertures.set(open.code, { kind: 'block', objects: state.objects });
  state.objects = open.outer;
}

function tooDeep(state: ReaderState, line: number): boolean {
  if (state.open.length < MAX_NESTING) return false;
  state.failure ??= { reason: 'nestedTooDeep', line, detail: String(MAX_NESTING) };
  return true;
}

/** `SRX2Y3I5J4` opens a block to repeat, `SR` ends it (section 4.12); a new one ends the one before. */
function stepAndRepeat(state: ReaderState, block: string, line: number): void {
  closeRepeat(state, line);
  const match = /^SRX(\d+)Y(\d+)(?:I([\d.+-]+))?(?:J([\d.+-]+))?/.exec(block);
  if (!match) return;
  const countX = Number(match[1]);
  const countY = Number(match[2]);
  if ((countX <= 1 && countY <= 1) || tooDeep(state, line)) return;
  const scale = unitScale(state, line);
  const stepX = Number(match[3] ?? 0) * scale;
  const stepY = Number(match[4] ?? 0) * scale;
  state.open.push({ kind: 'repeat', outer: state.objects, countX, countY, stepX, stepY });
  state.objects = [];
}

/** Copies the repeated objects to every step; called at `SR`, at the next `SR...` and at the end of the file. */
export function closeRepeat(state: ReaderState, line: number): void {
  const open = state.open.at(-1);
  if (open?.kind !== 'repeat') return;
  state.open.pop();
  const objects = state.objects;
  state.objects = open.outer;
  state.objectCount -= objects.length;
  if (!mayCopy(state, objects.length * open.countX * open.countY, line)) return;
  for (let column = 0; column < open.countX; column++) {
    for (let row = 0; row < open.countY; row++) {
      const at = { x: column * open.stepX, y: row * open.stepY };
      const copies = objects.map((object) => placeObject(object, at, NO_TRANSFORM, true));
      addObjects(state, copies, line);
    }
  }
}

/** Deprecated commands (section 8.2): harmless ones pass; those that would move or mirror the image are told. */
function oldCommand(state: ReaderState, block: string, line: number): void {
  const neutral =
    /^(IPPOS|IN|LN|AS(AXBY)?$|MIA0B0|OF(A0(\.0*)?)?(B0(\.0*)?)?$|SF(A1(\.0*)?)?(B1(\.0*)?)?$|IR0|ICAS)/.test(block);
  if (neutral) return;
  const known = /^(IPNEG|AS|MI|OF|SF|IR|IF|KO|PF|RO)/.test(block);
  note(state, known ? 'unsupportedCommand' : 'unknownCommand', block.slice(0, 40), line);
}
