import { describe, expect, it } from 'vitest';
import { canvasWords } from '../../../../shared-types/words/canvas.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

const { gestures } = canvasWords;

describe('the site tool', () => {
  it('marks the clicked part, selects the new site and is put down', () => {
    const driver = drive(benchModel({ tool: 'site' })).click({ x: 80, y: 30 });
    expect(driver.site('site-2')).toMatchObject({ target: 'U2', area: { x: 80, y: 30, lengthMm: 8, widthMm: 8 } });
    expect(driver.model().selectedSiteId).toBe('site-2');
    expect(driver.model().tool).toBe('select');
    driver.expectSteps(gestures.addSite);
  });

  it('stays in hand while Shift is held', () => {
    const driver = drive(benchModel({ tool: 'site' }))
      .hold({ shift: true })
      .click({ x: 80, y: 30 });
    expect(driver.model().tool).toBe('site');
    driver.click({ x: 20, y: 20 });
    expect(driver.model().document.plan.sites.map((site) => site.target)).toEqual(['U1', 'U2', 'C1']);
  });

  it('selects the site that a part has already', () => {
    const driver = drive(benchModel({ tool: 'site' }))
      .click({ x: 50, y: 30 })
      .expectSteps();
    expect(driver.model().selectedSiteId).toBe('site-1');
  });

  it('draws an area by a drag, shown while it lasts', () => {
    const driver = drive(benchModel({ tool: 'site' }))
      .pointerDown({ x: 74, y: 24 })
      .pointerMove({ x: 90, y: 37 });
    expect(driver.sketch()).toEqual({
      kind: 'area',
      area: { x: 82, y: 30.5, lengthMm: 16, widthMm: 13, turnDeg: 0 },
    });
    driver.pointerUp({ x: 90, y: 37 });
    expect(driver.site('site-2')).toMatchObject({ target: 'U2', area: { x: 82, y: 30.5, lengthMm: 16, widthMm: 13 } });
    expect(driver.sketch()).toBeNull();
  });

  it('draws along the screen when the board is clamped askew', () => {
    const driver = drive(benchModel({ tool: 'site', viewTurnDeg: 30 }));
    driver.pointerDownAt({ x: 700, y: 100 }).pointerMoveAt({ x: 860, y: 220 });
    const sketch = driver.sketch();
    if (sketch?.kind !== 'area') throw new Error('no area');
    expect(sketch.area.turnDeg).toBeCloseTo(-30, 6);
    expect(sketch.area.lengthMm).toBeCloseTo(16, 6);
    expect(sketch.area.widthMm).toBeCloseTo(12, 6);
  });

  it('marks nothing on bare board, by a drag that catches no part, or after Escape', () => {
    const driver = drive(benchModel({ tool: 'site' })).click({ x: 10, y: 50 });
    driver.pointerDown({ x: 74, y: 24 }).pointerMove({ x: 90, y: 37 });
    driver.keyDown('Escape');
    expect(driver.sketch()).toBeNull();
    driver.pointerUp({ x: 90, y: 37 }).expectSteps();
    expect(driver.model().document.plan.sites).toHaveLength(1);
    expect(driver.model().tool).toBe('site');
    driver.keyDown('Escape');
    expect(driver.model().tool).toBe('select');
  });
});
