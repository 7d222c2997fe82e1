import { describe, expect, it } from 'vitest';
import { startingPlacing } from '../../../../renderer/editing/placing.ts';
import type { CanvasModel } from '../../../../renderer/state/canvas-model.ts';
import { offerPackages } from '../../../../shared-types/rules/package-offers.ts';
import { boardWith, modelOf, part } from '../canvas/sample.ts';
import { drive } from './driver.ts';

const offer = (text: string) => offerPackages(text)[0];

/** A board with one array part on it, the stage Board open, a 0402 capacitor at hand. */
function board(rest: Partial<CanvasModel> = {}): CanvasModel {
  const placing = { ...startingPlacing, offer: offer('c 0402'), refdes: 'C7', gridMm: 0.5, rows: false };
  const parts = [part('U1', 50, 30, 10, 10), part('C1', 20, 20, 2, 1), part('C2', 26, 20, 2, 1)];
  return modelOf(boardWith(parts), {}, { boardOpen: true, tool: 'place', placing, ...rest });
}
const partsOf = (model: CanvasModel) =>
  model.document.board.parts.map((one) => `${one.refdes} ${one.x} ${one.y} ${one.turn}`);

describe('the tool that places parts', () => {
  it('shows the part on the grid and places one after the other, counting up', () => {
    const driver = drive(board());
    driver.pointerMove({ x: 30.2, y: 9.9 });
    expect(driver.sketch()).toEqual({ kind: 'ghost', at: { x: 30, y: 10 }, guides: [] });
    driver.click({ x: 30.2, y: 9.9 }).click({ x: 32.1, y: 10.2 });
    expect(partsOf(driver.model()).slice(3)).toEqual(['C7 30 10 0', 'C8 32 10 0']);
    driver.expectSteps('place C7', 'place C8');
    expect(driver.model().document.board.parts[3]).toMatchObject({
      class: 'chip-capacitor',
      classGuessed: true,
      package: { name: 'C 0402', lengthMm: 1, widthMm: 0.5, heightMm: 0.5 },
      fitted: true,
    });
  });

  it('passes over designators that are taken, and Alt lets go of the grid', () => {
    const driver = drive(board({ placing: { ...board().placing, refdes: 'C1', turn: 90 } }));
    driver.hold({ alt: true }).click({ x: 30.234, y: 10.111 });
    expect(partsOf(driver.model()).at(-1)).toBe('C3 30.234 10.111 90');
  });

  it('snaps to the row of a neighbour and shows the line', () => {
    const like = { ...part('C2', 26, 20, 1, 0.5) };
    like.package = { ...like.package, name: 'C 0402' };
    const document = { ...board().document, board: boardWith([part('U1', 50, 30, 10, 10), like]) };
    const driver = drive(board({ placing: { ...board().placing, rows: true }, document }));
    driver.pointerMove({ x: 32.2, y: 20.26 });
    expect(driver.sketch()).toMatchObject({
      at: { x: 32, y: 20 },
      guides: [
        [
          { x: 26, y: 20 },
          { x: 32, y: 20 },
        ],
      ],
    });
  });

  it('is pulled no farther than a little by rows of other packages', () => {
    const driver = drive(board({ placing: { ...board().placing, rows: true, gridMm: 0 } }), { zoom: 12 });
    driver.pointerMove({ x: 32.2, y: 20.2 });
    expect(driver.sketch()).toMatchObject({ at: { x: 32.2, y: 20.2 } });
    driver.pointerMove({ x: 32.2, y: 20.1 });
    expect(driver.sketch()).toMatchObject({ at: { x: 32.2, y: 20 } });
  });

  it('takes digits for the number of the designator, and says which is taken', () => {
    const driver = drive(board());
    driver.pointerMove({ x: 30, y: 10 });
    for (const digit of '41') expect(driver.keyDown(digit)).toBe(true);
    driver.click({ x: 30, y: 10 }).click({ x: 32, y: 10 });
    expect(partsOf(driver.model()).slice(3)).toEqual(['C41 30 10 0', 'C42 32 10 0']);
    driver.keyDown('4');
    driver.keyDown('1');
    expect(driver.hints()).toEqual(['C41 is on the board already. C43 is the next free one.']);
    driver.keyDown('Backspace');
    driver.click({ x: 34, y: 10 });
    expect(partsOf(driver.model()).at(-1)).toBe('C4 34 10 0');
    expect(driver.keyDown('Backspace')).toBe(false);
    expect(driver.hold({ ctrl: true }).keyDown('1'), 'chords stay with the window').toBe(false);
  });

  it('turns a chip that is pulled along, and leaves it where it was pressed', () => {
    const driver = drive(board());
    driver.pointerDown({ x: 30, y: 10 }).pointerMove({ x: 30.3, y: 11 }).pointerMove({ x: 30.3, y: 13 });
    driver.pointerUp({ x: 30.3, y: 13 });
    expect(driver.model().document.board.parts.at(-1)).toMatchObject({ refdes: 'C7', x: 30, y: 10, turn: 90 });
    expect(driver.model().document.board.parts.at(-1)?.pin1).toBeUndefined();
    driver.click({ x: 35, y: 10 });
    expect(partsOf(driver.model()).at(-1)).toBe('C8 35 10 90');
  });

  it.each([
    ['top', { x: 34, y: 14 }, { x: 2.058, y: 1.638 }],
    ['bottom', { x: 34, y: 14 }, { x: 2.058, y: -1.638 }],
    ['top', { x: 27, y: 9 }, { x: -2.058, y: -1.638 }],
  ] as const)('marks pin 1 at the corner that a part on the %s is pulled to', (shownSide, to, pin1) => {
    const placing = { ...startingPlacing, offer: offer('soic-8'), refdes: 'U7', rows: false };
    const driver = drive(board({ placing, shownSide }));
    driver.drag({ x: 30, y: 10 }, to).click({ x: 60, y: 10 });
    const [first, second] = driver.model().document.board.parts.slice(3);
    expect(first).toMatchObject({ refdes: 'U7', x: 30, y: 10, turn: 0, pin1 });
    expect(second).toMatchObject({ refdes: 'U8', pin1 });
  });

  it('turns the marked end of a diode to where it is pulled, by 15 and whole degrees with Alt', () => {
    const placing = { ...startingPlacing, offer: offer('sma'), refdes: 'D1', rows: false };
    const driver = drive(board({ placing }));
    driver.drag({ x: 30, y: 10 }, { x: 30, y: 20 });
    expect(driver.model().document.board.parts.at(-1)).toMatchObject({ turn: 270, pin1: { x: -1.806, y: 0 } });
    for (const [to, turn] of [
      [{ x: 60, y: 20.5 }, 225],
      [{ x: 60, y: 14 }, 202],
    ] as const) {
      driver.hold({ alt: true }).drag({ x: 50, y: 10 }, to);
      expect(driver.model().document.board.parts.at(-1)?.turn).toBe(turn);
    }
  });

  it('turns a round electrolytic to its marked end, and a test point not at all', () => {
    const placing = { ...startingPlacing, offer: offer('elko 8x10'), refdes: 'C1', rows: false };
    const driver = drive(board({ placing }));
    expect(placing.offer.shape).toBe('round');
    driver.drag({ x: 30, y: 10 }, { x: 40, y: 10 });
    expect(driver.model().document.board.parts.at(-1)).toMatchObject({ turn: 180, pin1: { x: -3.36, y: 0 } });
    const point = drive(board({ placing: { ...placing, offer: offer('test point 1') } }));
    point.drag({ x: 30, y: 10 }, { x: 40, y: 10 });
    expect(point.model().document.board.parts.at(-1)).toMatchObject({ turn: 0 });
    expect(point.model().document.board.parts.at(-1)?.pin1).toBeUndefined();
  });

  it('goes on with a row as far as Shift points, as far apart as the last two, straight', () => {
    const driver = drive(board());
    driver.click({ x: 30, y: 10 }).click({ x: 32, y: 10 });
    driver.hold({ shift: true }).pointerMove({ x: 38.3, y: 10.4 });
    expect(driver.sketch()).toMatchObject({
      kind: 'bodies',
      parts: [{ x: 34.167 }, { x: 36.333 }, { x: 38.5, y: 10 }],
    });
    driver.click({ x: 38.3, y: 10.4 });
    expect(partsOf(driver.model()).slice(5)).toEqual(['C9 34.167 10 0', 'C10 36.333 10 0', 'C11 38.5 10 0']);
    driver.expectSteps('place C7', 'place C8', 'place 3 parts');
  });

  it('has no row where the part placed last is another', () => {
    const driver = drive(board());
    driver.hold({ shift: true }).click({ x: 40, y: 20.5 });
    expect(partsOf(driver.model()).slice(3)).toEqual(['C7 40 20.5 0']);
  });

  it('works by keys alone: arrows move it as seen, Enter places it', () => {
    const driver = drive(board({ shownSide: 'bottom' }));
    driver.keyDown('ArrowRight');
    driver.hold({ shift: true }).keyDown('ArrowUp');
    driver.hold({});
    driver.keyDown('Enter');
    expect(driver.model().document.board.parts.at(-1)).toMatchObject({ side: 'bottom', x: 49.5, y: 35 });
    driver.keyDown('Escape');
    expect(driver.model().tool).toBe('select');
    expect(driver.sketch()).toBeNull();
  });

  it('says what is missing when no package is chosen', () => {
    const driver = drive(board({ placing: startingPlacing }));
    driver.click({ x: 30, y: 10 }).expectSteps();
    expect(driver.hints()).toHaveLength(1);
  });
});

