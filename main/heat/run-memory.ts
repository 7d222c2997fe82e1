import type { FootprintCache } from './simulation.ts';
import type { Snapshot } from './snapshot.ts';

/**
 * Numbers of heat runs at their segments' ends, kept from one evaluation to the next. Whoever evaluates often makes
 * one and hands it in; its keys say everything that the numbers depend on, so an edit elsewhere finds them again.
 */
export type RunMemory = {
  /** The numbers kept under a key; they count as used last. */
  find: (key: string) => Snapshot | null;
  has: (key: string) => boolean;
  /** Keeps numbers; those used longest ago go when there is no room. Numbers larger than all room are not kept. */
  keep: (key: string, snapshot: Snapshot) => void;
  /** Nozzle footprints for one grid and nozzle, which the key says; those used longest ago go. */
  footprints: (key: string) => FootprintCache;
  readonly bytes: number;
  readonly mostBytes: number;
};

/** Room for the three runs of a board of 3,000 parts on the coarse grid before their gas, and some numbers after it. */
const USUAL_BYTES = 384e6;

/**
 * Share of the room for numbers from before the gas: a gesture at the site asks for the same ones again and again,
 * while those from after it come anew with every place and would push them out.
 */
const BEFORE_GAS_SHARE = 0.75;

/** Footprints kept from one evaluation to the next: some for each site of a plan. */
const MOST_FOOTPRINTS = 8;

function bytesOf(key: string, { arrays, series, faces }: Snapshot): number {
  const numbers = [...arrays, ...series].reduce((sum, array) => sum + array.byteLength, faces?.byteLength ?? 0);
  return numbers + key.length * 2;
}

/** Numbers within their own room. A Map remembers the order in which its keys were put in: the first was used longest ago. */
function createShelf(mostBytes: number) {
  const kept = new Map<string, Snapshot>();
  let bytes = 0;
  const drop = (key: string) => {
    const snapshot = kept.get(key);
    if (!snapshot) return;
    kept.delete(key);
    bytes -= bytesOf(key, snapshot);
  };
  return {
    find(key: string): Snapshot | null {
      const snapshot = kept.get(key);
      if (!snapshot) return null;
      kept.delete(key);
      kept.set(key, snapshot);
      return snapshot;
    },
    has: (key: string) => kept.has(key),
    keep(key: string, snapshot: Snapshot) {
      drop(key);
      const size = bytesOf(key, snapshot);
      if (size > mostBytes) return;
      for (const oldest of kept.keys()) {
        if (bytes + size <= mostBytes) break;
        drop(oldest);
      }
      kept.set(key, snapshot);
      bytes += size;
    },
    bytes: () => bytes,
  };
}

export function createRunMemory(mostBytes = USUAL_BYTES): RunMemory {
  const beforeGas = createShelf(mostBytes * BEFORE_GAS_SHARE);
  const later = createShelf(mostBytes * (1 - BEFORE_GAS_SHARE));
  let footprintKey = '';
  let footprints: FootprintCache = new Map();
  return {
    find: (key) => beforeGas.find(key) ?? later.find(key),
    has: (key) => beforeGas.has(key) || later.has(key),
    keep: (key, snapshot) => (snapshot.faces ? beforeGas : later).keep(key, snapshot),
    footprints(key) {
      if (key !== footprintKey) footprints = new Map();
      footprintKey = key;
      for (const oldest of [...footprints.keys()].slice(0, -MOST_FOOTPRINTS)) footprints.delete(oldest);
      return footprints;
    },
    get bytes() {
      return beforeGas.bytes() + later.bytes();
    },
    mostBytes,
  };
}
