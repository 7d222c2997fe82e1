import { FlipHorizontal2, RotateCcwSquare, RotateCwSquare } from 'lucide-react';
import { frameOfBoardWords as words } from '../../../shared-types/words/window/outline.ts';
import { actionById } from '../../actions/table.ts';
import { lowerLeft, moveOrigin } from '../../editing/board-frame.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

/** Where the board lies in its own coordinates: the corner by figures, quarter turns, the mirror. */
export function PlaceFold() {
  const app = useApp();
  const corner = lowerLeft(useDocument().board);
  const { measures } = useUnits();
  const put = (to: { x?: number | null; y?: number | null }) =>
    app.bench.apply(words.edits.origin, (document) => {
      const now = lowerLeft(document.board);
      return moveOrigin(document, { x: now.x - (to.x ?? now.x), y: now.y - (to.y ?? now.y) });
    });
  const run = (id: string) => actionById(id).run(app);
  return (
    <Fold title={words.title} summary={words.at(measures.length(corner.x), measures.length(corner.y))}>
      <LengthEntry label={words.x} value={corner.x} least={-5000} most={5000} onChange={(x) => put({ x })} />
      <LengthEntry label={words.y} value={corner.y} least={-5000} most={5000} onChange={(y) => put({ y })} />
      <div className="button-row">
        <Button small onPress={() => run('origin-to-corner')}>
          {words.toOrigin}
        </Button>
        <Button small icon={RotateCcwSquare} onPress={() => run('turn-board-left')}>
          {words.turnLeft}
        </Button>
        <Button small icon={RotateCwSquare} onPress={() => run('turn-board-right')}>
          {words.turnRight}
        </Button>
        <Button small icon={FlipHorizontal2} onPress={() => run('mirror-board')}>
          {words.mirror}
        </Button>
      </div>
      <p className="empty">{words.text}</p>
    </Fold>
  );
}
