import { expect, test } from 'vitest';
import type { CanvasModel } from '../../../../renderer/state/canvas-model.ts';
import { type OutlineState, startingOutline } from '../../../../renderer/tools/outline/outline-state.ts';
import { areaOf } from '../../../../shared-types/contour/edges.ts';
import { boardFault } from '../../../../shared-types/rules/board-faults.ts';
import { boardWith, modelOf } from '../canvas/sample.ts';
import { drive } from './driver.ts';

/** The tool on a board of 100 x 60 mm at 10 px/mm. */
const bench = (outline: Partial<OutlineState> = {}, rest: Partial<CanvasModel> = {}) =>
  drive(modelOf(boardWith([]), {}, { tool: 'outline', outline: { ...startingOutline, ...outline }, ...rest }));
type Bench = ReturnType<typeof bench>;

const at = (x: number, y: number) => ({ x, y });
const board = (b: Bench) => b.model().document.board;
const outline = (b: Bench) => b.model().outline;
const type = (b: Bench, ...keys: string[]) => {
  for (const key of keys.flatMap((word) => (/^[\d.,-]+$/.test(word) ? [...word] : [word])))
    expect(b.keyDown(key), key).toBe(true);
  return b;
};
const click = (b: Bench, x: number, y: number) => b.pointerMove(at(x, y)).click(at(x, y));

test('a polygon by clicks snaps to grid, angles and its first corner, which closes it', () => {
  const b = bench({ mode: 'polygon' });
  for (const [x, y] of [
    [20.1, 15.1],
    [70.2, 15.4],
    [70.1, 50.2],
    [20.2, 49.9],
  ])
    click(b, x, y);
  expect(outline(b).draft.points).toEqual([at(20, 15), at(70, 15), at(70, 50), at(20, 50)]);
  b.expectSteps();
  click(b, 20.3, 15.3);
  expect(board(b).outline).toEqual([at(20, 15), at(70, 15), at(70, 50), at(20, 50)]);
  b.expectSteps('draw the outline');
});

test('along an upright or level edge the grid holds', () => {
  const b = bench({ mode: 'polygon' });
  click(b, 0.12, 20.13);
  click(b, 33.21, -0.09);
  expect(outline(b).draft.points).toEqual([at(0, 20), at(33, 0)]);
});

test('figures hold length and angle; Tab changes the field, Enter sets the point and closes at last', () => {
  const b = bench({ mode: 'polygon' });
  type(b, '0', 'Tab', '0', 'Enter');
  type(b, '60', 'Tab', '0', 'Enter', '40', 'Tab', '90', 'Enter', '60', 'Tab', '180', 'Enter', 'Enter');
  expect(board(b).outline).toEqual([at(0, 0), at(60, 0), at(60, 40), at(0, 40)]);
  b.expectSteps('draw the outline');
});

test('an arc takes its end and then its bend: by three points, by radius, by sweep', () => {
  const start = () => {
    const b = bench({ mode: 'polygon' });
    type(b, '0', 'Tab', '0', 'Enter', '60', 'Tab', '0', 'Enter', 'a', '20', 'Tab', '90', 'Enter');
    return b;
  };
  const end = (b: Bench) => {
    type(b, 'a', '60', 'Tab', '180', 'Enter', 'Enter');
    return board(b).outline;
  };
  const byPoint = start();
  click(byPoint, 65, 10);
  expect(end(byPoint)[1].bulge).toBeCloseTo(0.5, 9);
  expect(end(type(start(), '10', 'Enter'))[1].bulge).toBeCloseTo(1, 9);
  expect(end(type(start(), 'Tab', '-90', 'Enter'))[1].bulge).toBeCloseTo(-Math.tan(Math.PI / 8), 9);
});

test('an edge that would cross one already drawn is refused, with the place; the shape stays', () => {
  const b = bench({ mode: 'polygon', snapping: false });
  for (const [x, y] of [
    [10, 10],
    [50, 10],
    [50, 40],
    [30, 0],
  ])
    click(b, x, y);
  expect(outline(b).draft.points).toHaveLength(3);
  expect(outline(b).refused).toMatchObject({ kind: 'self', crosses: true, edges: [0, 2], at: { x: 35, y: 10 } });
  // Closing over what was drawn is refused too.
  b.keyDown('Backspace');
  click(b, 30, 30);
  expect(outline(b).refused).toBeNull();
});

