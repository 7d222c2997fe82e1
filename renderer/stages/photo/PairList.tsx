import { X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import type { BoardPhoto, MatchPair } from '../../../shared-types/photo.ts';
import { photoEdits as edits, photoWords as words } from '../../../shared-types/words/window/photo.ts';
import { removePair, setPair } from '../../editing/photos.ts';
import { placeOf, suspectsOf } from '../../photos/place-of.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

/** Every pair with what is left at it; the chosen one with a field for each coordinate. */
export function PairList({ photo }: { photo: BoardPhoto }) {
  const { board } = useDocument();
  const { fit } = placeOf(photo, board);
  const suspects = new Set(suspectsOf(photo, board).map(({ index }) => index));
  return (
    <ul className="rows" aria-label={words.pairs}>
      {photo.pairs.map((pair, index) => (
        <PairRow
          key={pair.id}
          photo={photo}
          index={index}
          offMm={fit && fit.spare > 0 ? fit.residuals[index].mm : null}
          suspect={suspects.has(index)}
        />
      ))}
    </ul>
  );
}

type RowProps = { photo: BoardPhoto; index: number; offMm: number | null; suspect: boolean };

function PairRow({ photo, index, offMm, suspect }: RowProps) {
  const app = useApp();
  const { measures } = useUnits();
  const pair = photo.pairs[index];
  const chosen = useAppState((state) => state.view.pairId === pair.id);
  const remove = () => app.bench.apply(edits.removePair, (document) => removePair(document, photo.id, pair.id));
  return (
    <li className="row" data-selected={chosen ? '' : undefined}>
      <span className="figure">{index + 1}</span>
      <BareButton
        className="who"
        aria-label={words.editPair(index + 1)}
        aria-expanded={chosen}
        onPress={() => app.bench.choosePair(chosen ? null : pair.id)}
      >
        {words.anchors[pair.anchor](pair.refdes ?? '')}
        {suspect && <span className="pair-suspect">{words.suspectMark}</span>}
      </BareButton>
      <span className="ends pair-ends">
        {offMm !== null && <span className="figure">{measures.length(offMm)}</span>}
        <IconButton icon={X} small label={words.removePair(index + 1)} onPress={remove} />
      </span>
      {chosen && <PairFields photo={photo} pair={pair} />}
    </li>
  );
}

function PairFields({ photo, pair }: { photo: BoardPhoto; pair: MatchPair }) {
  const app = useApp();
  const set = (fields: Partial<Pick<MatchPair, 'photo' | 'board'>>) =>
    app.bench.apply(edits.movePair, (document) => setPair(document, photo.id, pair.id, fields));
  const pixels = { unit: 'px', decimals: 1, least: 0 } as const;
  return (
    <div className="extra pair-fields">
      <NumberEntry
        label={words.photoX}
        {...pixels}
        most={photo.widthPx}
        value={pair.photo.x}
        onChange={(x) => x !== null && set({ photo: { ...pair.photo, x } })}
      />
      <NumberEntry
        label={words.photoY}
        {...pixels}
        most={photo.heightPx}
        value={pair.photo.y}
        onChange={(y) => y !== null && set({ photo: { ...pair.photo, y } })}
      />
      <LengthEntry
        label={words.boardX}
        value={pair.board.x}
        onChange={(x) => x !== null && set({ board: { ...pair.board, x } })}
      />
      <LengthEntry
        label={words.boardY}
        value={pair.board.y}
        onChange={(y) => y !== null && set({ board: { ...pair.board, y } })}
      />
    </div>
  );
}
