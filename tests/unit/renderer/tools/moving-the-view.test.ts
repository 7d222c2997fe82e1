import { describe, expect, it } from 'vitest';
import { wheelFactor } from '../../../../renderer/tools/navigation.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

const TOOLS = ['select', 'hand', 'site', 'watch'] as const;

describe('moving the view', () => {
  it('by the hand tool follows the pointer', () => {
    drive(benchModel({ tool: 'hand' }))
      .pointerDownAt({ x: 300, y: 300 })
      .pointerMoveAt({ x: 350, y: 280 })
      .pointerMoveAt({ x: 400, y: 280 })
      .pointerUpAt({ x: 400, y: 280 })
      .pointerMoveAt({ x: 600, y: 280 })
      .expectCameraToBe({ x: 40, y: 28 }, 10);
  });

  it('by the middle button works in every tool and does nothing else', () => {
    for (const tool of TOOLS) {
      const driver = drive(benchModel({ tool }))
        .pointerDownAt({ x: 500, y: 300 }, 1)
        .pointerMoveAt({ x: 600, y: 300 })
        .pointerUpAt({ x: 600, y: 300 })
        .expectCameraToBe({ x: 40, y: 30 }, 10)
        .expectSelected()
        .expectSteps();
      expect(driver.sketch()).toBeNull();
    }
  });

  it('by Space and drag works in every tool; without Space the tool has the button again', () => {
    for (const tool of TOOLS)
      drive(benchModel({ tool }))
        .space(true)
        .pointerDownAt({ x: 500, y: 300 })
        .pointerMoveAt({ x: 500, y: 400 })
        .pointerUpAt({ x: 500, y: 400 })
        .space(false)
        .expectCameraToBe({ x: 50, y: 40 }, 10)
        .expectSteps();
    drive(benchModel()).space(true).space(false).click({ x: 20, y: 20 }).expectSelected('C1');
  });

  it('goes on when Space is let go before the button', () => {
    drive(benchModel())
      .space(true)
      .pointerDownAt({ x: 500, y: 300 })
      .space(false)
      .pointerMoveAt({ x: 600, y: 300 })
      .expectCameraToBe({ x: 40, y: 30 }, 10)
      .pointerUpAt({ x: 600, y: 300 })
      .expectSelected();
  });

  it('is not done by the right button', () => {
    drive(benchModel({ tool: 'hand' }))
      .pointerDownAt({ x: 500, y: 300 }, 2)
      .pointerMoveAt({ x: 600, y: 300 })
      .expectCameraToBe({ x: 50, y: 30 }, 10);
  });
});

describe('touch', () => {
  it('with one finger on bare board moves the view, on a part selects it', () => {
    drive(benchModel())
      .byTouch()
      .pointerDownAt({ x: 100, y: 100 })
      .pointerMoveAt({ x: 150, y: 100 })
      .pointerUpAt({ x: 150, y: 100 })
      .expectCameraToBe({ x: 45, y: 30 }, 10)
      .expectSelected();
    drive(benchModel()).byTouch().click({ x: 20, y: 20 }).expectSelected('C1');
  });

  it('with two fingers zooms about their middle and moves with it', () => {
    drive(benchModel())
      .byTouch()
      .pointerDownAt({ x: 400, y: 300 }, 0, 1)
      .pointerDownAt({ x: 600, y: 300 }, 0, 2)
      .pointerMoveAt({ x: 300, y: 300 }, 1)
      .pointerMoveAt({ x: 700, y: 300 }, 2)
      .expectCameraToBe({ x: 50, y: 30 }, 20)
      .pointerUpAt({ x: 300, y: 300 }, 1)
      .pointerMoveAt({ x: 800, y: 300 }, 2)
      .pointerUpAt({ x: 800, y: 300 }, 2)
      .expectCameraToBe({ x: 50, y: 30 }, 20)
      .expectSelected();
  });

  it('with a second finger takes the gesture of the first one back', () => {
    const driver = drive(benchModel({ selectedSiteId: 'site-1' }))
      .byTouch()
      .pointerDown({ x: 51, y: 32 })
      .pointerMove({ x: 61, y: 38 });
    expect(driver.site()?.area.x).not.toBe(50);
    driver.pointerDownAt({ x: 100, y: 100 }, 0, 2);
    expect(driver.site()?.area.x).toBe(50);
    driver.pointerUpAt({ x: 100, y: 100 }, 2).pointerUp({ x: 61, y: 38 }).expectSteps();
    expect(driver.busy()).toBe(false);
  });
});

describe('the wheel', () => {
  it('zooms in when it is turned away from the hand, and back by the same', () => {
    expect(wheelFactor(-100, 0, false)).toBeGreaterThan(1.1);
    expect(wheelFactor(-100, 0, false) * wheelFactor(100, 0, false)).toBeCloseTo(1, 12);
  });

  it('counts a line of the wheel like its pixels and lets no jolt jump', () => {
    expect(wheelFactor(3, 1, false)).toBeCloseTo(wheelFactor(99, 0, false), 9);
    expect(wheelFactor(-5000, 0, false)).toBeLessThan(1.6);
  });

  it('follows the small steps of a pinch on a touch pad more closely', () => {
    expect(wheelFactor(-5, 0, true)).toBeGreaterThan(wheelFactor(-5, 0, false));
  });

  it('zooms at the pointer in every tool', () => {
    for (const tool of TOOLS) {
      const camera = drive(benchModel({ tool })).wheel({ x: 500, y: 300 }, 0, -100).camera();
      expect(camera.centre).toEqual({ x: 50, y: 30 });
      expect(camera.zoom).toBeGreaterThan(11);
    }
  });

  it('pans for who wants it so, sideways with Shift, and zooms with Ctrl', () => {
    const pans = () => drive(benchModel({ wheelDoes: 'pan' }));
    const at = { x: 500, y: 300 };
    pans().wheel(at, 0, 100).expectCameraToBe({ x: 50, y: 20 }, 10);
    pans().wheel(at, 30, 0).expectCameraToBe({ x: 53, y: 30 }, 10);
    pans().hold({ shift: true }).wheel(at, 0, 100).expectCameraToBe({ x: 60, y: 30 }, 10);
    expect(pans().hold({ ctrl: true }).wheel(at, 0, -100).camera().zoom).toBeGreaterThan(11);
  });
});
