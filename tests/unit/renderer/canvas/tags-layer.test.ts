import { describe, expect, it } from 'vitest';
import { siteLayer } from '../../../../renderer/canvas/layers/sites.ts';
import { tagLayer } from '../../../../renderer/canvas/layers/tags.ts';
import { project } from '../../../../renderer/canvas/view/projection.ts';
import { siteOn } from '../../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { boardWith, modelOf, part, sceneOf } from './sample.ts';

const remove = (id: string, refdes: string, order: number | null): Tag => ({
  id,
  kind: 'remove',
  order,
  note: '',
  refdes,
  goesBack: true,
  traySlot: '',
});
const watch = (x: number, y: number, side: 'top' | 'bottom'): Tag => ({
  id: 'w',
  kind: 'watchPoint',
  order: null,
  note: '',
  name: 'W1',
  side,
  x,
  y,
  refdes: null,
});

describe('tags', () => {
  const board = boardWith([part('U1', 50, 30, 8, 8), part('C1', 20, 20, 1, 1, { side: 'bottom' })]);

  it('stand on their part with the order number, the same size at any zoom', () => {
    for (const zoom of [2, 10, 80]) {
      const scene = sceneOf(modelOf(board, { tags: [remove('a', 'U1', 3)] }), { zoom });
      const marks = tagLayer.marks(scene);
      const glyph = marks.find((mark) => mark.kind === 'glyph');
      expect(glyph).toMatchObject({ tag: 'remove', ...project(scene.projection, { x: 50, y: 30 }) });
      const badge = marks.filter((mark) => mark.kind === 'rectangle');
      expect(badge.map((mark) => mark.height)).toEqual([17, 15]);
      expect(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).toEqual(['3']);
    }
  });

  it('without an order carry no badge', () => {
    const marks = tagLayer.marks(sceneOf(modelOf(board, { tags: [remove('a', 'U1', null)] })));
    expect(marks.map((mark) => mark.kind)).toEqual(['glyph']);
  });

  it('belong to the side of their part', () => {
    const tags = [remove('a', 'U1', 1), remove('b', 'C1', 2), watch(5, 5, 'bottom')];
    const kinds = (shownSide: 'top' | 'bottom') =>
      tagLayer
        .marks(sceneOf(modelOf(board, { tags }, { shownSide })))
        .flatMap((mark) => (mark.kind === 'glyph' ? [mark.tag] : []));
    expect(kinds('top')).toEqual(['remove']);
    expect(kinds('bottom')).toEqual(['watchPoint', 'remove']);
  });

  it('of a thermocouple mark the very point, mirrored with the board', () => {
    const scene = sceneOf(modelOf(board, { tags: [watch(60, 40, 'bottom')] }, { shownSide: 'bottom' }));
    const glyph = tagLayer.marks(scene).find((mark) => mark.kind === 'glyph');
    // 10 mm right of the middle on the board is 100 px left of it when seen from below.
    expect(glyph).toMatchObject({ x: -100, y: -100 });
  });
});

describe('rework areas', () => {
  it('are solid with strong corners on their side and dashed through the board', () => {
    const target = part('U1', 50, 30, 10, 10);
    const sites = [siteOn(target, 'site-1')];
    const marks = (shownSide: 'top' | 'bottom') =>
      siteLayer.marks(sceneOf(modelOf(boardWith([target]), { sites }, { shownSide })));
    expect(marks('top').filter((mark) => mark.kind === 'line' && mark.stroke.width === 3)).toHaveLength(4);
    expect(marks('bottom').every((mark) => mark.kind !== 'line' || mark.stroke.width === 1)).toBe(true);
    expect(marks('bottom').filter((mark) => mark.kind === 'line').length).toBeGreaterThan(20);
  });
});