test('Esc drops figures, then the shape, then the mode, then the tool; Backspace and Ctrl+Z take a point back', () => {
  const b = bench({ mode: 'polygon' });
  type(b, '5', 'Tab', '5', 'Enter', '10', 'Tab', '0', 'Enter', '7');
  b.keyDown('Backspace');
  expect(outline(b).draft.points).toHaveLength(2);
  b.keyDown('Backspace');
  expect(outline(b).draft.points).toHaveLength(1);
  type(b, '10', 'Tab', '0', 'Enter');
  b.hold({ ctrl: true }).keyDown('z');
  b.hold({});
  expect(outline(b).draft.points).toHaveLength(1);
  type(b, '9', 'Escape');
  expect(outline(b).draft.typed).toEqual({});
  b.keyDown('Escape');
  expect(outline(b).draft.points).toEqual([]);
  b.keyDown('Escape');
  expect(outline(b).mode).toBe('change');
  b.keyDown('Escape');
  expect(b.model().tool).toBe('select');
  b.expectSteps();
});

test('rectangle by drag and by figures with rounded corners, circle, slot and hole become cutouts', () => {
  const b = bench({ mode: 'rectangle', target: 'cutout' });
  b.drag(at(10, 10), at(30.1, 20.2));
  expect(board(b).cutouts[0]).toEqual([at(10, 10), at(30, 10), at(30, 20), at(10, 20)]);
  type(b, '40', 'Tab', '10', 'Enter', '10', 'Tab', '6', 'Tab', '2', 'Enter');
  expect(areaOf(board(b).cutouts[1])).toBeCloseTo(60 - (4 - Math.PI) * 4, 9);
  b.model().outline.mode = 'circle';
  type(b, '70', 'Tab', '30', 'Enter', 'Tab', '8', 'Enter');
  expect(areaOf(board(b).cutouts[2])).toBeCloseTo(16 * Math.PI, 9);
  b.model().outline.mode = 'slot';
  type(b, '20', 'Tab', '50', 'Enter', '8', 'Tab', '0', 'Tab', '3', 'Enter');
  expect(areaOf(board(b).cutouts[3])).toBeCloseTo(24 + Math.PI * 2.25, 9);
  b.model().outline.mode = 'hole';
  click(b, 90.1, 50.1);
  expect(areaOf(board(b).cutouts[4])).toBeCloseTo(Math.PI * 1.6 ** 2, 9);
  type(b, '5', 'Tab', '5', 'Tab', '2.7', 'Enter');
  expect(areaOf(board(b).cutouts[5])).toBeCloseTo(Math.PI * 1.35 ** 2, 9);
  expect(outline(b).holeMm).toBe(2.7);
  expect(boardFault(board(b))).toBeNull();
  b.expectSteps(...Array(6).fill('draw a cutout'));
});

test('a hole over the edge is refused and said where; nothing changes', () => {
  const b = bench({ mode: 'hole' });
  click(b, 0.5, 30);
  expect(outline(b).refused).toMatchObject({ kind: 'pair', other: 'outline' });
  expect(board(b).cutouts).toEqual([]);
  b.expectSteps();
});

test('with Shift a hole over the edge cuts a bay into the outline, by click and by figures, as one step', () => {
  const b = bench({ mode: 'hole' });
  const corners = board(b).outline.length;
  b.hold({ shift: true });
  click(b, 0, 30);
  expect(outline(b).refused).toBeNull();
  expect(board(b).outline).toHaveLength(corners + 3);
  b.hold({});
  for (const key of ['0', 'Tab', '1', '0', 'Tab', '4']) b.keyDown(key);
  b.hold({ shift: true }).keyDown('Enter');
  expect(board(b).outline).toContainEqual({ x: 0, y: 12, bulge: expect.closeTo(-0.414, 3) });
  expect(board(b).cutouts).toEqual([]);
  b.expectSteps('cut a bay into the outline', 'cut a bay into the outline');
});

