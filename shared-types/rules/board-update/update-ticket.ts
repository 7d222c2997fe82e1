import type { Board, Part } from '../../board.ts';
import type { TicketDocument } from '../../plan.ts';
import { poseParts } from '../part-poses.ts';
import { freeRefdes } from '../refdes.ts';
import { type Decisions, takesAdded, takesAspect, takesCover, takesWhole } from './decide.ts';
import type { BoardChanges, PartAspect, PartChange } from './types.ts';

const MOST_SOURCE = 500;
const MOST_PARTS = 20_000;

/**
 * The ticket with the changes that were decided. Parts that stay keep everything that plan and technician say of them; what
 * lies on a part that moves (rework area, thermocouples) moves along. Of a part that is gone only the part goes: tags, sites
 * and straps go on naming it, and findings say so. `changes` must be those of this ticket.
 */
export function updateTicket(document: TicketDocument, changes: BoardChanges, decisions: Decisions): TicketDocument {
  const posed = posedAnew(document, changes, decisions);
  const board = {
    ...posed.board,
    ...boardFields(posed.board, changes, decisions),
    parts: partsOf(posed.board, changes, decisions),
    covers: coversOf(posed.board, changes, decisions),
  };
  return { ...posed, board: unanchored(board) };
}

/** Taken changes by designator. */
function takenOf(board: Board, { changed }: BoardChanges, decisions: Decisions) {
  return new Map(
    changed.map((change) => {
      const taken = change.aspects.filter((aspect) => takesAspect(board, change, aspect, decisions));
      return [change.refdes, { change, taken: new Set(taken) }] as const;
    }),
  );
}

function posedAnew(document: TicketDocument, changes: BoardChanges, decisions: Decisions): TicketDocument {
  const taken = takenOf(document.board, changes, decisions);
  return poseParts(document, (part) => {
    const found = taken.get(part.refdes);
    if (!found) return part;
    const { after } = found.change;
    const pose = {
      ...(found.taken.has('place') ? { x: after.x, y: after.y } : {}),
      ...(found.taken.has('turn') ? { turn: after.turn } : {}),
      ...(found.taken.has('side') ? { side: after.side } : {}),
    };
    return Object.keys(pose).length > 0 ? { ...part, ...pose } : part;
  });
}

function partsOf(board: Board, changes: BoardChanges, decisions: Decisions): Part[] {
  const taken = takenOf(board, changes, decisions);
  const covers = new Set(changes.covers.filter((change) => takesCover(change, decisions)).map(({ cover }) => cover.id));
  const off = new Set(changes.gone.map(({ refdes }) => refdes).filter((refdes) => !decisions.stay.includes(refdes)));
  const kept = board.parts
    .filter(({ refdes }) => !off.has(refdes) && !covers.has(refdes))
    .map((part) => {
      const found = taken.get(part.refdes);
      return found ? withData(part, found.change, found.taken) : part;
    });
  const names = new Set([...kept.map(({ refdes }) => refdes), ...board.covers.map(({ id }) => id), ...covers]);
  const added = changes.added
    .filter(({ refdes }) => takesAdded(refdes, decisions))
    .slice(0, Math.max(0, MOST_PARTS - kept.length))
    .map((part) => {
      const refdes = names.has(part.refdes) ? freeRefdes(part.refdes, names) : part.refdes;
      names.add(refdes);
      return refdes === part.refdes ? part : { ...part, refdes };
    });
  return [...kept, ...added];
}

/** Everything but the pose. A class that somebody confirmed stays; a guessed one follows package and value. */
function withData(part: Part, { before, after }: PartChange, taken: ReadonlySet<PartAspect>): Part {
  const { name, heightMm, ...body } = after.package;
  const next: Part = {
    ...part,
    package: {
      ...part.package,
      ...(taken.has('size') ? body : {}),
      ...(taken.has('package') ? { name } : {}),
      ...(taken.has('height') ? { heightMm } : {}),
    },
    ...(taken.has('value') ? { value: after.value } : {}),
    ...(taken.has('fitted') ? { fitted: after.fitted } : {}),
    ...(taken.has('pins') ? pinsOf(after) : {}),
  };
  if (taken.has('size') && !taken.has('pins') && part.pin1) next.pin1 = cornerKept(part, next);
  const tells = taken.has('package') || taken.has('size') || taken.has('value');
  if (tells && before.classGuessed && after.class !== 'unknown') next.class = after.class;
  return next;
}

const pinsOf = ({ pin1, pinCount, padAreaMm2 }: Part): Partial<Part> => ({
  ...(pin1 ? { pin1 } : {}),
  ...(pinCount === undefined ? {} : { pinCount }),
  ...(padAreaMm2 === undefined ? {} : { padAreaMm2 }),
});

/** A mark of pin 1 keeps its corner on a body of another size. */
function cornerKept({ pin1, package: was }: Part, { package: is }: Part): Part['pin1'] {
  return pin1 && { x: (pin1.x * is.lengthMm) / was.lengthMm, y: (pin1.y * is.widthMm) / was.widthMm };
}

function coversOf(board: Board, { covers }: BoardChanges, decisions: Decisions): Board['covers'] {
  const taken = covers.filter((change) => takesCover(change, decisions)).map(({ cover }) => cover);
  const known = new Set(board.covers.map(({ id }) => id));
  const byId = new Map(taken.map((cover) => [cover.id, cover]));
  return [...board.covers.map((cover) => byId.get(cover.id) ?? cover), ...taken.filter(({ id }) => !known.has(id))];
}

function boardFields(board: Board, changes: BoardChanges, decisions: Decisions): Partial<Board> {
  const takes = (key: 'outline' | 'fiducials' | 'layers' | 'revision') => takesWhole(board, changes, key, decisions);
  const { outline, fiducials, layers, revision, drawnFrom } = changes;
  const source = [board.source.drawnFrom, drawnFrom].filter(Boolean).join('; updated from ');
  return {
    ...(outline && takes('outline') ? outline : {}),
    ...(fiducials && takes('fiducials') ? { fiducials } : {}),
    ...(layers && takes('layers') ? { laminate: { ...board.laminate, layers } } : {}),
    ...(revision !== null && takes('revision') ? { revision } : {}),
    ...(drawnFrom && drawnFrom !== board.source.drawnFrom
      ? {
          source: {
            ...board.source,
            drawnFrom: source.length <= MOST_SOURCE ? source : drawnFrom.slice(0, MOST_SOURCE),
          },
        }
      : {}),
  };
}

/** A match point of a photo keeps its place; the part that it was taken from may be gone. */
function unanchored(board: Board): Board {
  const known = new Set(board.parts.map(({ refdes }) => refdes));
  const lost = (refdes: string | null) => refdes !== null && !known.has(refdes);
  if (!board.photos.some(({ pairs }) => pairs.some(({ refdes }) => lost(refdes)))) return board;
  return {
    ...board,
    photos: board.photos.map((photo) => ({
      ...photo,
      pairs: photo.pairs.map((pair) => (lost(pair.refdes) ? { ...pair, anchor: 'free', refdes: null } : pair)),
    })),
  };
}
