import { describe, expect, it } from 'vitest';
import { canvasWords } from '../../../../shared-types/words/canvas.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

const { gestures } = canvasWords;
const area = { x: 50, y: 30, lengthMm: 10, widthMm: 10, turnDeg: 0 };
const withSite = () => drive(benchModel({ selectedSiteId: 'site-1' }));

describe('dragging a rework area', () => {
  it('by its edge moves it while the pointer moves and makes one undo step', () => {
    const driver = drive(benchModel()).pointerDown({ x: 55, y: 30 }).pointerMove({ x: 58, y: 33 });
    expect(driver.site()?.area).toEqual({ ...area, x: 53, y: 33 });
    driver.pointerMove({ x: 60, y: 34 }).pointerUp({ x: 60, y: 34 });
    expect(driver.site()?.area).toEqual({ ...area, x: 55, y: 34 });
    driver.expectSteps(gestures.moveArea('U1'));
  });

  it('by its inside moves it when it is selected', () => {
    const driver = withSite().drag({ x: 51, y: 32 }, { x: 61, y: 38 });
    expect(driver.site()?.area).toEqual({ ...area, x: 60, y: 36 });
  });

  it('is taken back whole by Escape, and the rest of the drag does nothing', () => {
    const driver = withSite().pointerDown({ x: 51, y: 32 }).pointerMove({ x: 61, y: 38 });
    expect(driver.keyDown('Escape')).toBe(true);
    expect(driver.site()?.area).toEqual(area);
    driver.pointerMove({ x: 70, y: 38 }).pointerUp({ x: 70, y: 38 }).expectSteps();
    expect(driver.site()?.area).toEqual(area);
    expect(driver.model().selectedSiteId).toBe('site-1');
  });

  it('is taken back when the pointer is lost or another tool is taken', () => {
    const lost = withSite().pointerDown({ x: 51, y: 32 }).pointerMove({ x: 61, y: 38 }).pointerLost();
    expect(lost.site()?.area).toEqual(area);
    const other = withSite().pointerDown({ x: 51, y: 32 }).pointerMove({ x: 61, y: 38 }).use('hand');
    expect(other.site()?.area).toEqual(area);
    other.expectSteps();
  });

  it('snaps to its target and to tenths, freely with Alt, along one axis with Shift', () => {
    const moved = { ...area, x: 57, y: 36 };
    const model = benchModel({ selectedSiteId: 'site-1' });
    const { plan } = model.document;
    const away = {
      ...model,
      document: { ...model.document, plan: { ...plan, sites: [{ ...plan.sites[0], area: moved }] } },
    };
    const near = drive(away).drag({ x: 57, y: 36 }, { x: 50.4, y: 30.3 });
    expect(near.site()?.area).toEqual(area);
    const free = drive(away).hold({ alt: true }).drag({ x: 57, y: 36 }, { x: 50.4, y: 30.3 });
    expect(free.site()?.area.x).toBeCloseTo(50.4, 9);
    const tenths = drive(away).drag({ x: 57, y: 36 }, { x: 40.043, y: 30.06 });
    expect(tenths.site()?.area).toMatchObject({ x: 40, y: 30.1 });
    const straight = drive(away).hold({ shift: true }).drag({ x: 57, y: 36 }, { x: 40, y: 33 });
    expect(straight.site()?.area).toMatchObject({ x: 40, y: 36 });
  });

  it('reads Alt afresh on every move', () => {
    const driver = withSite().pointerDown({ x: 51, y: 32 }).hold({ alt: true }).pointerMove({ x: 57.033, y: 32 });
    expect(driver.site()?.area.x).toBeCloseTo(56.033, 9);
    driver.hold({}).pointerMove({ x: 57.033, y: 32 });
    expect(driver.site()?.area.x).toBeCloseTo(56, 9);
  });
});