describe('parts under the select tool', () => {
  it('are carried in the stage Board, all selected ones together, as one step', () => {
    const driver = drive(board({ tool: 'select', selection: new Set(['C1', 'C2']) }));
    driver.pointerDown({ x: 20, y: 20 }).pointerMove({ x: 23, y: 21 }).pointerMove({ x: 25.1, y: 23.2 });
    expect(driver.sketch()).toMatchObject({
      kind: 'carried',
      parts: [
        { refdes: 'C1', x: 20, y: 20 },
        { refdes: 'C2', x: 26 },
      ],
      names: new Set(['C1', 'C2']),
      by: { x: 5, y: 3 },
    });
    const before = driver.sketch();
    driver.pointerMove({ x: 25.6, y: 23.2 }).pointerMove({ x: 25.1, y: 23.2 });
    // The same objects in every step: what is dragged is drawn once and then only moved.
    expect(driver.sketch()).toEqual(before);
    expect((driver.sketch() as typeof before & { names: unknown }).names).toBe((before as { names: unknown }).names);
    expect(partsOf(driver.model())[1]).toBe('C1 20 20 0');
    driver.pointerUp({ x: 25.1, y: 23.2 });
    expect(partsOf(driver.model()).slice(1)).toEqual(['C1 25 23 0', 'C2 31 23 0']);
    driver.expectSteps('move 2 parts');
  });

  it('stay where they are in every other stage', () => {
    const driver = drive(board({ tool: 'select', boardOpen: false }));
    driver.drag({ x: 20, y: 20 }, { x: 40, y: 40 }).expectSteps();
    expect(partsOf(driver.model())).toEqual(partsOf(board()));
  });

  it('go back on Escape, and follow the arrows by the grid', () => {
    const driver = drive(board({ tool: 'select' }));
    driver.pointerDown({ x: 20, y: 20 }).pointerMove({ x: 25, y: 21 });
    driver.keyDown('Escape');
    driver.pointerUp({ x: 25, y: 21 }).expectSteps();
    expect(driver.sketch()).toBeNull();
    driver.click({ x: 20, y: 20 }).keyDown('ArrowUp');
    expect(partsOf(driver.model())[1]).toBe('C1 20 20.5 0');
  });
});

