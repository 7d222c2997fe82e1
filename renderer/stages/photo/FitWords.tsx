import { boxOf } from '../../../shared-types/geometry.ts';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { photoWords as words } from '../../../shared-types/words/window/photo.ts';
import { placeOf, suspectsOf } from '../../photos/place-of.ts';
import { useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';

/** Points within less than this share of the photo's diagonal carry their errors far. */
const CLOSE = 0.3;

function liesClose({ pairs, widthPx, heightPx }: BoardPhoto): boolean {
  const { minX, minY, maxX, maxY } = boxOf(pairs.map(({ photo }) => photo));
  return Math.hypot(maxX - minX, maxY - minY) < CLOSE * Math.hypot(widthPx, heightPx);
}

/** What the pairs settle, what is wrong and what is missing, in words. */
export function FitWords({ photo }: { photo: BoardPhoto }) {
  const { board } = useDocument();
  const { measures } = useUnits();
  const { fit, refusal } = placeOf(photo, board);
  const suspects = suspectsOf(photo, board);
  const tooFew = refusal?.code === 'too-few-pairs';
  const wanted = photo.fit && refusal && tooFew ? words.refusal(refusal) : null;
  const next = wanted ?? words.need[photo.pairs.length] ?? (fit?.spare === 0 ? words.spare : null);
  return (
    <div className="photo-fit" role="status">
      <p>
        {fit ? `${words.fitted(fit.kind)}.` : words.guessed}
        {fit && fit.leftOutRmsMm !== null && (
          <span title={words.rmsTip}>
            {' '}
            {words.rms} <span className="figure">{measures.length(fit.leftOutRmsMm)}</span>
          </span>
        )}
      </p>
      {refusal && !tooFew && <p className="weighty">{words.refusal(refusal)}</p>}
      {fit?.turnedOver && <p className="weighty">{words.turnedOver(photo.side)}</p>}
      {suspects.map(({ index, mm }) => (
        <p key={index} className="weighty">
          {words.suspect(index + 1, Number.isFinite(mm) ? measures.length(mm) : null)}
        </p>
      ))}
      {fit && liesClose(photo) && <p className="soft">{words.close}</p>}
      {next && <p className="soft">{next}</p>}
    </div>
  );
}
