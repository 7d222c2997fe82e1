import { describe, expect, it } from 'vitest';
import type { Mark } from '../../../../renderer/canvas/drawing/marks.ts';
import { carriedMarks } from '../../../../renderer/canvas/layers/carried.ts';
import { labelLayer, labelPlace } from '../../../../renderer/canvas/layers/labels.ts';
import { sameInputs } from '../../../../renderer/canvas/layers/layer.ts';
import { selectionLayer } from '../../../../renderer/canvas/layers/overlay.ts';
import { bodyShape } from '../../../../renderer/canvas/layers/part-shape.ts';
import { partsLayer } from '../../../../renderer/canvas/layers/parts.ts';
import type { Scene } from '../../../../renderer/canvas/scene.ts';
import { project } from '../../../../renderer/canvas/view/projection.ts';
import { ownToBoard } from '../../../../shared-types/board.ts';
import { assessmentOf, boardWith, modelOf, part, sceneOf } from './sample.ts';

const drawn = (one: ReturnType<typeof part>, view = {}, rest = {}): Mark[] =>
  partsLayer.marks(sceneOf(modelOf(boardWith([one]), {}, rest), view), [one]);
const stroked = (marks: Mark[]) =>
  marks.flatMap((mark) => (mark.kind !== 'text' && mark.kind !== 'glyph' && mark.stroke ? [mark.stroke] : []));

describe('parts that are dragged', () => {
  const parts = [part('U1', 30, 30, 8, 6), part('U2', 50, 30, 8, 6), part('U3', 70, 30, 8, 6, { side: 'bottom' })];
  const model = modelOf(boardWith(parts), {}, { selection: new Set(['U1', 'U2']) });
  const still = sceneOf(model);
  const carried = {
    kind: 'carried',
    parts: [parts[1]],
    names: new Set(['U2']),
    by: { x: 5, y: 0 },
    guides: [],
  } as const;
  const scene: Scene = { ...still, sketch: { ...carried, guides: [] } };

  it('leave a faint edge behind, without designator and selection', () => {
    expect(stroked(partsLayer.marks(scene, [parts[1]]))).toEqual([expect.objectContaining({ alpha: 0.35 })]);
    expect(partsLayer.marks(scene, [parts[0]])).toEqual(partsLayer.marks(still, [parts[0]]));
    expect(labelLayer.marks(still, [parts[1]]).length).toBeGreaterThan(0);
    expect(labelLayer.marks(scene, [parts[1]])).toEqual([]);
    expect(selectionLayer.marks(scene).length).toBeLessThan(selectionLayer.marks(still).length);
  });

  it('are drawn as they look, and the sheets of the others stay as they were drawn', () => {
    const looks = carriedMarks([parts[1]], scene);
    for (const mark of partsLayer.marks(still, [parts[1]])) expect(looks).toContainEqual(mark);
    expect(sameInputs(partsLayer.inputs(scene, [parts[0]]), partsLayer.inputs(still, [parts[0]]))).toBe(true);
    expect(sameInputs(partsLayer.inputs(scene, [parts[1]]), partsLayer.inputs(still, [parts[1]]))).toBe(false);
    const farther: Scene = { ...still, sketch: { ...carried, by: { x: 9, y: 0 }, guides: [] } };
    expect(sameInputs(partsLayer.inputs(scene, [parts[1]]), partsLayer.inputs(farther, [parts[1]]))).toBe(true);
  });
});

