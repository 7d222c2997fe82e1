import type { Part } from '../../shared-types/board.ts';
import type { PartAction } from '../../shared-types/evaluation.ts';
import type { Tag, TagOf } from '../../shared-types/tags.ts';
import type { CanvasModel, Pick } from '../state/canvas-model.ts';
import type { CarriedParts, Sketch } from '../tools/tool.ts';
import type { Theme } from './theme.ts';
import type { Projection } from './view/projection.ts';

/** Everything a layer may draw from. */
export type Scene = {
  model: CanvasModel;
  projection: Projection;
  theme: Theme;
  hover: Pick | null;
  sketch: Sketch | null;
};

/** The parts that are being dragged; null: none are. */
export const carriedOf = ({ sketch }: Scene): CarriedParts | null => (sketch?.kind === 'carried' ? sketch : null);

/** Their names, when one of these parts is among them: what a tile of parts must be drawn anew for. */
export function carriedAmong(scene: Scene, parts: readonly Part[]): ReadonlySet<string> | null {
  const names = carriedOf(scene)?.names;
  return names && parts.some((part) => names.has(part.refdes)) ? names : null;
}

type OnPart = Exclude<Tag, TagOf<'watchPoint'>>;

/** True when the heat map lies under the parts. */
export const heatShown = (model: CanvasModel): boolean => model.layers.heat && model.assessment !== null;

/** Keeps the last result of a function of one object: the window hands out the same frozen object until it changes. */
function remembered<Key extends object, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, Value>();
  return (key) => {
    const found = known.get(key);
    if (found !== undefined) return found;
    const value = make(key);
    known.set(key, value);
    return value;
  };
}

/** Parts by refdes. */
export const partsByName = remembered(
  (parts: readonly Part[]): ReadonlyMap<string, Part> => new Map(parts.map((part) => [part.refdes, part])),
);

export const actionsByName = remembered(
  (actions: readonly PartAction[]): ReadonlyMap<string, PartAction> =>
    new Map(actions.map((action) => [action.refdes, action])),
);

/** Tags on parts, by refdes, in the order of work. */
export const tagsByPart = remembered((tags: readonly Tag[]): ReadonlyMap<string, OnPart[]> => {
  const found = new Map<string, OnPart[]>();
  for (const tag of tags) {
    if (tag.kind === 'watchPoint') continue;
    found.set(tag.refdes, [...(found.get(tag.refdes) ?? []), tag]);
  }
  return found;
});

export const watchPoints = remembered((tags: readonly Tag[]): readonly TagOf<'watchPoint'>[] =>
  tags.filter((tag) => tag.kind === 'watchPoint'),
);

export { remembered };
