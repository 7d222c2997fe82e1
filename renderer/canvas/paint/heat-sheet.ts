import { Container, Matrix, Sprite, Texture } from 'pixi.js';
import { heatPixels } from '../heat/heat-image.ts';
import { heatScale, rangeOf, shownFields } from '../heat/shown-field.ts';
import { paddedFace } from '../layers/isotherms.ts';
import { sameInputs } from '../layers/layer.ts';
import { heatShown, type Scene } from '../scene.ts';
import { HEAT_ALPHA } from '../theme.ts';
import { project } from '../view/projection.ts';
import type { Sheet } from './sheet.ts';

/** The heat map: one picture of the shown face, laid on the board by its grid and cut to the outline by a mask. */
export function heatSheet(): Sheet {
  const view = new Container({ label: 'heat' });
  const sprite = new Sprite(Texture.EMPTY);
  sprite.alpha = HEAT_ALPHA;
  view.addChild(sprite);
  let painted: readonly unknown[] | null = null;
  let placed: readonly unknown[] | null = null;
  return {
    view,
    update(scene) {
      view.visible = heatShown(scene.model);
      if (!view.visible) return false;
      const { assessment, shownRunId, temperatureUnit } = scene.model;
      const inputs = [assessment, shownRunId, temperatureUnit, scene.projection.side];
      if (!sameInputs(painted, inputs)) {
        painted = inputs;
        const old = sprite.texture;
        sprite.texture = heatTexture(scene) ?? Texture.EMPTY;
        if (old !== Texture.EMPTY) old.destroy(true);
        placed = null;
      }
      if (sameInputs(placed, [scene.projection])) return false;
      placed = [scene.projection];
      place(sprite, scene);
      return true;
    },
    invalidate() {
      painted = null;
    },
  };
}

function heatTexture({ model, projection }: Scene): Texture | null {
  const { assessment } = model;
  if (!assessment) return null;
  const fields = shownFields(assessment, model.shownRunId);
  const range = rangeOf(fields);
  if (!range) return null;
  const padded = paddedFace(fields[projection.side], assessment.evaluation.grid);
  const canvas = document.createElement('canvas');
  canvas.width = padded.columns;
  canvas.height = padded.rows;
  const pixels = heatPixels(padded, heatScale(range, model.temperatureUnit));
  canvas.getContext('2d')?.putImageData(new ImageData(pixels, padded.columns, padded.rows), 0, 0);
  return Texture.from({ resource: canvas, scaleMode: 'linear' }, true);
}

/** Texel (column, row) lies on the board at the grid's origin plus (column - pad, row - pad) cells. */
function place(sprite: Sprite, { model, projection }: Scene): void {
  const grid = model.assessment?.evaluation.grid;
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
