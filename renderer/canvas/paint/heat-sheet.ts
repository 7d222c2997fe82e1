import { Container, Matrix, Sprite, Texture } from 'pixi.js';
import { heatPixels } from '../heat/heat-image.ts';
import { heatScale, shownMap, shownRange } from '../heat/shown-field.ts';
import { paddedFace } from '../layers/isotherms.ts';
import { sameInputs } from '../layers/layer.ts';
import { heatShown, type Scene } from '../scene.ts';
import { HEAT_ALPHA } from '../theme.ts';
import { project } from '../view/projection.ts';
import type { Sheet } from './sheet.ts';

export type HeatSheet = Sheet & { dispose(): void };

/** The heat map: one picture of the shown face, laid on the board by its grid and cut to the outline by a mask. */
export function heatSheet(): HeatSheet {
  const view = new Container({ label: 'heat' });
  const picture = heatPicture();
  const sprite = new Sprite(picture.texture);
  sprite.alpha = HEAT_ALPHA;
  view.addChild(sprite);
  let painted: readonly unknown[] | null = null;
  let placed: readonly unknown[] | null = null;
  return {
    view,
    update(scene) {
      view.visible = heatShown(scene.model);
      if (!view.visible) return false;
      const { assessment, moment, shownRunId, temperatureUnit } = scene.model;
      const inputs = [assessment, moment, shownRunId, temperatureUnit, scene.projection.side];
      const stale = !sameInputs(painted, inputs);
      if (stale) sprite.visible = picture.paint(scene);
      painted = inputs;
      if (!stale && sameInputs(placed, [scene.projection])) return false;
      placed = [scene.projection];
      place(sprite, scene);
      return true;
    },
    dispose: () => picture.texture.source.unload(),
  };
}

/** One texture for every answer: only its pixels change, and its size with the grid. */
function heatPicture() {
  const canvas = document.createElement('canvas');
  canvas.width = canvas.height = 1;
  const texture = Texture.from({ resource: canvas, scaleMode: 'linear' }, true);
  // A sprite takes its size anew only from a texture that says it may change.
  texture.dynamic = true;
  return {
    texture,
    /** False: the answer has no temperatures. */
    paint({ model, projection }: Scene): boolean {
      const map = shownMap(model);
      const range = shownRange(model);
      if (!map || !range) return false;
      const padded = paddedFace(map.fields[projection.side], map.grid);
      const pixels = heatPixels(padded, heatScale(range, model.temperatureUnit));
      if (canvas.width !== padded.columns || canvas.height !== padded.rows) {
        canvas.width = padded.columns;
        canvas.height = padded.rows;
        texture.source.resize(padded.columns, padded.rows, 1);
      }
      canvas.getContext('2d')?.putImageData(new ImageData(pixels, padded.columns, padded.rows), 0, 0);
      texture.source.update();
      return true;
    },
  };
}

/** Texel (column, row) lies on the board at the grid's origin plus (column - pad, row - pad) cells. */
function place(sprite: Sprite, { model, projection }: Scene): void {
  const grid = shownMap(model)?.grid;
  if (!grid) return;
  const pad = (sprite.texture.width - grid.columns) / 2;
  const corner = project(projection, {
    x: grid.originX - pad * grid.cellMm,
    y: grid.originY - pad * grid.cellMm,
  });
  const { a, b, c, d } = projection;
  const cell = grid.cellMm;
  sprite.setFromMatrix(new Matrix(a * cell, b * cell, c * cell, d * cell, corner.x, corner.y));
}
