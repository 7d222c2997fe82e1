import { bodyOf, type Part } from '../../../../shared-types/board.ts';
import { boxOf, flattenContour, type Point, rectangleCorners, type Side } from '../../../../shared-types/geometry.ts';
import { takesAspect } from '../../../../shared-types/rules/board-update/decide.ts';
import type { PartAspect } from '../../../../shared-types/rules/board-update/types.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import type { BoardUpdate } from './use-board-update.ts';

/** Both sides with what is new, gone and changed; each kind has a line of its own, not only a colour. */
export function UpdateDrawing({ update }: { update: BoardUpdate }) {
  const { legend } = words;
  return (
    <div className="sides">
      {(['top', 'bottom'] as const).map((side) => (
        <figure key={side}>
          <SideDrawing side={side} update={update} />
          <figcaption>{words.sides[side]}</figcaption>
        </figure>
      ))}
      <ul className="update-legend">
        {(['added', 'moved', 'was', 'gone'] as const).map((kind) => (
          <li key={kind}>
            <svg viewBox="0 0 20 12" aria-hidden="true" className="board-drawing">
              <path className={kind} d="M2 2H18V10H2Z" />
            </svg>
            {legend[kind]}
          </li>
        ))}
      </ul>
    </div>
  );
}

function SideDrawing({ side, update }: { side: Side; update: BoardUpdate }) {
  const { document, changes } = update;
  const { board } = document;
  const outline = flattenContour(board.outline, 0.2);
  const next = changes.outline ? flattenContour(changes.outline.outline, 0.2) : [];
  const box = boxOf([...outline, ...next]);
  const flip = side === 'bottom';
  const at = ({ x, y }: Point) => `${(flip ? box.maxX - x : x - box.minX).toFixed(2)} ${(box.maxY - y).toFixed(2)}`;
  const ring = (points: readonly Point[]) => (points.length > 0 ? `M${points.map(at).join('L')}Z` : '');
  const bodies = (parts: readonly Part[]) =>
    parts
      .filter((part) => part.side === side)
      .map((part) => ring(rectangleCorners(bodyOf(part))))
      .join('');
  const lies = laidAnew(update);
  const other = new Set([...changes.gone, ...lies.map(({ before }) => before)]);
  const moved = lies.filter(
    ({ before, after }) => before.side === side && (before.x !== after.x || before.y !== after.y),
  );
  const edge = Math.max(box.maxX - box.minX, box.maxY - box.minY) * 0.02;
  const size = [box.maxX - box.minX + 2 * edge, box.maxY - box.minY + 2 * edge];
  return (
    <svg className="board-drawing" viewBox={`${-edge} ${-edge} ${size[0]} ${size[1]}`} aria-hidden="true">
      <path className="outline" d={ring(outline)} />
      <path className="new-outline" d={ring(next)} />
      <path className="bodies" d={bodies(board.parts.filter((part) => !other.has(part)))} />
      <path className="was" d={bodies(lies.map(({ before }) => before))} />
      <path className="way" d={moved.map(({ before, after }) => `M${at(before)}L${at(after)}`).join('')} />
      <path className="moved" d={bodies(lies.map(({ after }) => after))} />
      <path className="gone" d={bodies(changes.gone)} />
      <path className="added" d={bodies(changes.added)} />
    </svg>
  );
}

/** Parts that will lie or measure otherwise, with what was ticked of it alone. */
function laidAnew({ document: { board }, changes, decisions }: BoardUpdate): { before: Part; after: Part }[] {
  return changes.changed.flatMap((change) => {
    const { before, after } = change;
    const takes = (aspect: PartAspect) =>
      change.aspects.includes(aspect) && takesAspect(board, change, aspect, { ticks: decisions.ticks, stay: [] });
    const laid = {
      ...(takes('place') ? { x: after.x, y: after.y } : {}),
      ...(takes('turn') ? { turn: after.turn } : {}),
      ...(takes('side') ? { side: after.side } : {}),
      ...(takes('size') ? { package: after.package } : {}),
    };
    return Object.keys(laid).length > 0 ? [{ before, after: { ...before, ...laid } }] : [];
  });
}
