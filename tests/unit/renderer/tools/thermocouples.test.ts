import { describe, expect, it } from 'vitest';
import { canvasWords } from '../../../../shared-types/words/canvas.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

const { gestures } = canvasWords;
const points = (driver: ReturnType<typeof drive>) =>
  driver.model().document.plan.tags.flatMap((tag) => (tag.kind === 'watchPoint' ? [tag] : []));

describe('the watch tool', () => {
  it('places one thermocouple a click, on the part under it, and stays in hand', () => {
    const driver = drive(benchModel({ tool: 'watch' }))
      .click({ x: 80, y: 30 })
      .click({ x: 10, y: 50 });
    expect(points(driver).slice(1)).toMatchObject([
      { name: 'W2', side: 'top', x: 80, y: 30, refdes: 'U2' },
      { name: 'W3', side: 'top', x: 10, y: 50, refdes: null },
    ]);
    expect(driver.model().tool).toBe('watch');
    expect(driver.model().selectedWatchId).toBe(points(driver)[2].id);
    driver.expectSteps(gestures.addWatchPoint, gestures.addWatchPoint);
  });

  it('places nothing by a drag or after Escape, and a second Escape puts it down', () => {
    const driver = drive(benchModel({ tool: 'watch' })).drag({ x: 10, y: 50 }, { x: 15, y: 50 });
    driver.pointerDown({ x: 10, y: 50 });
    driver.keyDown('Escape');
    driver.pointerUp({ x: 10, y: 50 }).expectSteps();
    driver.keyDown('Escape');
    expect(driver.model().tool).toBe('select');
  });

  it('places on the side that is shown', () => {
    const driver = drive(benchModel({ tool: 'watch', shownSide: 'bottom' })).click({ x: 80, y: 30 });
    expect(points(driver)[1]).toMatchObject({ side: 'bottom', x: 80, y: 30, refdes: null });
  });
});

describe('dragging a thermocouple', () => {
  it('moves it in one step and ties it to the part under it', () => {
    const driver = drive(benchModel()).drag({ x: 65, y: 45 }, { x: 80, y: 31 });
    expect(points(driver)[0]).toMatchObject({ x: 80, y: 31, refdes: 'U2' });
    expect(driver.model().selectedWatchId).toBe('tag-9');
    driver.expectSteps(gestures.moveWatchPoint('W1'));
  });

  it('is taken back by Escape', () => {
    const driver = drive(benchModel()).pointerDown({ x: 65, y: 45 }).pointerMove({ x: 80, y: 31 });
    driver.keyDown('Escape');
    expect(points(driver)[0]).toMatchObject({ x: 65, y: 45, refdes: null });
    driver.expectSteps();
  });

  it('can be done by arrow keys', () => {
    const driver = drive(benchModel({ selectedWatchId: 'tag-9' }));
    driver.keyDown('ArrowLeft');
    expect(points(driver)[0]).toMatchObject({ x: 64.5, y: 45 });
  });
});
