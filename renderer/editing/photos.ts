import { produce } from 'immer';
import type { Point } from '../../shared-types/geometry.ts';
import type { BoardPhoto, MatchPair } from '../../shared-types/photo.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { nextId } from './ids.ts';

const MOST_PAIRS = 200;
/** Photos start so that ink is read over them. */
const STARTING_OPACITY = 0.7;

export type NewPhoto = Omit<BoardPhoto, 'id' | 'pairs' | 'fit' | 'opacity' | 'shown'>;

export function addPhoto(document: TicketDocument, photo: NewPhoto): TicketDocument {
  return produce(document, (draft) => {
    const { photos } = draft.board;
    photos.push({
      id: nextId('photo', photos),
      ...photo,
      ...{ pairs: [], fit: null, opacity: STARTING_OPACITY, shown: true },
    });
  });
}

export function removePhoto(document: TicketDocument, photoId: string): TicketDocument {
  return produce(document, (draft) => {
    draft.board.photos = draft.board.photos.filter((photo) => photo.id !== photoId);
  });
}

type PhotoFields = Partial<Pick<BoardPhoto, 'side' | 'fit' | 'opacity' | 'shown'>>;

export function setPhoto(document: TicketDocument, photoId: string, fields: PhotoFields): TicketDocument {
  return withPhoto(document, photoId, (photo) => void Object.assign(photo, fields));
}

/** Puts a photo over all others of its side. */
export function raisePhoto(document: TicketDocument, photoId: string): TicketDocument {
  return produce(document, (draft) => {
    const { photos } = draft.board;
    const at = photos.findIndex((photo) => photo.id === photoId);
    if (at >= 0) photos.push(...photos.splice(at, 1));
  });
}

const rounded = (value: number, steps: number): number => Math.round(value * steps) / steps;
/** A tenth of a pixel and a micrometre: finer than anybody clicks, short in the file. */
const photoPoint = ({ x, y }: Point): Point => ({ x: rounded(x, 10), y: rounded(y, 10) });
const boardPoint = ({ x, y }: Point): Point => ({ x: rounded(x, 1000), y: rounded(y, 1000) });

/** Adds a match pair: the same place on the photo (pixels) and on the board (mm). */
export function addPair(document: TicketDocument, photoId: string, pair: Omit<MatchPair, 'id'>): TicketDocument {
  return withPhoto(document, photoId, (photo) => {
    if (photo.pairs.length >= MOST_PAIRS) return;
    const id = nextId('pair', photo.pairs);
    photo.pairs.push({ ...pair, id, photo: photoPoint(pair.photo), board: boardPoint(pair.board) });
  });
}

/** Changes places of a pair; a board point typed or dragged freely is no longer that of its anchor. */
export function setPair(
  document: TicketDocument,
  photoId: string,
  pairId: string,
  fields: Partial<Omit<MatchPair, 'id'>>,
): TicketDocument {
  return withPhoto(document, photoId, (photo) => {
    const pair = photo.pairs.find((one) => one.id === pairId);
    if (!pair) return;
    if (fields.board) Object.assign(pair, { anchor: 'free', refdes: null });
    Object.assign(pair, fields, {
      photo: photoPoint(fields.photo ?? pair.photo),
      board: boardPoint(fields.board ?? pair.board),
    });
  });
}

export function removePair(document: TicketDocument, photoId: string, pairId: string): TicketDocument {
  return withPhoto(document, photoId, (photo) => {
    photo.pairs = photo.pairs.filter((pair) => pair.id !== pairId);
  });
}

/** Sets the second of two pairs so far from the first on the board, in the same direction: the scale of a photo without a drawing. */
export function setPairDistance(document: TicketDocument, photoId: string, mm: number): TicketDocument {
  return withPhoto(document, photoId, ({ pairs: [first, second] }) => {
    if (!first || !second) return;
    const away = { x: second.board.x - first.board.x, y: second.board.y - first.board.y };
    const now = Math.hypot(away.x, away.y);
    const [x, y] = now > 0 ? [away.x / now, away.y / now] : [1, 0];
    second.board = boardPoint({ x: first.board.x + x * mm, y: first.board.y + y * mm });
    Object.assign(second, { anchor: 'free', refdes: null });
  });
}

function withPhoto(document: TicketDocument, photoId: string, edit: (photo: BoardPhoto) => void): TicketDocument {
  return produce(document, (draft) => {
    const photo = draft.board.photos.find((one) => one.id === photoId);
    if (photo) edit(photo);
  });
}