describe('bodies drawn by two corners', () => {
  it('become a part with the nearest package, turned to fit', () => {
    const driver = drive(board({ tool: 'body' }), { zoom: 20 });
    driver.drag({ x: 60, y: 40 }, { x: 64, y: 45 });
    const drawn = driver.model().document.board.parts.at(-1);
    expect(drawn).toMatchObject({ refdes: 'U2', x: 62, y: 42.5, turn: 90, package: { name: 'SOIC-8', lengthMm: 4.9 } });
    expect(driver.model().placing.drawn).toEqual({ refdes: 'U2', lengthMm: 4, widthMm: 5, turn: 0 });
    driver.expectSelected('U2').expectSteps('draw U2');
  });

  it('keep the size as drawn where nothing comes near, and can be drawn by two clicks', () => {
    const driver = drive(board({ tool: 'body' }));
    driver.click({ x: 60, y: 5 }).pointerMove({ x: 80, y: 8 }).click({ x: 99, y: 10 });
    expect(driver.model().document.board.parts.at(-1)?.package).toMatchObject({
      lengthMm: 39,
      widthMm: 5,
      heightMm: null,
    });
  });
});

describe('covers', () => {
  it('are drawn, moved and sized in the stage Board', () => {
    const driver = drive(board({ tool: 'cover' }));
    driver.drag({ x: 40, y: 20 }, { x: 60, y: 40 });
    expect(driver.model().document.board.covers[0]).toMatchObject({
      id: 'SH1',
      kind: 'can',
      x: 50,
      y: 30,
      lengthMm: 20,
    });
    driver.use('select').drag({ x: 42, y: 22 }, { x: 44, y: 22 });
    expect(driver.model().document.board.covers[0]).toMatchObject({ x: 52, y: 30 });
    driver.drag({ x: 62, y: 40 }, { x: 66, y: 42 });
    expect(driver.model().document.board.covers[0]).toMatchObject({ lengthMm: 24, widthMm: 22 });
    expect(driver.history()).toEqual(['draw SH1', 'edit SH1', 'edit SH1']);
  });
});

describe('pin 1', () => {
  it('is marked at the corner nearest to the click', () => {
    const driver = drive(board({ tool: 'pin1' }));
    driver.click({ x: 46, y: 34 });
    expect(driver.model().document.board.parts[0].pin1).toEqual({ x: -4.2, y: 4.2 });
  });
});
