/**
 * The one binary format of both carriers: `HMF1`, length of the header (uint32, little endian), the header as JSON, zeros up to a
 * multiple of 8, then the arrays one after the other, each on a multiple of 8. The header holds the value with null in the place of
 * each array and of each number that JSON has no word for; their paths stand beside it.
 */
const MAGIC = [0x48, 0x4d, 0x46, 0x31];
const PREFIX_BYTES = 8;
const ALIGNMENT = 8;
const DEEPEST = 200;

const ARRAY_TYPES = {
  uint8: Uint8Array,
  int8: Int8Array,
  uint16: Uint16Array,
  int16: Int16Array,
  uint32: Uint32Array,
  int32: Int32Array,
  float32: Float32Array,
  float64: Float64Array,
} as const;
type ArrayType = keyof typeof ARRAY_TYPES;
type TypedArray = InstanceType<(typeof ARRAY_TYPES)[ArrayType]>;
const UNSAID_NUMBERS = { NaN: Number.NaN, Infinity: Number.POSITIVE_INFINITY, '-Infinity': Number.NEGATIVE_INFINITY };
type UnsaidNumber = keyof typeof UNSAID_NUMBERS;

type Path = (string | number)[];
type Header = {
  value: unknown;
  arrays: { path: Path; type: ArrayType; length: number }[];
  numbers: { path: Path; is: UnsaidNumber }[];
};

const aligned = (bytes: number): number => Math.ceil(bytes / ALIGNMENT) * ALIGNMENT;

/** A value of plain objects, arrays and typed arrays as one frame. Properties that are undefined are left out, as in JSON. */
export function encodeFrame(value: unknown): Uint8Array<ArrayBuffer> {
  const header: Header = { value: null, arrays: [], numbers: [] };
  const contents: TypedArray[] = [];
  header.value = withoutArrays(value, [], header, contents);
  const text = new TextEncoder().encode(JSON.stringify(header));
  let size = aligned(PREFIX_BYTES + text.byteLength);
  for (const array of contents) size += aligned(array.byteLength);
  const frame = new Uint8Array(size);
  frame.set(MAGIC);
  new DataView(frame.buffer).setUint32(4, text.byteLength, true);
  frame.set(text, PREFIX_BYTES);
  let offset = aligned(PREFIX_BYTES + text.byteLength);
  for (const array of contents) {
    frame.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), offset);
    offset += aligned(array.byteLength);
  }
  return frame;
}

/**
 * The value without what JSON cannot say, which goes into the header and `contents`. What holds none of that is handed on
 * as it is: most of a board of 3,000 parts. `path` is one list that grows and shrinks on the way.
 */
function withoutArrays(value: unknown, path: Path, header: Header, contents: TypedArray[]): unknown {
  if (path.length > DEEPEST) throw new RangeError('a frame takes no value nested that deep');
  if (typeof value === 'number' && !Number.isFinite(value)) {
    header.numbers.push({ path: [...path], is: String(value) as UnsaidNumber });
    return null;
  }
  if (typeof value !== 'object' || value === null) return value;
  if (ArrayBuffer.isView(value)) {
    const array = value as TypedArray;
    header.arrays.push({ path: [...path], type: typeOf(array), length: array.length });
    contents.push(array);
    return null;
  }
  const said = (key: string | number, item: unknown) => {
    path.push(key);
    const without = withoutArrays(item, path, header, contents);
    path.pop();
    return without;
  };
  if (Array.isArray(value)) {
    const items = value.map((item, index) => said(index, item));
    return items.every((item, index) => item === value[index]) ? value : items;
  }
  const entries = Object.entries(value);
  const copy = entries.map(([key, item]): [string, unknown] => [key, said(key, item)]);
  return copy.every(([, item], index) => item === entries[index]![1]) ? value : Object.fromEntries(copy);
}

function typeOf(array: ArrayBufferView): ArrayType {
  const found = Object.entries(ARRAY_TYPES).find(([, kind]) => array instanceof kind);
  if (!found) throw new TypeError('a frame takes no array of this kind');
  return found[0] as ArrayType;
}

/**
 * The value of a frame; its arrays are views on the frame's own memory where that is aligned.
 * Null for bytes that are no frame, whatever is wrong with them.
 */
export function decodeFrame(bytes: Uint8Array): { value: unknown } | null {
  try {
    return decode(bytes.byteOffset % ALIGNMENT === 0 ? bytes : bytes.slice());
  } catch {
    return null;
  }
}

function decode(bytes: Uint8Array): { value: unknown } | null {
  if (bytes.byteLength < PREFIX_BYTES || MAGIC.some((byte, index) => bytes[index] !== byte)) return null;
  const headerBytes = new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true);
  let offset = aligned(PREFIX_BYTES + headerBytes);
  if (offset > bytes.byteLength) return null;
  const text = new TextDecoder('utf-8', { fatal: true });
  const header = JSON.parse(text.decode(bytes.subarray(PREFIX_BYTES, PREFIX_BYTES + headerBytes))) as Header;
  const holder = { value: header.value };
  for (const { path, is } of header.numbers) putAt(holder, path, UNSAID_NUMBERS[is]);
  for (const { path, type, length } of header.arrays) {
    const array = new ARRAY_TYPES[type](bytes.buffer as ArrayBuffer, bytes.byteOffset + offset, length);
    putAt(holder, path, array);
    offset += aligned(array.byteLength);
    if (offset > bytes.byteLength) return null;
  }
  return offset === bytes.byteLength ? holder : null;
}

/** Puts a value where the header holds a null. Own properties only, so that no path reaches a prototype. */
function putAt(holder: { value: unknown }, path: Path, value: unknown): void {
  let container: Record<string | number, unknown> = holder;
  let key: string | number = 'value';
  for (const step of path) {
    container = container[key] as Record<string | number, unknown>;
    if (typeof container !== 'object' || container === null || !Object.hasOwn(container, step))
      throw new RangeError('no such place');
    key = step;
  }
  if (container[key] !== null) throw new RangeError('the place is taken');
  container[key] = value;
}
