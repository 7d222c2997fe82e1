import type { Part } from '../../board.ts';
import type { Question, UpdateSource } from './types.ts';

/** A designator of a double -> the files' name of the part that it is, or 'leave': it stays as the ticket has it. */
export type Answers = Readonly<Record<string, string>>;
export const LEAVE = '';

export type Matched = {
  readonly pairs: readonly { readonly before: Part; readonly after: Part }[];
  readonly added: readonly Part[];
  readonly gone: readonly Part[];
  readonly questions: readonly Question[];
};

const SAME_PLACE_MM = 0.05;

/** Designators as people tell them apart: case and blanks do not. */
const plain = (refdes: string): string => refdes.trim().toUpperCase();

/** By exact name; else by the name without case, where that stands once on each side. */
export function matchNames(ticket: readonly Part[], files: readonly Part[]): Map<Part, Part> {
  const exact = new Map(files.map((part) => [part.refdes, part]));
  const pairs = new Map<Part, Part>();
  for (const part of ticket) {
    const same = exact.get(part.refdes);
    if (same) pairs.set(part, same);
  }
  const used = new Set(pairs.values());
  const [mine, theirs] = [
    onceEach(ticket.filter((part) => !pairs.has(part))),
    onceEach(files.filter((part) => !used.has(part))),
  ];
  for (const [name, part] of mine) {
    const other = theirs.get(name);
    if (part && other) pairs.set(part, other);
  }
  return pairs;
}

function onceEach(parts: readonly Part[]): Map<string, Part | null> {
  const once = new Map<string, Part | null>();
  for (const part of parts) once.set(plain(part.refdes), once.has(plain(part.refdes)) ? null : part);
  return once;
}

/**
 * Which part of the files is which of the ticket. `files`: in the ticket's frame. A designator that the files give to
 * several parts is matched by its place; where none lies there it is asked, unless it was answered.
 */
export function matchParts(
  ticket: readonly Part[],
  files: readonly Part[],
  doubles: UpdateSource['told']['doubles'],
  answers: Answers,
): Matched {
  const doubled = new Set(doubles.flatMap(({ all }) => all));
  const single = (parts: readonly Part[]) => parts.filter((part) => !doubled.has(part.refdes));
  const pairs = matchNames(single(ticket), single(files));
  const byName = (parts: readonly Part[]) => new Map(parts.map((part) => [part.refdes, part]));
  const [mineByName, theirsByName] = [byName(ticket), byName(files)];
  const questions: Question[] = [];
  const held = new Set<Part>();
  for (const { all } of doubles) {
    const mine = all.flatMap((name) => mineByName.get(name) ?? []);
    const theirs = all.flatMap((name) => theirsByName.get(name) ?? []);
    const open = matchDoubles(mine, theirs, pairs, answers);
    const taken = new Set(mine.map((part) => pairs.get(part)));
    const left = theirs.filter((part) => !taken.has(part));
    for (const part of open) questions.push({ part, candidates: left });
    if (open.length > 0) for (const part of left) held.add(part);
  }
  const asked = new Set(questions.map(({ part }) => part));
  const used = new Set(pairs.values());
  return {
    pairs: ticket.flatMap((before) => {
      const after = pairs.get(before);
      return after ? [{ before, after }] : [];
    }),
    added: files.filter((part) => !used.has(part) && !held.has(part)),
    gone: ticket.filter((part) => !pairs.has(part) && !asked.has(part)),
    questions,
  };
}

/** Pairs what lies at one place or was answered; returns the parts that stay open. */
function matchDoubles(
  mine: readonly Part[],
  theirs: readonly Part[],
  pairs: Map<Part, Part>,
  answers: Answers,
): Part[] {
  const free = new Set(theirs);
  const take = (part: Part, other: Part | undefined): boolean => {
    if (!other || !free.delete(other)) return false;
    pairs.set(part, other);
    return true;
  };
  const unanswered = mine.filter(
    (part) =>
      !take(
        part,
        theirs.find((other) => other.refdes === answers[part.refdes]),
      ),
  );
  return unanswered.filter((part) => {
    if (answers[part.refdes] === LEAVE) return true;
    const [there, ...more] = [...free].filter((other) => samePlace(part, other));
    return more.length > 0 || !take(part, there);
  });
}

export function samePlace(a: Part, b: Part): boolean {
  return a.side === b.side && Math.abs(a.x - b.x) <= SAME_PLACE_MM && Math.abs(a.y - b.y) <= SAME_PLACE_MM;
}