describe('bodies', () => {
  it('lie on whole pixels when they lie upright', () => {
    const [body] = drawn(part('U1', 50.03, 30.07, 4.13, 2.29));
    expect(body.kind).toBe('rectangle');
    if (body.kind === 'rectangle')
      for (const value of [body.x, body.y, body.width, body.height]) expect(Number.isInteger(value * 2)).toBe(true);
  });

  it('of tall parts carry a heavier edge', () => {
    const low = part('U1', 50, 30, 8, 6);
    const tall = { ...low, package: { ...low.package, heightMm: 11 } };
    expect(stroked(drawn(low))[0].width).toBe(1);
    expect(stroked(drawn(tall))[0].width).toBe(2);
  });

  it('that are empty positions are dotted and not filled', () => {
    const marks = drawn(part('R1', 50, 30, 6, 3, { fitted: false }));
    expect(marks.some((mark) => 'fill' in mark && mark.fill)).toBe(false);
    expect(marks.length).toBeGreaterThan(20);
  });

  it('let the heat map through and hide nothing of the board without it', () => {
    const fillOf = (marks: Mark[]) =>
      marks.flatMap((mark) => ('fill' in mark && mark.fill ? [mark.fill.alpha] : []))[0];
    expect(fillOf(drawn(part('U1', 50, 30, 8, 6)))).toBe(1);
    expect(fillOf(drawn(part('U1', 50, 30, 8, 6), {}, { assessment: assessmentOf(() => 100) }))).toBeLessThan(0.4);
  });

  it('lose the corner at pin 1, on both sides, at every turn of the part and of the view', () => {
    for (const side of ['top', 'bottom'] as const)
      for (const turn of [0, 90, 180, 270])
        for (const viewTurnDeg of [0, 90, 270]) {
          const chip = part('U1', 50, 30, 8, 6, { side, turn, pin1: { x: -3.5, y: 2.5 } });
          const { projection } = sceneOf(modelOf(boardWith([chip]), {}, { shownSide: side, viewTurnDeg }));
          const shape = bodyShape(chip, projection, 1);
          expect(shape.kind).toBe('polygon');
          if (shape.kind !== 'polygon') continue;
          const pin = project(projection, ownToBoard(chip, { x: -4, y: 3 }));
          const near = [0, 1, 2, 3, 4].filter(
            (i) => Math.hypot(shape.points[2 * i] - pin.x, shape.points[2 * i + 1] - pin.y) < 20,
          );
          // The corner itself is gone; the two ends of the cut stand within its arms.
          expect(shape.points).toHaveLength(10);
          expect(near).toHaveLength(2);
          for (const i of near)
            expect(Math.hypot(shape.points[2 * i] - pin.x, shape.points[2 * i + 1] - pin.y)).toBeGreaterThan(3);
        }
  });
});

describe('designators', () => {
  const { projection } = sceneOf(modelOf(boardWith([])));

  it('stand in bodies that have room, upright where they can', () => {
    expect(labelPlace(part('U1', 50, 30, 8, 6), projection)?.turnDeg).toBe(0);
    expect(labelPlace(part('R123', 50, 30, 4, 1.5), projection)?.turnDeg).toBe(0);
    expect(labelPlace(part('R123', 50, 30, 4, 1.5, { turn: 90 }), projection)?.turnDeg).toBe(-90);
    expect(labelPlace(part('R123', 50, 30, 1, 0.5), projection)).toBeNull();
  });

  it('come with a closer look', () => {
    const close = sceneOf(modelOf(boardWith([])), { zoom: 60 }).projection;
    expect(labelPlace(part('R12', 50, 30, 1, 0.5), close)).not.toBeNull();
  });

  it('make room for a tag', () => {
    const chip = part('U1', 50, 30, 8, 8);
    const tag = { id: 't', kind: 'shield' as const, order: 1, note: '', refdes: 'U1', shield: 'foil' };
    const plain = labelLayer.marks(sceneOf(modelOf(boardWith([chip]))), [chip])[0];
    const tagged = labelLayer.marks(sceneOf(modelOf(boardWith([chip]), { tags: [tag] })), [chip])[0];
    if (plain.kind !== 'text' || tagged.kind !== 'text') throw new Error('no text');
    expect(tagged.y - plain.y).toBeGreaterThan(15);
  });

  it('can be switched off', () => {
    const chip = part('U1', 50, 30, 8, 8);
    const layers = { heat: true, isotherms: true, rings: true, labels: false };
    expect(labelLayer.marks(sceneOf(modelOf(boardWith([chip]), {}, { layers })), [chip])).toEqual([]);
  });
});
