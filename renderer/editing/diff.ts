import type { DocumentPatch } from '../../shared-types/contract.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';

type Path = (string | number)[];
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/**
 * The patches that lead from one document to the next. Documents are frozen and share what did not change, so equal
 * references are passed over and the cost goes with the size of the change, not of the board.
 * Patches of a list run so that each index holds at the moment its patch is applied.
 */
export function diffDocuments(from: TicketDocument, to: TicketDocument): DocumentPatch[] {
  const patches: DocumentPatch[] = [];
  diffValue(from, to, [], patches);
  return patches;
}

function diffValue(from: unknown, to: unknown, path: Path, patches: DocumentPatch[]): void {
  if (Object.is(from, to)) return;
  if (Array.isArray(from) && Array.isArray(to)) diffList(from, to, path, patches);
  else if (isObject(from) && isObject(to) && !Array.isArray(from) && !Array.isArray(to))
    diffFields(from, to, path, patches);
  else patches.push({ op: 'replace', path, value: to });
}

function diffFields(from: Record<string, unknown>, to: Record<string, unknown>, path: Path, patches: DocumentPatch[]) {
  for (const name of Object.keys(from)) if (!(name in to)) patches.push({ op: 'remove', path: [...path, name] });
  for (const [name, value] of Object.entries(to)) {
    if (name in from) diffValue(from[name], value, [...path, name], patches);
    else patches.push({ op: 'add', path: [...path, name], value });
  }
}

function diffList(from: readonly unknown[], to: readonly unknown[], path: Path, patches: DocumentPatch[]): void {
  const shorter = Math.min(from.length, to.length);
  let head = 0;
  while (head < shorter && Object.is(from[head], to[head])) head++;
  let tail = 0;
  while (tail < shorter - head && Object.is(from[from.length - 1 - tail], to[to.length - 1 - tail])) tail++;
  const paired = shorter - head - tail;
  for (let index = head; index < head + paired; index++) diffValue(from[index], to[index], [...path, index], patches);
  for (let index = from.length - tail - 1; index >= head + paired; index--)
    if (from.length > to.length) patches.push({ op: 'remove', path: [...path, index] });
  for (let index = head + paired; index < to.length - tail; index++)
    if (to.length > from.length) patches.push({ op: 'add', path: [...path, index], value: to[index] });
}
