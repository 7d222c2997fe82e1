import { Container, Graphics, Matrix, Rectangle, Sprite, Texture, type TextureSource } from 'pixi.js';
import { photoPatch } from '../../../shared-types/rules/photo-patch.ts';
import type { PhotoPlace } from '../../../shared-types/rules/photo-place.ts';
import { placeOf } from '../../photos/place-of.ts';
import { type ShownPhoto, shownPhotos } from '../../photos/shown-photos.ts';
import { sameInputs } from '../layers/layer.ts';
import { isFlat, levelFor, type PhotoTile, tileMatrix, tilesFor } from '../photo/tiles.ts';
import type { Scene } from '../scene.ts';
import { projectAll } from '../view/projection.ts';
import type { Sheet } from './sheet.ts';

export type PhotoSheet = Sheet & { dispose(): void };

/**
 * The photos of the shown side under the drawing. Each is laid in pieces by its map, opaque, and then veiled by the ground's colour: pieces
 * that were themselves see-through would show their seams.
 */
export function photoSheet(): PhotoSheet {
  const view = new Container({ label: 'photos' });
  const laid = new Map<string, LaidPhoto>();
  let drawn: readonly unknown[] | null = null;
  return {
    view,
    update(scene) {
      const { model, projection, theme } = scene;
      const { photos, outline } = model.document.board;
      const inputs = [photos, outline, model.pictures, model.blinked, projection, theme];
      if (sameInputs(drawn, inputs)) return false;
      drawn = inputs;
      const shown = shownPhotos(model);
      const ids = new Set(shown.map(({ photo }) => photo.id));
      for (const [id, one] of laid)
        if (!ids.has(id)) {
          one.dispose();
          laid.delete(id);
        }
      for (const [index, one] of shown.entries()) {
        const found = laid.get(one.photo.id) ?? layPhoto();
        laid.set(one.photo.id, found);
        found.update(one, scene);
        view.addChildAt(found.view, index);
      }
      return true;
    },
    dispose() {
      for (const one of laid.values()) one.dispose();
      laid.clear();
    },
  };
}

type LaidPhoto = { view: Container; update(shown: ShownPhoto, scene: Scene): void; dispose(): void };

function layPhoto(): LaidPhoto {
  const view = new Container();
  const pieces = new Container();
  const veil = new Graphics();
  view.addChild(pieces, veil);
  let source: TextureSource | null = null;
  let tiles: { tile: PhotoTile; sprite: Sprite }[] = [];
  let cut: readonly unknown[] | null = null;
  const clear = () => {
    for (const { sprite } of tiles) {
      // The pieces share one source, which goes once.
      sprite.destroy({ texture: true, textureSource: false });
    }
    tiles = [];
    source?.destroy();
    source = null;
  };
  return {
    view,
    update({ photo, levels }, scene) {
      const place = placeOf(photo, scene.model.document.board);
      const widths = levels.map(({ width }) => width);
      const bitmap = levels[levelFor(place, photo, widths, scene.projection)];
      const flat = isFlat(place);
      if (!sameInputs(cut, [bitmap, flat])) {
        cut = [bitmap, flat];
        clear();
        const made = Texture.from({ resource: bitmap, scaleMode: 'linear' }, true).source;
        source = made;
        tiles = tilesFor(place, bitmap.width, bitmap.height).map((tile) => ({ tile, sprite: spriteOf(made, tile) }));
        pieces.addChild(...tiles.map(({ sprite }) => sprite));
      }
      const perPixel = photo.widthPx / bitmap.width;
      for (const { tile, sprite } of tiles) {
        const matrix = tileMatrix(place, tile, perPixel, scene.projection);
        sprite.visible = matrix !== null;
        if (matrix) sprite.setFromMatrix(new Matrix(...matrix));
      }
      drawVeil(veil, place, photo, scene);
    },
    dispose() {
      clear();
      view.destroy({ children: true });
    },
  };
}

function spriteOf(source: TextureSource, { x, y, width, height }: PhotoTile): Sprite {
  return new Sprite(new Texture({ source, frame: new Rectangle(x, y, width, height) }));
}

function drawVeil(veil: Graphics, place: PhotoPlace, photo: ShownPhoto['photo'], { projection, theme }: Scene): void {
  veil.clear();
  if (photo.opacity >= 1) return;
  const { board } = photoPatch(place, photo.widthPx, photo.heightPx);
  veil.poly(projectAll(projection, board), true).fill({ color: theme.canvas, alpha: 1 - photo.opacity });
}
