import { describe, expect, it } from 'vitest';
import { fitBox, toScreen, zoomAt } from '../../../../renderer/canvas/view/camera.ts';
import {
  boardBox,
  firstCamera,
  followModel,
  followView,
  nextProjection,
  outlineOf,
} from '../../../../renderer/canvas/view/view-state.ts';
import { boardWith, camera, modelOf } from './sample.ts';

const model = modelOf(boardWith([]));

describe('what is drawn anew', () => {
  const first = nextProjection(null, camera(), model, 1, true);

  it('keeps the drawing while panning', () => {
    expect(nextProjection(first, camera({ centre: { x: 1, y: 2 } }), model, 1, true)).toBe(first);
  });

  it('stretches the old drawing in the middle of a zoom and draws anew when it rests', () => {
    const zoomed = zoomAt(camera(), { x: 0, y: 0 }, 1.5);
    expect(nextProjection(first, zoomed, model, 1, false)).toBe(first);
    expect(nextProjection(first, zoomed, model, 1, true).zoom).toBeCloseTo(15, 9);
  });

  it('draws anew at once when the board is turned over or turned, or goes to a screen of another pixel ratio', () => {
    expect(nextProjection(first, camera({ side: 'bottom' }), model, 1, false).side).toBe('bottom');
    expect(nextProjection(first, camera({ turnDeg: 90 }), model, 1, false).turnDeg).toBe(90);
    expect(nextProjection(first, camera(), model, 2, false).ratio).toBe(2);
  });
});

describe('turning the board over', () => {
  it('keeps the middle of the view when only a part of the board is seen', () => {
    const close = camera({ zoom: 60, centre: { x: 20, y: 11 } });
    const over = followModel(close, { ...model, shownSide: 'bottom' });
    expect(over.centre).toEqual(close.centre);
    expect(over.zoom).toBe(60);
  });

  it('fits the board anew when the whole of it was in view', () => {
    const whole = firstCamera(model, 1000, 600);
    const turned = followModel(whole, { ...model, viewTurnDeg: 90 });
    expect(turned).toEqual(fitBox({ ...whole, turnDeg: 90 }, boardBox(model)));
    const corner = toScreen(turned, { x: 100, y: 60 });
    expect(corner.y).toBeGreaterThan(0);
  });
});

it('a board wholly in view stays so when the view shrinks; a closer look keeps its middle', () => {
  const whole = firstCamera(model, 1000, 600);
  const low = followView(whole, model, 1000, 320);
  for (const corner of outlineOf(model.document.board.outline)) {
    const { x, y } = toScreen(low, corner);
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x).toBeLessThanOrEqual(1000);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(320);
  }
  const near = { ...whole, zoom: whole.zoom * 6 };
  expect(followView(near, model, 1000, 320)).toEqual({ ...near, height: 320 });
});
