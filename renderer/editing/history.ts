import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { applyDocumentPatches } from '../../shared-types/rules/patches.ts';
import { diffDocuments } from './diff.ts';

/** One step of undo: a whole gesture, with the patches that do it and the patches that take it back. */
export type Step = { label: string; forward: readonly DocumentPatch[]; backward: readonly DocumentPatch[] };

/** Steps done and steps taken back, newest last. Selection never comes here. */
export type History = { done: readonly Step[]; undone: readonly Step[] };

export const emptyHistory: History = { done: [], undone: [] };

/** Steps kept; older ones are forgotten. */
const LONGEST = 500;

/** The history after an edit led from `before` to `after`. An edit that changed nothing is no step and keeps redo. */
export function record(history: History, label: string, before: TicketDocument, after: TicketDocument): History {
  const forward = diffDocuments(before, after);
  if (forward.length === 0) return history;
  const step = { label, forward, backward: diffDocuments(after, before) };
  return { done: [...history.done, step].slice(-LONGEST), undone: [] };
}

export type Travelled = { history: History; document: TicketDocument; label: string };

/** Takes the newest step back; null when there is none. */
export function undo(history: History, document: TicketDocument): Travelled | null {
  const step = history.done.at(-1);
  if (!step) return null;
  return {
    history: { done: history.done.slice(0, -1), undone: [...history.undone, step] },
    document: applyDocumentPatches(document, step.backward),
    label: step.label,
  };
}

/** Does the step again that was taken back last; null when there is none. */
export function redo(history: History, document: TicketDocument): Travelled | null {
  const step = history.undone.at(-1);
  if (!step) return null;
  return {
    history: { done: [...history.done, step], undone: history.undone.slice(0, -1) },
    document: applyDocumentPatches(document, step.forward),
    label: step.label,
  };
}
