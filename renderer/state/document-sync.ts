import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem, Result } from '../../shared-types/problem.ts';
import { diffDocuments } from '../editing/diff.ts';

/** How the sync reaches main. */
export type SyncPort = {
  patch(base: number, patches: DocumentPatch[]): Promise<Result<{ revision: number; gap: boolean }>>;
  replace(document: TicketDocument): Promise<Result<{ revision: number }>>;
};

export type SyncListener = {
  /** Main holds what was sent under this revision; `newest`: nothing changed since. */
  sent(revision: number, patches: readonly DocumentPatch[], newest: boolean): void;
  /** Main did not take the document; it is still in the window. */
  refused(problem: Problem): void;
};

export type DocumentSync = {
  /** The document changed; it is sent at once, or within `SOON_MS` while a gesture runs. */
  changed(document: TicketDocument, when: 'now' | 'soon'): void;
  /** Resolves once main holds the newest document, or refused it. */
  flush(): Promise<void>;
  stop(): void;
};

/** Least time between two sendings of a running gesture. */
export const SOON_MS = 60;

/**
 * Keeps main's copy of the document up with the window's. What is sent is the difference between the document main
 * holds and the newest one, so nothing is lost or sent twice however edits, undo and gestures follow one another;
 * one sending is under way at a time. On a gap main gets the whole document.
 */
export function createDocumentSync(
  port: SyncPort,
  listener: SyncListener,
  start: { revision: number; document: TicketDocument },
): DocumentSync {
  let held = start.document;
  let base = start.revision;
  let wanted = start.document;
  let running: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let stopped = false;

  async function sendNewest(): Promise<boolean> {
    const target = wanted;
    const patches = diffDocuments(held, target);
    if (patches.length > 0) {
      const answer = await sendPatches(port, base, patches, target);
      if (stopped) return false;
      if (!answer.ok) {
        listener.refused(answer.problem);
        return false;
      }
      base = answer.value.revision;
      listener.sent(base, patches, target === wanted);
    }
    held = target;
    return true;
  }

  async function pump(): Promise<void> {
    while (!stopped && held !== wanted) if (!(await sendNewest())) break;
  }

  function begin(): Promise<void> {
    if (timer) clearTimeout(timer);
    timer = null;
    running ??= pump().finally(() => {
      running = null;
    });
    return running;
  }

  return {
    changed(document, when) {
      wanted = document;
      if (when === 'now') void begin();
      else timer ??= setTimeout(() => void begin(), SOON_MS);
    },
    async flush() {
      await begin();
      if (held !== wanted && !stopped) await begin();
    },
    stop() {
      stopped = true;
      if (timer) clearTimeout(timer);
    },
  };
}

async function sendPatches(
  port: SyncPort,
  base: number,
  patches: DocumentPatch[],
  document: TicketDocument,
): Promise<Result<{ revision: number }>> {
  const answer = await port.patch(base, patches);
  return answer.ok && answer.value.gap ? port.replace(document) : answer;
}
