import { Container, Graphics } from 'pixi.js';
import type { Box } from '../../../shared-types/geometry.ts';
import { edgeLayer, substrateLayer } from '../layers/board.ts';
import { coverLayer } from '../layers/covers.ts';
import { isothermLayer } from '../layers/isotherms.ts';
import { labelLayer } from '../layers/labels.ts';
import { sameInputs } from '../layers/layer.ts';
import { gestureLayer, hoverLayer, selectionLayer } from '../layers/overlay.ts';
import { partsLayer } from '../layers/parts.ts';
import { ringLayer, siteLayer } from '../layers/sites.ts';
import { stateLayer } from '../layers/states.ts';
import { tagLayer } from '../layers/tags.ts';
import type { Scene } from '../scene.ts';
import type { Theme } from '../theme.ts';
import { makeGlyphPictures } from './glyph-pictures.ts';
import { heatSheet } from './heat-sheet.ts';
import { makeLettering } from './lettering.ts';
import { type PaintBox, paint } from './painter.ts';
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
  const isotherms = plainSheet(isothermLayer);
  const clips = clipTo([heat, isotherms]);
  const sheets: Sheet[] = [
    substrate,
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
    plainSheet(hoverLayer),
    plainSheet(gestureLayer),
    plainSheet(tagLayer),
  ];
  group.addChild(...clips.masks, ...sheets.map((sheet) => sheet.view));
  const pens = makePens();
  return {
    root,
    update(scene, visible) {
      const { box, fresh } = pens.get(scene.theme, scene.projection.ratio);
      if (fresh) for (const sheet of sheets) sheet.invalidate();
      let changed = clips.update(scene, box);
      for (const sheet of sheets) changed = sheet.update(scene, box, visible) || changed;
      if (fresh) pens.dropOld();
      return changed;
    },
    place({ x, y, scale }) {
      group.position.set(x, y);
      group.scale.set(scale);
    },
    destroy() {
      root.destroy({ children: true });
      pens.destroy();
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

/** Letters and glyphs of a theme and a pixel ratio; made anew when either changes. */
function makePens() {
  let box: PaintBox | null = null;
  let made: readonly unknown[] | null = null;
  let old: PaintBox | null = null;
  const drop = (pens: PaintBox | null) => {
    pens?.lettering.destroy();
    pens?.glyphs.destroy();
  };
  return {
    get(theme: Theme, ratio: number): { box: PaintBox; fresh: boolean } {
      if (box && sameInputs(made, [theme, ratio])) return { box, fresh: false };
      made = [theme, ratio];
      old = box;
      box = { lettering: makeLettering(theme, ratio), glyphs: makeGlyphPictures(theme, ratio), ratio };
      return { box, fresh: true };
    },
    dropOld() {
      drop(old);
      old = null;
    },
    destroy() {
      drop(old);
      drop(box);
    },
  };
}
