import type { Part } from '../../../shared-types/board.ts';
import type { Box } from '../../../shared-types/geometry.ts';
import type { Mark } from '../drawing/marks.ts';
import type { Scene } from '../scene.ts';

/** One sheet of the drawing. Pure: the scene in, shapes out. */
export type Layer = {
  name: string;
  /** What the sheet rests on: it is drawn anew when one of these is another than before. */
  inputs(scene: Scene): readonly unknown[];
  marks(scene: Scene): Mark[];
};

/** A sheet cut into tiles of parts; only tiles in view are drawn. */
export type TiledLayer = {
  name: string;
  inputs(scene: Scene, parts: readonly Part[]): readonly unknown[];
  marks(scene: Scene, parts: readonly Part[]): Mark[];
};

export type Tile = { box: Box; parts: Part[] };

export const sameInputs = (a: readonly unknown[] | null, b: readonly unknown[]): boolean =>
  a !== null && a.length === b.length && a.every((value, index) => Object.is(value, b[index]));
