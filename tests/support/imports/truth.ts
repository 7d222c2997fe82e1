/**
 * What outside readers say of a board's files, to hold the import against. Nothing here imports from main/document/imports:
 * a fault there must not hide itself. Lengths are mm in the files' own coordinates, y up, seen from the top.
 */

export type Side = 'top' | 'bottom';
export type At = { readonly x: number; readonly y: number };
export type Rect = { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };

export interface TruePad {
  readonly pin: string;
  readonly side: Side;
  readonly at: At;
  readonly box: Rect;
}

export interface Truth {
  /** Pads by reference. */
  readonly pads: ReadonlyMap<string, readonly TruePad[]>;
  /** Where the references come from: Gerber attributes, a netlist, IPC-2581; null: no file has them. */
  readonly padsBy: 'Gerber X2' | 'IPC-D-356' | 'IPC-2581' | null;
  /** Pads of layers without references. */
  readonly bare: Readonly<Record<Side, readonly At[]>>;
  /** Middles of the bodies that a file draws, by reference: they may lie off the pads. */
  readonly bodies: ReadonlyMap<string, readonly At[]>;
  /** Boxes of everything that hangs together in the layers where an outline may stand, by file. */
  readonly chains: readonly { readonly file: string; readonly box: Rect; readonly telling: boolean }[];
}

export const NO_RECT: Rect = {
  minX: Number.POSITIVE_INFINITY,
  minY: Number.POSITIVE_INFINITY,
  maxX: Number.NEGATIVE_INFINITY,
  maxY: Number.NEGATIVE_INFINITY,
};

export function rectOf(points: Iterable<At>): Rect {
  let { minX, minY, maxX, maxY } = NO_RECT;
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

export const corners = ({ minX, minY, maxX, maxY }: Rect): At[] => [
  { x: minX, y: minY },
  { x: maxX, y: maxY },
];

export const middleOf = ({ minX, minY, maxX, maxY }: Rect): At => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

const TOUCH_MM = 0.02;

/** Boxes of groups of lines whose ends touch: as simple as can be, to be right by looking at it. */
export function chainBoxes(lines: readonly { readonly ends: readonly [At, At]; readonly box: Rect }[]): Rect[] {
  const parent = lines.map((_, index) => index);
  const rootOf = (index: number): number => {
    let root = index;
    while (parent[root] !== root) root = parent[root];
    return root;
  };
  const cells = new Map<string, number[]>();
  const cell = (value: number): number => Math.floor(value / TOUCH_MM);
  for (const [index, { ends }] of lines.entries()) {
    for (const end of ends) {
      for (let dx = -1; dx <= 1; dx++) {
        for (let dy = -1; dy <= 1; dy++) {
          for (const other of cells.get(`${cell(end.x) + dx} ${cell(end.y) + dy}`) ?? []) {
            const near = lines[other].ends.some((at) => Math.hypot(at.x - end.x, at.y - end.y) <= TOUCH_MM);
            if (near) parent[rootOf(other)] = rootOf(index);
          }
        }
      }
      const key = `${cell(end.x)} ${cell(end.y)}`;
      const known = cells.get(key);
      if (known) known.push(index);
      else cells.set(key, [index]);
    }
  }
  const boxes = new Map<number, Rect>();
  for (const [index, { box }] of lines.entries()) {
    const root = rootOf(index);
    boxes.set(root, rectOf([...corners(boxes.get(root) ?? box), ...corners(box)]));
  }
  return [...boxes.values()];
}
