import type { Point } from '../../shared-types/geometry.ts';
import type { CanvasModel, Pick, Workbench } from '../state/canvas-model.ts';
import type { ToolView } from '../tools/tool.ts';
import { gripAt, grippedArea } from './picking/grips.ts';
import { indexOf, partsTouching, pickAt } from './picking/pick.ts';
import { type Camera, toBoard, toScreen } from './view/camera.ts';
import { type Projection, project } from './view/projection.ts';

/** What is on the canvas at this moment: the drawn model, the eye, and how the board lies under it. */
export type Shown = { model: CanvasModel; camera: Camera; projection: Projection };

export function pickOnScreen({ model, camera, projection }: Shown, screen: Point, touch: boolean): Pick | null {
  const board = toBoard(camera, screen);
  return pickAt(model, projection, { board, scene: project(projection, board), touch });
}

/** The canvas as tools see it. */
export function toolViewOf(shown: () => Shown, workbench: { model: Workbench['model'] }): ToolView {
  return {
    // The window's own model: the drawn one may be a frame behind it.
    model: () => workbench.model(),
    pick: (screen, touch) => pickOnScreen(shown(), screen, touch),
    partsWithin(from, to) {
      const { camera, model } = shown();
      const corners = [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
      return partsTouching(
        model.document.board,
        model.shownSide,
        corners.map((corner) => toBoard(camera, corner)),
      );
    },
    grip(screen, touch) {
      const area = grippedArea(workbench.model());
      return area && gripAt(area, (at) => toScreen(shown().camera, at), screen, touch);
    },
    toBoard: (screen) => toBoard(shown().camera, screen),
    partAt(at) {
      const { model } = shown();
      return indexOf(model.document.board, model.shownSide).at(at, 0)?.refdes ?? null;
    },
    zoom: () => shown().camera.zoom,
  };
}
