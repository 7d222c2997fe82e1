import { type Board, bodyOf } from '../../../../shared-types/board.ts';
import type { TicketCard } from '../../../../shared-types/contract.ts';
import { flattenContour, type Side } from '../../../../shared-types/geometry.ts';
import { importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import { BoardDrawing } from '../BoardDrawing.tsx';

/** Both sides as they lie on the bench, drawn anew with every choice. */
export function SidesPreview({ board, stale }: { board: Board; stale: boolean }) {
  return (
    <div className="sides" data-stale={stale ? '' : undefined}>
      {(['top', 'bottom'] as const).map((side) => (
        <figure key={side}>
          <BoardDrawing drawing={sideOf(board, side)} />
          <figcaption>
            {words[side]} <span className="soft">{board.parts.filter((part) => part.side === side).length}</span>
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

/** One side; the bottom is mirrored, as it is seen from below. */
function sideOf(board: Board, side: Side): TicketCard['drawing'] {
  const flip = side === 'bottom' ? -1 : 1;
  const bodies = board.parts.filter((part) => part.side === side).map(bodyOf);
  return {
    outline: flattenContour(board.outline, 0.2).map((point) => [flip * point.x, point.y]),
    top: bodies.map((body) => [flip * body.x, body.y, body.lengthMm, body.widthMm, flip * body.turnDeg]),
    sites: [],
  };
}
