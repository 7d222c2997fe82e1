import { ADDRESSES_AT, ARRAYS_AT, NUMBERS_AT } from './assembly/slots.ts';
import { KERNEL_BYTES } from './kernel-bytes.ts';

/** The steps of a sub-step in WebAssembly; what they do stands beside their namesakes in `assembly/`. */
export type Kernels = Record<
  | 'faceRates'
  | 'entryFilms'
  | 'shieldEntries'
  | 'takeIn'
  | 'solveLines'
  | 'feedFaces'
  | 'solveCells'
  | 'giveBack'
  | 'addEnergy'
  | 'stepShadows'
  | 'filmsAtEnd'
  | 'foldSkins'
  | 'foldBodies'
  | 'settleMoment',
  () => void
> & { beginStep: (step: number) => void };

/** Gives arrays, zeroed, at the places where the kernels look for them (`assembly/slots.ts`). */
export type ArrayMaker = {
  /** @param lead numbers before the array's first that may be read; they are 0 */
  floats: (slot: number, length: number, lead?: number) => Float64Array;
  singles: (slot: number, length: number) => Float32Array;
  bytes: (slot: number, length: number) => Uint8Array;
  /** The same numbers in an array of the room; the array itself where there is no room to keep. */
  keep: <T extends Float64Array | Int32Array>(slot: number, array: T) => T;
};

/** Where a run's arrays lie: a memory that the kernels work in, or nowhere in particular. */
export type Room = {
  /** null: the steps are to be made in JavaScript. */
  kernels: Kernels | null;
  /** The kernels' table of numbers. */
  numbers: Float64Array;
  /** Gives the memory back: the next run that wants one takes it over, and this one's arrays are not to be touched again. */
  release: () => void;
};

type Workbench = { memory: WebAssembly.Memory; kernels: Kernels };

const PAGE = 65536;
const NUMBERS = (ARRAYS_AT - NUMBERS_AT) / 8;
/** Room to spare behind an array: kernels read two numbers at a time and write past the end of entries that are alone. */
const SPARE = 16;
/** Memories kept for later runs: as many as a ticket's heat runs usually are, and no more than this together. */
const MOST_FREE = 6;
const MOST_FREE_BYTES = 256e6;

const free: Workbench[] = [];
let compiled: WebAssembly.Module | null | undefined;

/** The kernels' module; null where there is no WebAssembly, or none that knows its vector instructions. */
function kernelModule(): WebAssembly.Module | null {
  if (compiled !== undefined) return compiled;
  try {
    compiled = new WebAssembly.Module(Uint8Array.from(atob(KERNEL_BYTES), (letter) => letter.charCodeAt(0)));
  } catch {
    compiled = null;
  }
  return compiled;
}

/** The smallest free memory that is large enough, else a new one; null where none can be had. */
function workbench(module: WebAssembly.Module, bytes: number): Workbench | null {
  const fitting = free.filter(({ memory }) => memory.buffer.byteLength >= bytes);
  const known = fitting.sort((a, b) => a.memory.buffer.byteLength - b.memory.buffer.byteLength)[0];
  if (known) {
    free.splice(free.indexOf(known), 1);
    new Uint8Array(known.memory.buffer, 0, bytes).fill(0);
    return known;
  }
  try {
    const memory = new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE) });
    const { exports } = new WebAssembly.Instance(module, { env: { memory } });
    return { memory, kernels: exports as unknown as Kernels };
  } catch {
    return null;
  }
}

function giveBack(bench: Workbench): void {
  free.push(bench);
  const bytes = () => free.reduce((sum, { memory }) => sum + memory.buffer.byteLength, 0);
  while (free.length > MOST_FREE || bytes() > MOST_FREE_BYTES) free.shift();
}

/** Bytes of the memories that wait for a run. */
export const freeBytes = (): number => free.reduce((sum, { memory }) => sum + memory.buffer.byteLength, 0);

const evenly = (bytes: number): number => Math.ceil(bytes / 16) * 16;

/** Lays arrays one behind the other into a buffer; without one it only counts, and the arrays are empty. */
function layer(buffer: ArrayBuffer | null) {
  const addresses = buffer && new Uint32Array(buffer, ADDRESSES_AT, (NUMBERS_AT - ADDRESSES_AT) / 4);
  let next = ARRAYS_AT;
  const take = (slot: number, bytes: number, leadBytes: number): number => {
    const address = evenly(next + leadBytes);
    next = evenly(address + bytes) + SPARE;
    if (addresses) addresses[slot] = address;
    return address;
  };
  const maker: ArrayMaker = {
    floats(slot, length, lead = 0) {
      const address = take(slot, length * 8, lead * 8);
      return buffer ? new Float64Array(buffer, address, length) : new Float64Array(0);
    },
    singles(slot, length) {
      const address = take(slot, length * 4, 0);
      return buffer ? new Float32Array(buffer, address, length) : new Float32Array(0);
    },
    bytes(slot, length) {
      const address = take(slot, length, 0);
      return buffer ? new Uint8Array(buffer, address, length) : new Uint8Array(0);
    },
    keep(slot, array) {
      const address = take(slot, array.byteLength, 0);
      if (!buffer) return array;
      const Kind = array.constructor as new (buffer: ArrayBuffer, offset: number, length: number) => typeof array;
      const kept = new Kind(buffer, address, array.length);
      kept.set(array);
      return kept;
    },
  };
  return { maker, end: () => next };
}

const PLAIN: ArrayMaker = {
  floats: (_slot, length) => new Float64Array(length),
  singles: (_slot, length) => new Float32Array(length),
  bytes: (_slot, length) => new Uint8Array(length),
  keep: (_slot, array) => array,
};

/**
 * Makes a run's arrays, in a memory of the kernels' where there is one.
 * @param make asks for every array, in any order; called twice: to count, then to lay them
 * @param plain true: in JavaScript, whatever there is
 */
export function layOut<T>(make: (maker: ArrayMaker) => T, plain: boolean): { arrays: T; room: Room } {
  const module = plain ? null : kernelModule();
  const counted = layer(null);
  if (module) make(counted.maker);
  const bench = module && workbench(module, counted.end());
  if (!bench) {
    const numbers = new Float64Array(NUMBERS);
    return { arrays: make(PLAIN), room: { kernels: null, numbers, release: () => undefined } };
  }
  const { buffer } = bench.memory;
  const numbers = new Float64Array(buffer, NUMBERS_AT, NUMBERS);
  let kept: Workbench | null = bench;
  const release = () => {
    if (kept) giveBack(kept);
    kept = null;
  };
  return { arrays: make(layer(buffer).maker), room: { kernels: bench.kernels, numbers, release } };
}
