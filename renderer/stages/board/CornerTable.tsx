import { useState } from 'react';
import { areaOf } from '../../../shared-types/contour/edges.ts';
import type { Contour } from '../../../shared-types/geometry.ts';
import {
  contourFaultSentence,
  contourName,
  outlineEdits,
  outlineWords as words,
} from '../../../shared-types/words/window/outline.ts';
import {
  deleteCorner,
  edgeFigures,
  insertCorner,
  leastRadius,
  moveCorner,
  setAngle,
  setLength,
  setRadius,
} from '../../editing/contour/corners.ts';
import { largestRounding, roundable, roundCorners } from '../../editing/contour/rounding.ts';
import { contourOf, faultOfChange, setContour } from '../../editing/outline.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import type { ContourPick } from '../../tools/outline/outline-state.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

/** Rows shown at once; longer contours are leafed through. */
const ROWS = 24;

type Change = (label: string, contour: Contour | null, why: string, next?: Partial<ContourPick>) => void;

/** Every corner of the chosen shape with its coordinates, and length, angle, radius of the edge that leaves it. */
export function CornerTable({ picked }: { picked: ContourPick }) {
  const app = useApp();
  const { board } = useDocument();
  const { lengthSign } = useUnits();
  const [first, setFirst] = useState(0);
  const [trouble, setTrouble] = useState('');
  const contour = contourOf(board, picked.id);
  if (!contour) return null;
  const change: Change = (label, next, why, pick) => {
    const fault = next && faultOfChange(board, picked.id, next);
    setTrouble(next ? (fault ? contourFaultSentence(fault, lengthSign) : '') : why);
    app.bench.setOutline({ refused: fault });
    if (!next || fault) return;
    app.bench.apply(label, (document) => setContour(document, picked.id, next));
    if (pick) app.bench.setOutline({ picked: { ...picked, ...pick } });
  };
  const from = Math.min(first, Math.max(0, contour.length - 1));
  return (
    <div className="corner-part">
      <table className="corner-table" aria-label={words.corners(contourName(picked.id))}>
        <Head />
        <tbody>
          {contour.slice(from, from + ROWS).map((_, row) => (
            // A corner is nothing but its place in the contour.
            // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
            <CornerRow key={from + row} contour={contour} index={from + row} picked={picked} change={change} />
          ))}
        </tbody>
      </table>
      {contour.length > ROWS && (
        <div className="button-row">
          <Button small disabled={from === 0} onPress={() => setFirst(Math.max(0, from - ROWS))}>
            {words.earlier}
          </Button>
          <Button small disabled={from + ROWS >= contour.length} onPress={() => setFirst(from + ROWS)}>
            {words.later}
          </Button>
        </div>
      )}
      {trouble && <p role="alert">{trouble}</p>}
      <CornerButtons contour={contour} picked={picked} change={change} />
      <p className="empty">{words.columnsText}</p>
    </div>
  );
}

function Head() {
  const { columns } = words;
  return (
    <thead>
      <tr className="head">
        {Object.values(columns).map((column) => (
          <th key={column} scope="col">
            {column}
          </th>
        ))}
      </tr>
    </thead>
  );
}

/** Figures of a shape go to the micrometre: two decimals would round what was drawn. */
function FineEntry({
  value,
  least,
  ...rest
}: {
  label: string;
  bare: true;
  value: number;
  least?: number;
  onChange: (mm: number | null) => void;
}) {
  const { showMm, readMm, lengthSign } = useUnits();
  return (
    <NumberEntry
      {...rest}
      value={showMm(value)}
      least={least === undefined ? undefined : showMm(least)}
      decimals={lengthSign === 'mil' ? 2 : 3}
      onChange={(shown) => rest.onChange(shown === null ? null : readMm(shown))}
    />
  );
}

type RowProps = { contour: Contour; index: number; picked: ContourPick; change: Change };

function CornerRow({ contour, index, picked, change }: RowProps) {
  const app = useApp();
  const { measures } = useUnits();
  const corner = contour[index];
  const { lengthMm, angleDeg, radiusMm } = edgeFigures(contour, index);
  const on = picked.index === index && picked.part !== 'whole';
  const name = words.corner(index + 1);
  const edge = words.edge(index + 1);
  const set = (next: Contour | null, why = '') => change(outlineEdits.figures, next, why);
  const pick = (part: 'corner' | 'edge') => app.bench.setOutline({ picked: { id: picked.id, part, index } });
  return (
    <tr data-selected={on || undefined}>
      <td className="figure soft">{index + 1}</td>
      <td onFocus={() => pick('corner')}>
        <FineEntry
          bare
          label={`${name}: x`}
          value={corner.x}
          onChange={(x) => x !== null && set(moveCorner(contour, index, { x, y: corner.y }))}
        />
      </td>
      <td onFocus={() => pick('corner')}>
        <FineEntry
          bare
          label={`${name}: y`}
          value={corner.y}
          onChange={(y) => y !== null && set(moveCorner(contour, index, { x: corner.x, y }))}
        />
      </td>
      <td onFocus={() => pick('edge')}>
        <FineEntry
          bare
          label={`${edge}: ${words.columns.length}`}
          value={lengthMm}
          least={0.001}
          onChange={(value) => value && set(setLength(contour, index, value))}
        />
      </td>
      <td onFocus={() => pick('edge')}>
        <NumberEntry
          bare
          label={`${edge}: ${words.columns.angle}`}
          value={angleDeg}
          decimals={2}
          onChange={(value) => value !== null && set(setAngle(contour, index, value))}
        />
      </td>
      <td onFocus={() => pick('edge')}>
        <FineEntry
          bare
          label={`${edge}: ${words.columns.radius}`}
          value={radiusMm}
          onChange={(value) =>
            value !== null &&
            set(setRadius(contour, index, value), words.tooSmall(measures.length(leastRadius(contour, index))))
          }
        />
      </td>
    </tr>
  );
}

function CornerButtons({ contour, picked, change }: Omit<RowProps, 'index'>) {
  const { measures } = useUnits();
  const [radius, setRadiusTo] = useState(3);
  const all = roundable(contour, [...contour.keys()]);
  const one = picked.part === 'corner' ? roundable(contour, [picked.index]) : [];
  const round = (corners: readonly number[]) =>
    change(
      outlineEdits.round,
      roundCorners(contour, corners, radius),
      words.tooLarge(measures.length(largestRounding(contour, corners))),
      { part: 'whole', index: 0 },
    );
  return (
    <>
      {all.length > 0 && Math.abs(areaOf(contour)) > 0 && (
        <LengthEntry
          label={words.roundBy}
          value={radius}
          least={0.01}
          most={1000}
          onChange={(value) => value && setRadiusTo(value)}
        />
      )}
      <div className="button-row">
        {all.length > 0 && (
          <Button small onPress={() => round(all)}>
            {words.roundAll}
          </Button>
        )}
        {one.length > 0 && (
          <Button small onPress={() => round(one)}>
            {words.roundOne}
          </Button>
        )}
        {picked.part !== 'whole' && (
          <Button
            small
            onPress={() =>
              change(outlineEdits.insert, insertCorner(contour, picked.index), '', {
                part: 'corner',
                index: picked.index + 1,
              })
            }
          >
            {words.insert}
          </Button>
        )}
        {picked.part === 'corner' && (
          <Button
            small
            onPress={() =>
              change(outlineEdits.deleteCorner, deleteCorner(contour, picked.index), words.tooFew, {
                part: 'whole',
                index: 0,
              })
            }
          >
            {words.deleteCorner}
          </Button>
        )}
      </div>
    </>
  );
}
