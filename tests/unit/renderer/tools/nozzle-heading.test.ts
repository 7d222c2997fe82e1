import { expect, test } from 'vitest';
import { leanArrows } from '../../../../renderer/canvas/picking/lean-tip.ts';
import { setNozzle } from '../../../../renderer/editing/station.ts';
import { canvasWords } from '../../../../shared-types/words/canvas.ts';
import { benchModel } from './bench.ts';
import { drive } from './driver.ts';

/** A nozzle 20 mm off that leans by 45 degrees along +x: its footprint moves by 20 mm. */
function leaning(more: Parameters<typeof benchModel>[0] = {}) {
  const model = benchModel(more);
  return { ...model, document: setNozzle(model.document, { tiltDeg: 45, standOffMm: 20, headingDeg: 0 }) };
}
const headingOf = ({ document }: ReturnType<typeof leaning>): number => {
  const { nozzle } = document.plan.station;
  return 'headingDeg' in nozzle ? nozzle.headingDeg : Number.NaN;
};

test('the head of the arrow lies where the footprint goes, and nowhere for an upright nozzle', () => {
  const { x, y } = leaning().document.plan.sites[0]!.area;
  const [arrow] = leanArrows(leaning(), 10);
  expect(arrow!.tip.x).toBeCloseTo(x + 20, 9);
  expect(arrow!.tip.y).toBeCloseTo(y, 9);
  const upright = { ...leaning(), document: setNozzle(leaning().document, { tiltDeg: 0 }) };
  expect(leanArrows(upright, 10)).toEqual([]);
  expect(leanArrows({ ...leaning(), shownSide: 'bottom' }, 10), 'of the other side').toEqual([]);
});

test('dragging the head turns the heading in steps of 15 degrees, freely with Alt, as one undo step', () => {
  const driver = drive(leaning()).drag({ x: 70, y: 30 }, { x: 51, y: 50 });
  expect(headingOf(driver.model())).toBe(90);
  driver.expectSteps(canvasWords.gestures.turnHeading);
  const free = drive(leaning()).hold({ alt: true }).drag({ x: 70, y: 30 }, { x: 60, y: 20 });
  expect(headingOf(free.model())).toBeCloseTo(315, 6);
});

test('Escape takes it back; in the stage Board the arrow is only looked at', () => {
  const driver = drive(leaning()).pointerDown({ x: 70, y: 30 }).pointerMove({ x: 50, y: 55 });
  expect(headingOf(driver.model())).toBe(90);
  driver.keyDown('Escape');
  expect(headingOf(driver.model())).toBe(0);
  const onBoard = drive(leaning({ boardOpen: true })).drag({ x: 70, y: 30 }, { x: 50, y: 55 });
  expect(headingOf(onBoard.model())).toBe(0);
});
