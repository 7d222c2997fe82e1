import { type Board, bodyOf, ownToBoard } from '../../../../shared-types/board.ts';
import type { TicketCard } from '../../../../shared-types/contract.ts';
import { flattenContour, type Side, type TurnedRectangle } from '../../../../shared-types/geometry.ts';
import { importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import { BoardDrawing } from '../BoardDrawing.tsx';

/** Both sides as they lie on the bench, drawn anew with every choice. */
export function SidesPreview({ board, stale }: { board: Board; stale: boolean }) {
  return (
    <div className="sides" data-stale={stale ? '' : undefined}>
      {(['top', 'bottom'] as const).map((side) => (
        <figure key={side}>
          <BoardDrawing
            drawing={sideOf(board, side)}
            covers={board.covers
              .filter((cover) => cover.side === side)
              .map((cover) => placeOf({ ...cover, turnDeg: cover.turn }, side))}
            pin1={pin1Of(board, side)}
          />
          <figcaption>
            {words[side]} <span className="soft">{board.parts.filter((part) => part.side === side).length}</span>
            {pin1Of(board, side).length > 0 && <span className="soft"> · {words.pin1Marks}</span>}
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

/** Pin 1 of parts that have more than two; a chip's first pad says little. */
const pin1Of = (board: Board, side: Side) =>
  board.parts.flatMap((part) => {
    if (part.side !== side || !part.pin1 || (part.pinCount ?? 3) < 3) return [];
    const { x, y } = ownToBoard(part, part.pin1);
    return [{ x: flipOf(side) * x, y }];
  });

const flipOf = (side: Side): number => (side === 'bottom' ? -1 : 1);

const placeOf = (body: TurnedRectangle, side: Side): number[] => [
  ...[flipOf(side) * body.x, body.y, body.lengthMm, body.widthMm, flipOf(side) * body.turnDeg],
];

/** One side; the bottom is mirrored, as it is seen from below. */
function sideOf(board: Board, side: Side): TicketCard['drawing'] {
  const flip = flipOf(side);
  const bodies = board.parts.filter((part) => part.side === side).map(bodyOf);
  return {
    outline: flattenContour(board.outline, 0.2).map((point) => [flip * point.x, point.y]),
    top: bodies.map((body) => placeOf(body, side)),
    sites: [],
  };
}
