import type { Scene } from '../../../../renderer/canvas/scene.ts';
import { themeOf } from '../../../../renderer/canvas/theme.ts';
import type { Camera } from '../../../../renderer/canvas/view/camera.ts';
import { projectionOf } from '../../../../renderer/canvas/view/projection.ts';
import { startingPlacing } from '../../../../renderer/editing/placing.ts';
import type { CanvasModel } from '../../../../renderer/state/canvas-model.ts';
import { startingOutline } from '../../../../renderer/tools/outline/outline-state.ts';
import { type Board, emptyBoard, type Part } from '../../../../shared-types/board.ts';
import type { Assessment, PartExposure } from '../../../../shared-types/evaluation.ts';
import type { Plan } from '../../../../shared-types/plan.ts';
import { emptyPlan } from '../../../../shared-types/rules/new-plan.ts';

/** Small made-up boards and models for the canvas's tests. */

export function part(refdes: string, x: number, y: number, lengthMm = 4, widthMm = 2, rest: Partial<Part> = {}): Part {
  return {
    refdes,
    side: 'top',
    x,
    y,
    turn: 0,
    package: { name: 'test', shape: 'rectangle', lengthMm, widthMm, heightMm: 1 },
    class: 'so',
    classGuessed: false,
    value: '',
    fitted: true,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...rest,
  };
}

export const boardWith = (parts: Part[]): Board => ({ ...emptyBoard('test board', 100, 60), parts });

export const camera = (rest: Partial<Camera> = {}): Camera => ({
  centre: { x: 50, y: 30 },
  zoom: 10,
  turnDeg: 0,
  side: 'top',
  width: 1000,
  height: 600,
  ...rest,
});

export function modelOf(board: Board, plan: Partial<Plan> = {}, rest: Partial<CanvasModel> = {}): CanvasModel {
  return {
    document: { board, plan: { ...emptyPlan('T-1'), ...plan } },
    assessment: null,
    stale: false,
    moment: null,
    selection: new Set(),
    selectedSiteId: null,
    selectedWatchId: null,
    selectedCoverId: null,
    boardOpen: false,
    placing: startingPlacing,
    shownSide: 'top',
    viewTurnDeg: 0,
    outline: startingOutline,
    theme: 'light',
    temperatureUnit: 'C',
    lengthUnit: 'mm',
    wheelDoes: 'zoom',
    layers: { heat: true, isotherms: true, rings: true, labels: true },
    shownRunId: null,
    tool: 'select',
    pictures: new Map(),
    blinked: false,
    photoId: null,
    pairId: null,
    ...rest,
  };
}

export function sceneOf(model: CanvasModel, view: Partial<Camera> = {}): Scene {
  const eye = camera({ side: model.shownSide, turnDeg: model.viewTurnDeg, ...view });
  return {
    model,
    projection: projectionOf(eye, { x: 50, y: 30 }, 1),
    theme: themeOf(model.theme),
    hover: null,
    sketch: null,
  };
}

/** An answer whose faces follow a function of the place; no gaps but where it gives NaN. */
export function assessmentOf(
  temperature: (x: number, y: number) => number,
  parts: Partial<PartExposure>[] = [],
  rest: Partial<Assessment> = {},
): Assessment {
  const grid = { columns: 100, rows: 60, cellMm: 1, originX: 0, originY: 0, grownFromMm: null };
  const face = new Float32Array(grid.columns * grid.rows);
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++)
      face[row * grid.columns + column] = temperature(column + 0.5, row + 0.5);
  return {
    evaluation: {
      revision: 1,
      phase: 'fine',
      grid,
      fields: { top: face, bottom: face.slice() },
      runs: [],
      parts: parts.map((one) => ({ solidusC: 217, reflow: 'none', state: 'clear', ...one }) as PartExposure),
      notEvaluated: [],
      notices: [],
      bands: 'not-computed',
    },
    actions: [],
    findings: [],
    runNumbers: [],
    cautions: [],
    ...rest,
  };
}
