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
  readonly bytes: number;
  readonly mostBytes: number;
};

/** Room for some forty snapshots of a board of 250 parts on the coarse grid. */
const USUAL_BYTES = 96e6;

function bytesOf(key: string, { arrays, faces }: Snapshot): number {
  const numbers = arrays.reduce((sum, array) => sum + array.byteLength, faces?.byteLength ?? 0);
  return numbers + key.length * 2;
}

export function createRunMemory(mostBytes = USUAL_BYTES): RunMemory {
  // A Map remembers the order in which its keys were put in: the first one was used longest ago.
  const kept = new Map<string, Snapshot>();
  let bytes = 0;
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
    get bytes() {
      return bytes;
    },
    mostBytes,
  };
}
