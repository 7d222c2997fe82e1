import { describe, expect, it } from 'vitest';
import { pickOnScreen } from '../../../../renderer/canvas/tool-view.ts';
import { toScreen } from '../../../../renderer/canvas/view/camera.ts';
import { projectionOf } from '../../../../renderer/canvas/view/projection.ts';
import type { CanvasModel } from '../../../../renderer/state/canvas-model.ts';
import type { Cover } from '../../../../shared-types/board.ts';
import type { Point } from '../../../../shared-types/geometry.ts';
import { siteOn } from '../../../../shared-types/rules/new-plan.ts';
import { boardWith, camera, modelOf, part } from './sample.ts';

const target = part('U1', 50, 30, 10, 10);
const can: Cover = {
  id: 'CAN1',
  kind: 'can',
  side: 'top',
  x: 80,
  y: 30,
  lengthMm: 12,
  widthMm: 12,
  turn: 0,
  heightMm: 2,
  sheetMm: 0.2,
  material: 'nickel-silver',
  fixing: 'soldered',
};
const board = { ...boardWith([target, part('C1', 80, 30, 1, 0.5)]), covers: [can] };
const plan = {
  sites: [siteOn(target, 'site-1')],
  tags: [
    {
      id: 'tag-9',
      kind: 'watchPoint' as const,
      order: null,
      note: '',
      name: 'W1',
      side: 'top' as const,
      x: 30,
      y: 30,
      refdes: null,
    },
  ],
};

function picked(model: CanvasModel, at: Point) {
  const eye = camera({ side: model.shownSide, turnDeg: model.viewTurnDeg });
  const shown = { model, camera: eye, projection: projectionOf(eye, { x: 0, y: 0 }, 1) };
  return pickOnScreen(shown, toScreen(eye, at), false);
}

describe('picking', () => {
  const model = modelOf(board, plan);

  it('takes the part inside a rework area, the area at its edge', () => {
    expect(picked(model, { x: 50, y: 30 })).toEqual({ kind: 'part', refdes: 'U1' });
    expect(picked(model, { x: 55, y: 30 })).toEqual({ kind: 'site', siteId: 'site-1' });
  });

  it('takes the whole of a selected rework area, so that it can be dragged', () => {
    expect(picked({ ...model, selectedSiteId: 'site-1' }, { x: 50, y: 30 })).toEqual({
      kind: 'site',
      siteId: 'site-1',
    });
  });

  it('takes a thermocouple by its ring, whatever the zoom', () => {
    expect(picked(model, { x: 30.9, y: 30 })).toEqual({ kind: 'watch', tagId: 'tag-9' });
    expect(picked(model, { x: 31.2, y: 30 })).toBeNull();
  });

  it('takes the part under a can before the can', () => {
    expect(picked(model, { x: 80, y: 30 })).toEqual({ kind: 'part', refdes: 'C1' });
    expect(picked(model, { x: 76, y: 30 })).toEqual({ kind: 'cover', id: 'CAN1' });
  });

  it('takes nothing of the other side', () => {
    const bottom = { ...model, shownSide: 'bottom' as const };
    for (const at of [
      { x: 50, y: 30 },
      { x: 55, y: 30 },
      { x: 30, y: 30 },
      { x: 76, y: 30 },
    ])
      expect(picked(bottom, at)).toBeNull();
  });
});