describe('the handles', () => {
  it('on a corner size the area against the opposite corner', () => {
    const driver = withSite().drag({ x: 55, y: 35 }, { x: 59, y: 37 });
    expect(driver.site()?.area).toEqual({ x: 52, y: 31, lengthMm: 14, widthMm: 12, turnDeg: 0 });
    driver.expectSteps(gestures.resizeArea('U1'));
  });

  it('on an edge size one way only', () => {
    const driver = withSite().drag({ x: 45, y: 30 }, { x: 41, y: 38 });
    expect(driver.site()?.area).toEqual({ x: 48, y: 30, lengthMm: 14, widthMm: 10, turnDeg: 0 });
  });

  it('keep the proportions with Shift and never turn the area inside out', () => {
    const kept = withSite().hold({ shift: true }).drag({ x: 55, y: 35 }, { x: 60, y: 36 });
    expect(kept.site()?.area).toMatchObject({ lengthMm: 15, widthMm: 15 });
    const crushed = withSite().drag({ x: 55, y: 35 }, { x: 30, y: 20 });
    expect(crushed.site()?.area).toMatchObject({ lengthMm: 0.5, widthMm: 0.5 });
  });

  it('size a turned area along its own axes', () => {
    const model = benchModel({ selectedSiteId: 'site-1' });
    const { plan } = model.document;
    const turned = { ...area, turnDeg: 90 };
    const sites = [{ ...plan.sites[0], area: turned }];
    const driver = drive({ ...model, document: { ...model.document, plan: { ...plan, sites } } });
    driver.drag({ x: 50, y: 35 }, { x: 50, y: 39 });
    expect(driver.site()?.area).toMatchObject({ x: 50, y: 32, lengthMm: 14, widthMm: 10, turnDeg: 90 });
  });

  it('turn the area in steps of 15 degrees, freely with Alt', () => {
    // The turning handle stands 24 px, here 2.4 mm, above the upper edge.
    const driver = withSite().drag({ x: 50, y: 37.4 }, { x: 43, y: 37 });
    expect(driver.site()?.area).toEqual({ ...area, turnDeg: 45 });
    driver.expectSteps(gestures.turnArea('U1'));
    const free = withSite().hold({ alt: true }).drag({ x: 50, y: 37.4 }, { x: 48, y: 37.4 });
    expect(free.site()?.area.turnDeg).toBeCloseTo(15.1, 9);
  });

  it('show which way they pull', () => {
    const driver = withSite();
    expect(driver.cursorAt({ x: 55, y: 30 })).toBe('ew-resize');
    expect(driver.cursorAt({ x: 50, y: 35 })).toBe('ns-resize');
    expect(driver.cursorAt({ x: 55, y: 35 })).toBe('nesw-resize');
    expect(driver.cursorAt({ x: 45, y: 35 })).toBe('nwse-resize');
    expect(driver.cursorAt({ x: 50, y: 37.4 })).toBe('grab');
  });
});

describe('arrow keys', () => {
  it('nudge the selected area one step, with Shift ten, as seen', () => {
    const driver = withSite();
    expect(driver.keyDown('ArrowRight')).toBe(true);
    expect(driver.site()?.area).toMatchObject({ x: 50.5, y: 30 });
    driver.hold({ shift: true }).keyDown('ArrowUp');
    expect(driver.site()?.area).toMatchObject({ x: 50.5, y: 35 });
    driver.expectSteps(gestures.moveArea('U1'), gestures.moveArea('U1'));
  });

  it('follow the eye when the board is turned', () => {
    const driver = drive(benchModel({ selectedSiteId: 'site-1', viewTurnDeg: 90 }));
    driver.keyDown('ArrowUp');
    expect(driver.site()?.area.x).toBeCloseTo(50.5, 9);
    expect(driver.site()?.area.y).toBeCloseTo(30, 9);
  });

  it('are left to the window when nothing can be moved', () => {
    expect(drive(benchModel()).keyDown('ArrowUp')).toBe(false);
    expect(withSite().keyDown('Enter')).toBe(false);
  });
});