test('corners and edges are dragged as one step each; Alt lifts the grid', () => {
  const b = bench();
  b.drag(at(100, 60), at(90.13, 55.08));
  expect(board(b).outline[2]).toEqual(at(90, 55));
  b.hold({ alt: true }).drag(at(90, 55), at(91.17, 55.23));
  expect(board(b).outline[2].x).toBeCloseTo(91.17, 9);
  b.hold({}).drag(at(0, 25), at(5.1, 25));
  expect(board(b).outline.map(({ x }) => x)).toEqual([5, 100, expect.closeTo(91.17, 9), 5]);
  b.expectSteps('move a corner of outline', 'move a corner of outline', 'move an edge of outline');
});

test('the ring in the middle of an edge bends it and brings it back straight', () => {
  const b = bench({ picked: { id: 'outline', part: 'whole', index: 0 } });
  b.drag(at(50, 0), at(50, -10));
  expect(board(b).outline[0].bulge).toBeCloseTo(0.2, 9);
  b.drag(at(50, -10), at(50, -0.4));
  expect(board(b).outline[0]).toEqual(at(0, 0));
});

test('a drag into a crossing shows it and lets everything be as it was', () => {
  const b = bench();
  b.pointerDown(at(100, 60)).pointerMove(at(60, 40)).pointerMove(at(50, -20));
  expect(outline(b).refused).toMatchObject({ kind: 'self', id: 'outline', crosses: true });
  expect(outline(b).wanted).not.toBeNull();
  b.pointerUp(at(50, -20));
  expect(board(b).outline[2]).toEqual(at(100, 60));
  expect(outline(b).wanted).toBeNull();
  expect(outline(b).refused).not.toBeNull();
  b.expectSteps();
});

test('a cutout is moved by its inside, copied, deleted; a corner inserted with Ctrl and deleted by key', () => {
  const b = bench({ mode: 'hole' });
  click(b, 50, 30);
  b.keyDown('Escape');
  b.drag(at(50, 30.6), at(60, 30.6));
  expect(board(b).cutouts[0][0].x).toBeCloseTo(60 - 1.6, 0);
  b.hold({ ctrl: true }).keyDown('d');
  b.hold({});
  expect(board(b).cutouts).toHaveLength(2);
  b.keyDown('Delete');
  expect(board(b).cutouts).toHaveLength(1);
  b.hold({ ctrl: true }).drag(at(50, 0), at(50, 5));
  b.hold({});
  expect(board(b).outline[1]).toEqual(at(50, 5));
  b.keyDown('Delete');
  expect(board(b).outline).toHaveLength(4);
  b.keyDown('Escape');
  expect(outline(b).picked).toBeNull();
});

test('arrow keys move what is chosen by the grid, as seen; A bends a chosen edge', () => {
  const b = bench({ picked: { id: 'outline', part: 'corner', index: 2 } });
  type(b, 'ArrowRight', 'ArrowUp');
  expect(board(b).outline[2]).toEqual(at(100.5, 60.5));
  click(b, 30, 0);
  expect(outline(b).picked).toEqual({ id: 'outline', part: 'edge', index: 0 });
  type(b, 'a');
  expect(board(b).outline[0].bulge).toBeCloseTo(Math.tan(Math.PI / 8), 9);
});

test('a finger takes hold from farther away, a second finger keeps the shape', () => {
  const b = bench().byTouch();
  b.drag(at(98.5, 58.6), at(90, 50));
  expect(board(b).outline[2]).toEqual(at(90, 50));
  const drawn = bench({ mode: 'polygon' }).byTouch();
  click(drawn, 20, 20);
  click(drawn, 40, 20);
  drawn.pointerDown(at(50, 50), 0, 1).pointerDown(at(60, 50), 0, 2).pointerUp(at(60, 50), 2).pointerUp(at(50, 50), 1);
  expect(outline(drawn).draft.points).toHaveLength(2);
  drawn.use('select');
  expect(outline(drawn).draft.points).toEqual([]);
});

test('figures are read in the unit of the settings', () => {
  const b = bench({ mode: 'rectangle' }, { lengthUnit: 'mil' });
  type(b, '0', 'Tab', '0', 'Enter', '1000', 'Tab', '500', 'Enter');
  expect(board(b).outline[2].x).toBeCloseTo(25.4, 9);
  expect(board(b).outline[2].y).toBeCloseTo(12.7, 9);
});
