import { Check, Crosshair } from 'lucide-react';
import type { BoardPhoto } from '../../../shared-types/photo.ts';
import { mapPoint } from '../../../shared-types/rules/plane-maps.ts';
import { photoEdits as edits, photoWords as words } from '../../../shared-types/words/window/photo.ts';
import { toggleMatching } from '../../actions/photo-actions.ts';
import { addPair, setPairDistance } from '../../editing/photos.ts';
import { placeOf } from '../../photos/place-of.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { Button, WithTip } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';
import { FitWords } from './FitWords.tsx';
import { PairList } from './PairList.tsx';

/** Match points of a photo: what they settle, how good they are, and each of them. */
export function MatchSection({ photo }: { photo: BoardPhoto }) {
  const app = useApp();
  const matching = useAppState((state) => state.view.tool === 'match');
  const press = () => {
    app.setView({ photoId: photo.id });
    toggleMatching(app);
  };
  return (
    <Section title={words.matching} count={photo.pairs.length || undefined}>
      <div className="photo-match">
        <WithTip label={matching ? words.stop : words.begin} keys="J">
          <Button look={matching ? 'plain' : 'primary'} icon={matching ? Check : Crosshair} onPress={press}>
            {matching ? words.stop : words.begin}
          </Button>
        </WithTip>
        <PartPairButton photo={photo} />
      </div>
      {matching && <p className="photo-step">{words.step}</p>}
      <FitWords photo={photo} />
      <DistanceField photo={photo} />
      {photo.pairs.length > 0 && <PairList photo={photo} />}
    </Section>
  );
}

/** For those without a mouse: the selected part's middle as a pair, its photo point where the photo lies now. */
function PartPairButton({ photo }: { photo: BoardPhoto }) {
  const app = useApp();
  const { board } = useDocument();
  const refdes = useAppState((state) => (state.selection.parts.size === 1 ? [...state.selection.parts][0] : null));
  const part = board.parts.find((one) => one.refdes === refdes && one.side === photo.side);
  if (!part) return null;
  const add = () => {
    const at = { x: part.x, y: part.y };
    const there = mapPoint(placeOf(photo, board).toPhoto, at);
    const pair = { photo: there, board: at, anchor: 'part' as const, refdes: part.refdes };
    app.bench.apply(edits.addPair, (document) => addPair(document, photo.id, pair));
  };
  return (
    <Button look="quiet" onPress={add}>
      {words.pairForPart(part.refdes)}
    </Button>
  );
}

/** Two points with a free one among them: their true distance gives the scale where there is no drawing yet. */
function DistanceField({ photo }: { photo: BoardPhoto }) {
  const app = useApp();
  const { pairs } = photo;
  if (pairs.length !== 2 || pairs.every(({ anchor }) => anchor !== 'free')) return null;
  const [{ board: a }, { board: b }] = pairs;
  return (
    <div className="photo-distance">
      <LengthEntry
        label={words.distance}
        value={Math.hypot(a.x - b.x, a.y - b.y)}
        least={0.1}
        most={2000}
        onChange={(mm) =>
          mm !== null && app.bench.apply(edits.distance, (document) => setPairDistance(document, photo.id, mm))
        }
      />
      <p className="soft">{words.distanceHint}</p>
    </div>
  );
}
