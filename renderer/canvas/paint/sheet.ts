import { Container, Graphics } from 'pixi.js';
import type { Box } from '../../../shared-types/geometry.ts';
import type { Layer, Tile, TiledLayer } from '../layers/layer.ts';
import { sameInputs } from '../layers/layer.ts';
import type { Scene } from '../scene.ts';
import { type PaintBox, paint } from './painter.ts';
import { tilesOf } from './tiles.ts';

/** A layer on the stage: draws itself again when what it rests on has changed, and only then. */
export type Sheet = {
  view: Container;
  /** Returns true when something was drawn anew. */
  update(scene: Scene, box: PaintBox, visible: Box): boolean;
};

export function plainSheet(layer: Layer): Sheet {
  const view = new Graphics({ label: layer.name });
  let drawn: readonly unknown[] | null = null;
  return {
    view,
    update(scene, box) {
      const inputs = layer.inputs(scene);
      if (sameInputs(drawn, inputs)) return false;
      drawn = inputs;
      paint(view, layer.marks(scene), box);
      return true;
    },
  };
}

type LiveTile = Tile & { view: Graphics; drawn: readonly unknown[] | null };

export function tiledSheet(layer: TiledLayer): Sheet {
  const view = new Container({ label: layer.name });
  let tiles: LiveTile[] = [];
  let cutFrom: unknown[] | null = null;
  const cut = (scene: Scene) => {
    const { parts } = scene.model.document.board;
    const from = [parts, scene.projection.side];
    if (sameInputs(cutFrom, from)) return;
    cutFrom = from;
    for (const tile of tiles) tile.view.destroy();
    tiles = tilesOf(parts, scene.projection.side).map((tile) => ({
      ...tile,
      view: view.addChild(new Graphics({ label: layer.name })),
      drawn: null,
    }));
  };
  return {
    view,
    update(scene, box, visible) {
      cut(scene);
      let changed = false;
      for (const tile of tiles) {
        tile.view.visible = touches(tile.box, visible);
        if (!tile.view.visible) continue;
        const inputs = layer.inputs(scene, tile.parts);
        if (sameInputs(tile.drawn, inputs)) continue;
        tile.drawn = inputs;
        paint(tile.view, layer.marks(scene, tile.parts), box);
        changed = true;
      }
      return changed;
    },
  };
}

const touches = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
