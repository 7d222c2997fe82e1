import type { Board, Cover, Part } from '../../board.ts';
import { rectangleCorners } from '../../geometry.ts';
import { boardIn } from '../board-frame.ts';
import { alignBoards, tidy } from './align.ts';
import { outlineChange } from './contours.ts';
import { partChange, toldOfParts } from './differ.ts';
import { type Answers, matchParts, samePlace } from './match.ts';
import type { Alignment, BoardChanges, CoverChange, UpdateSource } from './types.ts';

/**
 * What files would change of a ticket's board. Parts are matched by their designators; where the files tell nothing (a side
 * without placements, no outline, no turns) the ticket's stays and counts as untold. Nothing is changed by comparing.
 */
export function compareBoards(
  ticket: Board,
  source: UpdateSource,
  alignment: Alignment = alignBoards(ticket, source),
  answers: Answers = {},
): BoardChanges {
  const { told } = source;
  const files = boardIn(alignment.frame, source.board);
  const coverNames = new Set(ticket.covers.map(({ id }) => id));
  const listed = files.parts.map(tidyPart).filter((part) => !coverNames.has(part.refdes));
  const covered = new Set(files.covers.map(({ id }) => id));
  const matched = matchParts(
    ticket.parts.filter((part) => !covered.has(part.refdes)),
    listed,
    told.doubles,
    answers,
  );
  const toldParts = toldOfParts(source);
  const compared = matched.pairs.map(({ before, after }) => partChange(before, after, toldParts));
  const changed = compared.flatMap(({ change }) => (change.aspects.length > 0 ? [change] : []));
  const sides = new Set(alignment.frame.over ? told.sides.map((side) => OTHER[side]) : told.sides);
  // Files of pads alone pass over what has one pad: marks, test points, fixings.
  const gone = matched.gone.filter(({ side, pinCount = 0 }) => sides.has(side) && (told.turns || pinCount > 1));
  return {
    alignment,
    common: matched.pairs.length,
    same: matched.pairs.length - changed.length,
    changed,
    added: matched.added,
    gone,
    renamed: renamedParts(gone, matched.added),
    untold: matched.gone.length - gone.length,
    questions: matched.questions,
    atPin1: compared.flatMap(({ change, atPin1 }) => (atPin1 ? [change.refdes] : [])),
    ...(told.outline ? outlineChange(ticket, files) : { outline: null, cutouts: { added: 0, gone: 0 } }),
    covers: files.covers.flatMap((cover) => coverChange(ticket, tidyCover(cover))),
    fiducials: otherFiducials(ticket, files) ? files.fiducials.map(tidyPoint) : null,
    layers:
      told.layers && files.laminate.layers.length !== ticket.laminate.layers.length ? files.laminate.layers : null,
    revision: files.revision !== '' && files.revision !== ticket.revision ? files.revision : null,
    drawnFrom: files.source.drawnFrom,
    unplaced: told.unplaced.filter((refdes) => !ticket.parts.some((part) => part.refdes === refdes)),
  };
}

const OTHER = { top: 'bottom', bottom: 'top' } as const;

const tidyPoint = <T extends { x: number; y: number }>(item: T): T => ({ ...item, x: tidy(item.x), y: tidy(item.y) });
const wholeTurn = (turn: number): number => tidy(((turn % 360) + 360) % 360) % 360;
const tidyPart = (part: Part): Part => ({ ...tidyPoint(part), turn: wholeTurn(part.turn) });
const tidyCover = (cover: Cover): Cover => ({ ...tidyPoint(cover), turn: wholeTurn(cover.turn) });

/** A new part at the place and of the kind of one that is gone was likely given another designator: said, never taken for granted. */
function renamedParts(gone: readonly Part[], added: readonly Part[]): Map<string, string> {
  const renamed = new Map<string, string>();
  for (const part of gone) {
    const there = added.filter((other) => samePlace(part, other) && alike(part, other));
    if (there.length === 1) renamed.set(part.refdes, there[0].refdes);
  }
  return renamed;
}

function alike({ package: a }: Part, { package: b }: Part): boolean {
  return a.name === b.name || (Math.abs(a.lengthMm - b.lengthMm) < 0.05 && Math.abs(a.widthMm - b.widthMm) < 0.05);
}

const MOVED_MM = 0.05;
/** Middle and half of each side may be off by rounding at once. */
const CORNER_MM = 0.1;

function coverChange(ticket: Board, cover: Cover): CoverChange[] {
  const known = ticket.covers.find(({ id }) => id === cover.id);
  if (!known) {
    const isPart = ticket.parts.some((part) => part.refdes === cover.id);
    return [{ cover, kind: isPart ? 'part' : 'new' }];
  }
  const moved = known.side !== cover.side || !sameRectangle(known, cover);
  // Height, sheet, metal and fixing are told by nobody but the technician.
  const { heightMm, sheetMm, material, fixing } = known;
  return moved ? [{ cover: { ...cover, heightMm, sheetMm, material, fixing }, kind: 'moved' }] : [];
}

/** Corner on corner: a cover of 20 x 10 lies like one of 10 x 20 turned by 90, and unlike itself turned by 90. */
function sameRectangle(a: Cover, b: Cover): boolean {
  const [mine, theirs] = [a, b].map((cover) => rectangleCorners({ ...cover, turnDeg: cover.turn }));
  return mine.every((one) => theirs.some((other) => Math.hypot(one.x - other.x, one.y - other.y) <= CORNER_MM));
}

/** Fiducials that the files show elsewhere or more of; files without any tell nothing. */
function otherFiducials(ticket: Board, files: Board): boolean {
  if (files.fiducials.length === 0) return false;
  const known = new Map(ticket.fiducials.map((one) => [one.id, one]));
  if (files.fiducials.length !== known.size) return true;
  return files.fiducials.some((one) => {
    const same = known.get(one.id);
    return !same || same.side !== one.side || Math.hypot(same.x - one.x, same.y - one.y) > MOVED_MM;
  });
}
