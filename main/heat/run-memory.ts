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

/** Room for some forty snapshots of a board of 250 parts on the coarse grid. */
const USUAL_BYTES = 96e6;

/** Footprints kept from one evaluation to the next: some for each site of a plan. */
const MOST_FOOTPRINTS = 8;

function bytesOf(key: string, { arrays, faces }: Snapshot): number {
  const numbers = arrays.reduce((sum, array) => sum + array.byteLength, faces?.byteLength ?? 0);
  return numbers + key.length * 2;
}

export function createRunMemory(mostBytes = USUAL_BYTES): RunMemory {
  // A Map remembers the order in which its keys were put in: the first one was used longest ago.
  const kept = new Map<string, Snapshot>();
  let bytes = 0;
  let footprintKey = '';
  let footprints: FootprintCache = new Map();
  const drop = (key: string, snapshot: Snapshot) => {
    kept.delete(key);
    bytes -= bytesOf(key, snapshot);
  };
  return {
    find(key) {
      const snapshot = kept.get(key);
      if (!snapshot) return null;
      kept.delete(key);
      kept.set(key, snapshot);
      return snapshot;
    },
    has: (key) => kept.has(key),
    keep(key, snapshot) {
      const size = bytesOf(key, snapshot);
      const before = kept.get(key);
      if (before) drop(key, before);
      if (size > mostBytes) return;
      for (const [oldest, numbers] of kept) {
        if (bytes + size <= mostBytes) break;
        drop(oldest, numbers);
      }
      kept.set(key, snapshot);
      bytes += size;
    },
    footprints(key) {
      if (key !== footprintKey) footprints = new Map();
      footprintKey = key;
      for (const oldest of [...footprints.keys()].slice(0, -MOST_FOOTPRINTS)) footprints.delete(oldest);
      return footprints;
    },
    get bytes() {
      return bytes;
    },
    mostBytes,
  };
}
