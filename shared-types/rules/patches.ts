import { applyPatches, enablePatches, type Patch } from 'immer';
import type { DocumentPatch } from '../contract.ts';
import type { TicketDocument } from '../plan.ts';

enablePatches();

/**
 * The document after the patches; the given one stays as it is. Window and main both use this.
 * Throws when a path does not exist: the caller then asks for the whole document.
 */
export function applyDocumentPatches(document: TicketDocument, patches: readonly DocumentPatch[]): TicketDocument {
  return applyPatches(document, patches as Patch[]);
}
