import type { TicketCard } from '../../../shared-types/contract.ts';
import { boxOf, type Point, rectangleCorners } from '../../../shared-types/geometry.ts';
import './start.css';

type Props = {
  drawing: TicketCard['drawing'];
  /** Cans and frames as [x, y, length, width, turn], and places of pin 1; mm. */
  covers?: readonly (readonly number[])[];
  pin1?: readonly Point[];
};

/** A small true drawing of a board: outline, bodies of the top side, sites. mm, y up. */
export function BoardDrawing({ drawing, covers = [], pin1 = [] }: Props) {
  const box = boxOf(drawing.outline.map(([x, y]) => ({ x, y })));
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  if (!(width > 0 && height > 0)) return null;
  const edge = Math.max(width, height) * 0.015;
  const at = (x: number, y: number) => `${(x - box.minX).toFixed(2)} ${(box.maxY - y).toFixed(2)}`;
  const path = (points: readonly { x: number; y: number }[]) => `M${points.map((p) => at(p.x, p.y)).join('L')}Z`;
  const bodies = (list: readonly (readonly number[])[]) => list.map((body) => path(cornersOf(body))).join('');
  return (
    <svg
      className="board-drawing"
      viewBox={`${-edge} ${-edge} ${width + 2 * edge} ${height + 2 * edge}`}
      aria-hidden="true"
    >
      <path className="outline" d={path(drawing.outline.map(([x, y]) => ({ x, y })))} />
      <path className="bodies" d={bodies(drawing.top)} />
      <path className="site" d={bodies(drawing.sites)} />
      <path className="covers" d={bodies(covers)} />
      <path className="pin1" d={pin1.map(({ x, y }) => `M${at(x, y)}h0`).join('')} />
    </svg>
  );
}

const cornersOf = ([x, y, lengthMm, widthMm, turnDeg]: readonly number[]) =>
  rectangleCorners({ x, y, lengthMm, widthMm, turnDeg });
