import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { planStraps, type StrapMove } from '../../../shared-types/rules/straps/plan-straps.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { partsByName, remembered, type Scene } from '../scene.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** Moves of a plan on its board, kept until one of the two changes. */
const movesOf = remembered((board: Board) => remembered((plan: Plan) => planStraps(board, plan).moves));

/** Strap moves: an arrow from where a part stands to where it goes, a plus where one is added, a cross where one comes off. */
export const strapLayer: Layer = {
  name: 'straps',
  inputs: ({ model, projection, theme }) => [
    model.document.board.straps,
    model.document.board.parts,
    model.document.plan.straps,
    model.document.plan.sites,
    projection,
    theme,
  ],
  marks(scene) {
    const { board, plan } = scene.model.document;
    if (plan.straps.wanted.length === 0) return [];
    return movesOf(board)(plan).flatMap((move) => moveMarks(move, scene));
  },
};

/** Half the size of a plus or cross, CSS pixels; it grows with the zoom up to this much more. */
const SIGN_PX = 5;
const HEAD_PX = 7;

function moveMarks(move: StrapMove, scene: Scene): Mark[] {
  const { model, projection } = scene;
  const parts = partsByName(model.document.board.parts);
  const at = (refdes: string | null) => {
    const part = refdes === null ? undefined : parts.get(refdes);
    return part?.side === projection.side ? project(projection, part) : null;
  };
  const from = at(move.from);
  const to = at(move.to);
  if (move.kind === 'relocate') return from && to ? arrow(from, to, scene) : [];
  const place = from ?? to;
  return place ? sign(place, move.kind, scene) : [];
}

type Spot = { x: number; y: number };
const inked = (points: number[], { theme }: Scene): Mark[] => {
  const stroke: Stroke = { colour: theme.ink, width: 2 };
  return [
    { kind: 'line', points, stroke: { colour: theme.paper, width: 5, alpha: 0.85 } },
    { kind: 'line', points, stroke },
  ];
};

/** A bow beside the straight line, so that arrows along a row of positions stay apart from it. */
function arrow(from: Spot, to: Spot, scene: Scene): Mark[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const bow = Math.min(28, 10 + length / 5);
  const points: number[] = [];
  for (let step = 0; step <= 12; step++) {
    const share = step / 12;
    const aside = 4 * bow * share * (1 - share);
    points.push(from.x + dx * length * share + dy * aside, from.y + dy * length * share - dx * aside);
  }
  const end = points.length;
  const angle = Math.atan2(points[end - 1] - points[end - 3], points[end - 2] - points[end - 4]);
  const barb = (turn: number) => [to.x - HEAD_PX * Math.cos(angle + turn), to.y - HEAD_PX * Math.sin(angle + turn)];
  return [...inked(points, scene), ...inked([...barb(0.5), to.x, to.y, ...barb(-0.5)], scene)];
}

function sign({ x, y }: Spot, kind: 'add' | 'off', scene: Scene): Mark[] {
  const half = SIGN_PX;
  const strokes =
    kind === 'add'
      ? [
          [x - half, y, x + half, y],
          [x, y - half, x, y + half],
        ]
      : [
          [x - half, y - half, x + half, y + half],
          [x - half, y + half, x + half, y - half],
        ];
  return strokes.flatMap((points) => inked(points, scene));
}
