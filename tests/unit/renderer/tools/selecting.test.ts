import { describe, expect, it } from 'vitest';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

const C1 = { x: 20, y: 20 };
const C2 = { x: 26, y: 20 };
const BARE = { x: 10, y: 50 };

describe('clicking', () => {
  it('replaces the selection; bare board clears it', () => {
    drive(benchModel()).click(C1).expectSelected('C1').click(C2).expectSelected('C2').click(BARE).expectSelected();
  });

  it('adds with Shift and toggles with Ctrl, as the keys are when the button is let go', () => {
    const driver = drive(benchModel()).click(C1).hold({ shift: true }).click(C2).expectSelected('C1', 'C2');
    driver.hold({ ctrl: true }).click(C1).expectSelected('C2');
    driver.hold({}).pointerDown(C1).hold({ shift: true }).pointerUp(C1).expectSelected('C1', 'C2');
  });

  it('on bare board with a key held keeps the selection', () => {
    drive(benchModel()).click(C1).hold({ shift: true }).click(BARE).expectSelected('C1');
  });

  it('forgives a trembling hand', () => {
    drive(benchModel())
      .pointerDownAt({ x: 200, y: 400 })
      .pointerMoveAt({ x: 202, y: 401 })
      .pointerUpAt({ x: 202, y: 401 })
      .expectSelected('C1');
  });

  it('takes a site by its edge, and the part in it by another click inside', () => {
    const driver = drive(benchModel()).click({ x: 55, y: 33 });
    expect(driver.model().selectedSiteId).toBe('site-1');
    driver.click({ x: 50, y: 31 }).expectSelected('U1');
    expect(driver.model().selectedSiteId).toBeNull();
  });
});

describe('the marquee', () => {
  it('selects what it touches, from any corner, and goes away', () => {
    const driver = drive(benchModel()).pointerDown({ x: 28, y: 24 }).pointerMove({ x: 22, y: 18 });
    driver.pointerMove({ x: 20.5, y: 17 });
    expect(driver.sketch()?.kind).toBe('marquee');
    driver.pointerUp({ x: 20.5, y: 17 }).expectSelected('C1', 'C2');
    expect(driver.sketch()).toBeNull();
  });

  it('adds with Shift and toggles with Ctrl', () => {
    const driver = drive(benchModel()).click({ x: 20, y: 40 }).hold({ shift: true });
    driver.drag({ x: 17, y: 17 }, { x: 28, y: 24 }).expectSelected('C1', 'C2', 'C3');
    driver.hold({ ctrl: true }).drag({ x: 17, y: 17 }, { x: 22, y: 24 }).expectSelected('C2', 'C3');
  });

  it('is undone by Escape, which a later press clears the selection with', () => {
    const driver = drive(benchModel()).click(C1).pointerDown({ x: 17, y: 17 }).pointerMove({ x: 28, y: 24 });
    expect(driver.keyDown('Escape')).toBe(true);
    expect(driver.sketch()).toBeNull();
    driver.pointerUp({ x: 28, y: 24 }).expectSelected('C1');
    expect(driver.keyDown('Escape')).toBe(true);
    driver.expectSelected();
    expect(driver.keyDown('Escape')).toBe(false);
  });

  it('works on the turned bottom', () => {
    const model = benchModel({ viewTurnDeg: 90, shownSide: 'bottom' });
    const { board } = model.document;
    const turned = { ...board, parts: board.parts.map((one) => ({ ...one, side: 'bottom' as const })) };
    drive({ ...model, document: { ...model.document, board: turned } })
      .drag({ x: 17, y: 17 }, { x: 28, y: 24 })
      .expectSelected('C1', 'C2');
  });
});
