import { placeOf, suspectsOf } from '../../photos/place-of.ts';
import type { AppState } from '../../state/app-state.ts';

/** Photos that lie by guess, and pairs that do not go with the others. */
export function openOfPhoto({ ticket }: AppState): number {
  if (!ticket) return 0;
  const { board } = ticket.document;
  return board.photos.reduce(
    (count, photo) => count + (placeOf(photo, board).fit ? suspectsOf(photo, board).length : 1),
    0,
  );
}
