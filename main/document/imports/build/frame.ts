import { chooseOutline, type OutlineChoice, type OutlineSource, shareInside } from '../outline/choose.ts';
import type { Loop } from '../outline/loop.ts';
import type { Point } from '../plane.ts';
import type { Registration } from '../register/register.ts';

export interface Frame {
  /** From the placement file's origin to Gerber coordinates, mm. */
  readonly offset: Point & {
    readonly by: 'references' | 'pairs' | 'own' | 'inside' | 'corner' | 'chosen' | 'none';
    readonly votes: number;
    readonly of: number;
  };
  readonly choice: OutlineChoice | null;
}

export interface FrameChoices {
  readonly offset?: Point;
  /** Rank of the outline among the candidates. */
  readonly outline?: number;
}

const INSIDE = 0.9;

/** Where the placements lie among the Gerber layers, and the outline round them. Pads decide; without them, the outline. */
export function findFrame(
  sources: readonly OutlineSource[],
  placements: readonly Point[],
  registered: Registration['offset'],
  choices: FrameChoices,
): Frame {
  const frameAt = (offset: Point, by: Frame['offset']['by'], votes = 0, of = 0): Frame => ({
    offset: { x: offset.x, y: offset.y, by, votes, of },
    choice: chooseOutline(
      sources,
      placements.map((point) => ({ x: point.x + offset.x, y: point.y + offset.y })),
      choices.outline,
    ),
  });
  if (choices.offset) return frameAt(choices.offset, 'chosen');
  if (registered) return frameAt(registered, registered.by, registered.votes, registered.of);
  const still = frameAt({ x: 0, y: 0 }, 'inside');
  if (still.choice && still.choice.share >= INSIDE) return still;
  const corner = cornerOffset(
    sources.flatMap(({ loops }) => loops),
    placements,
  );
  return corner ? frameAt(corner, 'corner') : frameAt({ x: 0, y: 0 }, 'none');
}

const MIN_AREA_MM2 = 4;

/** Many exports count from the board's lower left corner: the smallest loop that holds the parts when they are laid there. */
export function cornerOffset(loops: readonly Loop[], placements: readonly Point[]): Point | null {
  if (placements.length === 0) return null;
  const sorted = loops.filter(({ areaMm2 }) => areaMm2 >= MIN_AREA_MM2).sort((a, b) => a.areaMm2 - b.areaMm2);
  for (const loop of sorted) {
    const corner = { x: loop.box.minX, y: loop.box.minY };
    const moved = placements.map((point) => ({ x: point.x + corner.x, y: point.y + corner.y }));
    if (shareInside(loop, moved) >= INSIDE) return corner;
  }
  return null;
}
