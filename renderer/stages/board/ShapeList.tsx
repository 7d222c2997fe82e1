import { CopyPlus, Trash2 } from 'lucide-react';
import { useMemo } from 'react';
import { Button as BareButton } from 'react-aria-components';
import { boxOfContour } from '../../../shared-types/contour/edges.ts';
import type { ContourId } from '../../../shared-types/rules/contour-faults.ts';
import { contourName, outlineEdits, outlineWords as words } from '../../../shared-types/words/window/outline.ts';
import { addCutout, contourOf, placeForCopy, removeCutout } from '../../editing/outline.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import type { ContourPick } from '../../tools/outline/outline-state.ts';
import { IconButton } from '../../widgets/Buttons.tsx';

/** Lines shown at once: a list of thousands of mouse bites is of no use to anybody. */
const MOST_SHOWN = 60;

/** The outline and the cutouts with their sizes; one of them is chosen. */
export function ShapeList({ picked }: { picked: ContourPick | null }) {
  const { board } = useDocument();
  const ids: ContourId[] = ['outline', ...board.cutouts.keys()];
  return (
    <ul className="rows" aria-label={words.contours}>
      {ids.slice(0, MOST_SHOWN).map((id) => (
        <Shape key={String(id)} id={id} chosen={picked?.id === id} />
      ))}
    </ul>
  );
}

function Shape({ id, chosen }: { id: ContourId; chosen: boolean }) {
  const app = useApp();
  const { board } = useDocument();
  const { measures } = useUnits();
  const contour = contourOf(board, id);
  const box = useMemo(() => contour && boxOfContour(contour), [contour]);
  if (!box) return null;
  const name = contourName(id);
  const pick = (picked: ContourPick | null) => app.bench.setOutline({ picked, refused: null });
  const copy = (index: number) => {
    const twin = placeForCopy(board, index, app.bench.model().outline.gridMm);
    if (!twin) return app.setView({ hint: words.noRoom });
    app.bench.apply(outlineEdits.copyCutout, (document) => addCutout(document, twin));
    pick({ id: board.cutouts.length, part: 'whole', index: 0 });
  };
  const remove = (index: number) => {
    pick(null);
    app.bench.apply(outlineEdits.removeCutout, (document) => removeCutout(document, index));
  };
  return (
    <li className="row shape" data-selected={chosen || undefined}>
      <BareButton className="who" aria-label={words.choose(name)} onPress={() => pick({ id, part: 'whole', index: 0 })}>
        {name}
      </BareButton>
      <span className="figure soft">
        {words.size(measures.length(box.maxX - box.minX), measures.length(box.maxY - box.minY))}
      </span>
      <span className="ends">
        {id !== 'outline' && (
          <>
            <IconButton
              small
              icon={CopyPlus}
              label={`${words.duplicate} ${name.toLowerCase()}`}
              onPress={() => copy(id)}
            />
            <IconButton
              small
              icon={Trash2}
              label={`${words.remove} ${name.toLowerCase()}`}
              onPress={() => remove(id)}
            />
          </>
        )}
      </span>
    </li>
  );
}
