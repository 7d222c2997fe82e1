import { Container, Graphics } from 'pixi.js';
import type { Box } from '../../../shared-types/geometry.ts';
import { edgeLayer, substrateLayer } from '../layers/board.ts';
import { coverLayer } from '../layers/covers.ts';
import { isothermLayer } from '../layers/isotherms.ts';
import { labelLayer } from '../layers/labels.ts';
import { sameInputs } from '../layers/layer.ts';
import { nozzleLeanLayer } from '../layers/nozzle-lean.ts';
import { outlineLayer } from '../layers/outline.ts';
import { gestureLayer, hoverLayer, selectionLayer } from '../layers/overlay.ts';
import { pairLayer } from '../layers/pairs.ts';
import { partsLayer } from '../layers/parts.ts';
import { ringLayer } from '../layers/rings.ts';
import { siteLayer } from '../layers/sites.ts';
import { stateLayer } from '../layers/states.ts';
import { strapLayer } from '../layers/straps.ts';
import { tagLayer } from '../layers/tags.ts';
import type { Scene } from '../scene.ts';
import { carriedSheet } from './carried-sheet.ts';
import { heatSheet } from './heat-sheet.ts';
import { type PaintBox, paint } from './painter.ts';
import { pensFor } from './pens.ts';
import { photoSheet } from './photo-sheet.ts';
import { plainSheet, type Sheet, tiledSheet } from './sheet.ts';

/** The drawing as pixi sees it: sheets from the board upwards in one group that panning only moves. */
export type Stage = {
  root: Container;
  /** Draws what has changed; true when something was drawn. */
  update(scene: Scene, visible: Box): boolean;
  place(at: { x: number; y: number; scale: number }): void;
  destroy(): void;
};

export function makeStage(): Stage {
  const root = new Container();
  const group = new Container({ isRenderGroup: true });
  root.addChild(group);
  const substrate = plainSheet(substrateLayer);
  const heat = heatSheet();
  const photos = photoSheet();
  const isotherms = plainSheet(isothermLayer);
  const clips = clipTo([heat, isotherms]);
  const sheets: Sheet[] = [
    substrate,
    photos,
    heat,
    plainSheet(edgeLayer),
    tiledSheet(partsLayer),
    plainSheet(coverLayer),
    isotherms,
    plainSheet(ringLayer),
    tiledSheet(labelLayer),
    plainSheet(stateLayer),
    plainSheet(selectionLayer),
    plainSheet(siteLayer),
    plainSheet(nozzleLeanLayer),
    plainSheet(hoverLayer),
    carriedSheet(),
    plainSheet(gestureLayer),
    plainSheet(outlineLayer),
    plainSheet(strapLayer),
    plainSheet(tagLayer),
    plainSheet(pairLayer),
  ];
  group.addChild(...clips.masks, ...sheets.map((sheet) => sheet.view));
  return {
    root,
    update(scene, visible) {
      const box = pensFor(scene.theme, scene.projection.ratio);
      let changed = clips.update(scene, box);
      for (const sheet of sheets) changed = sheet.update(scene, box, visible) || changed;
      return changed;
    },
    place({ x, y, scale }) {
      group.position.set(x, y);
      group.scale.set(scale);
    },
    destroy() {
      heat.dispose();
      photos.dispose();
      root.destroy({ children: true });
    },
  };
}

/** Masks in the board's outline, cutouts left out. */
function clipTo(clipped: readonly Sheet[]) {
  const masks = clipped.map((sheet) => {
    const mask = new Graphics();
    sheet.view.mask = mask;
    return mask;
  });
  let drawn: readonly unknown[] | null = null;
  return {
    masks,
    update(scene: Scene, box: PaintBox): boolean {
      const inputs = substrateLayer.inputs(scene);
      if (sameInputs(drawn, inputs)) return false;
      drawn = inputs;
      for (const mask of masks) {
        paint(mask, substrateLayer.marks(scene), box);
        handHolesOn(mask);
      }
      return true;
    },
  };
}

/**
 * Tells the shapes of a mask about their holes. Pixi does this when it draws a shape, but its 2D canvas renderer
 * clips to masks without drawing them and would leave the holes closed.
 */
function handHolesOn(mask: Graphics): void {
  for (const instruction of mask.context.instructions) {
    if (instruction.action !== 'fill' || !instruction.data.hole) continue;
    const shapes = instruction.data.path.shapePath.shapePrimitives;
    const last = shapes[shapes.length - 1];
    if (last) last.holes = instruction.data.hole.shapePath.shapePrimitives;
  }
}
