import { describe, expect, it } from 'vitest';
import { overlap, type PixelBox } from '../../../../renderer/canvas/drawing/boxes.ts';
import { measured } from '../../../../renderer/canvas/drawing/strokes.ts';
import { isothermLines } from '../../../../renderer/canvas/heat/isotherms.ts';
import { labelLine } from '../../../../renderer/canvas/heat/line-labels.ts';
import { paddedField } from '../../../../renderer/canvas/heat/padded-field.ts';
import { isothermLayer, isothermLevels } from '../../../../renderer/canvas/layers/isotherms.ts';
import { assessmentOf, boardWith, modelOf, sceneOf } from './sample.ts';

function traced(temperature: (x: number, y: number) => number, celsius: number) {
  const { grid, fields } = assessmentOf(temperature).evaluation;
  return isothermLines(paddedField(fields.top, grid), grid, celsius);
}

describe('isotherms', () => {
  it('of a cone are circles of the radius that the cone has at that temperature', () => {
    const lines = traced((x, y) => 250 - 5 * Math.hypot(x - 50, y - 30), 180);
    expect(lines).toHaveLength(1);
    for (const { x, y } of lines[0]) expect(Math.hypot(x - 50, y - 30)).toBeCloseTo(14, 1);
  });

  it('of a plane are straight lines across the whole board that do not follow its edge', () => {
    const lines = traced((x) => 100 + x, 140.3);
    expect(lines).toHaveLength(1);
    for (const { x } of lines[0]) expect(x).toBeCloseTo(40.3, 2);
    const ys = lines[0].map((point) => point.y);
    expect(Math.min(...ys)).toBeLessThan(0);
    expect(Math.max(...ys)).toBeGreaterThan(60);
  });

  it('keep both branches of a line that leaves the board and comes back', () => {
    expect(
      traced((x) => 200 - Math.abs(x - 50), 170)
        .map((line) => Math.round(line[0].x))
        .sort(),
    ).toEqual([20, 80]);
  });
});

describe('the levels', () => {
  it('mark the neighbours’ solidus heavy and leave the number of a step beside it out', () => {
    const levels = isothermLevels(
      modelOf(boardWith([]), {}, { assessment: assessmentOf((x) => 150 + x, [{ refdes: 'C1', solidusC: 217 }]) }),
    );
    expect(levels.filter((level) => level.heavy)).toEqual([{ celsius: 217, text: '217', heavy: true }]);
    expect(levels.find((level) => level.celsius === 220)?.text).toBe('');
    expect(levels.find((level) => level.celsius === 200)?.text).toBe('200');
  });

  it('are not drawn twice where a step is the solidus itself', () => {
    const levels = isothermLevels(
      modelOf(boardWith([]), {}, { assessment: assessmentOf((x) => 150 + x, [{ refdes: 'C1', solidusC: 220 }]) }),
    );
    expect(levels.filter((level) => Math.round(level.celsius) === 220)).toHaveLength(1);
  });
});

describe('numbers on a line', () => {
  const wave = Array.from({ length: 200 }, (_, i) => [i * 10, 60 * Math.sin(i / 15)]).flat();

  it('stand in gaps as long as they need and leave the rest of the line as it was', () => {
    const taken: PixelBox[] = [];
    const { labels, pieces } = labelLine(wave, '180', taken, () => true);
    const total = measured(wave).length;
    const drawn = pieces.reduce((sum, piece) => sum + measured(piece).length, 0);
    expect(labels.length).toBeGreaterThanOrEqual(Math.floor(total / 400));
    expect(total - drawn).toBeCloseTo(labels.length * (3 * 7 + 8), 0);
  });

  it('are never upside down and never over each other', () => {
    const circle = Array.from({ length: 181 }, (_, i) => [
      300 * Math.cos((i * Math.PI) / 90),
      300 * Math.sin((i * Math.PI) / 90),
    ]).flat();
    const taken: PixelBox[] = [];
    const { labels } = labelLine(circle, '200', taken, () => true);
    labelLine(circle, '217', taken, () => true);
    for (const label of labels) expect(Math.abs(label.turnDeg)).toBeLessThanOrEqual(90);
    for (const [i, a] of taken.entries()) for (const b of taken.slice(i + 1)) expect(overlap(a, b)).toBe(false);
  });

  it('stay off places that are not allowed', () => {
    expect(labelLine(wave, '180', [], () => false).labels).toEqual([]);
    expect(labelLine([0, 0, 30, 0], '180', [], () => true).labels).toEqual([]);
  });
});

describe('the isotherm sheet', () => {
  it('puts no number into a slot or over the edge, where it would be cut', () => {
    const slot = [
      { x: 0, y: 29.5 },
      { x: 100, y: 29.5 },
      { x: 100, y: 30.5 },
      { x: 0, y: 30.5 },
    ];
    const board = { ...boardWith([]), cutouts: [slot] };
    // One straight isotherm runs the length of the slot, 10 px high on screen.
    const assessment = assessmentOf((_, y) => 150 + y);
    const texts = (cutouts: typeof board.cutouts) =>
      isothermLayer
        .marks(sceneOf(modelOf({ ...board, cutouts }, {}, { assessment })))
        .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts([])).toContain('180');
    expect(texts([slot])).not.toContain('180');
  });

  it('is drawn under its own switch', () => {
    const model = modelOf(boardWith([]), {}, { assessment: assessmentOf((x) => 100 + x) });
    expect(isothermLayer.marks(sceneOf(model)).length).toBeGreaterThan(5);
    const off = { ...model, layers: { ...model.layers, isotherms: false } };
    expect(isothermLayer.marks(sceneOf(off))).toEqual([]);
  });
});
