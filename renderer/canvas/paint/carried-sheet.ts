import { Graphics } from 'pixi.js';
import { carriedMarks } from '../layers/carried.ts';
import { sameInputs } from '../layers/layer.ts';
import { carriedOf } from '../scene.ts';
import { project } from '../view/projection.ts';
import { paint } from './painter.ts';
import type { Sheet } from './sheet.ts';

/** The parts that are being dragged: drawn once where they come from, and then only moved, however many they are. */
export function carriedSheet(): Sheet {
  const view = new Graphics({ label: 'carried' });
  let drawn: readonly unknown[] | null = null;
  return {
    view,
    update(scene, box) {
      const carried = carriedOf(scene);
      const { projection, theme, model } = scene;
      if (carried) {
        const [from, to] = [{ x: 0, y: 0 }, carried.by].map((at) => project(projection, at));
        const whole = (value: number) => Math.round(value * projection.ratio) / projection.ratio;
        view.position.set(whole(to.x - from.x), whole(to.y - from.y));
      }
      const inputs = [carried?.parts, carried && projection, carried && theme, carried && model.pictures];
      if (sameInputs(drawn, inputs)) return false;
      drawn = inputs;
      if (carried) paint(view, carriedMarks(carried.parts, scene), box);
      else view.clear();
      return true;
    },
  };
}
