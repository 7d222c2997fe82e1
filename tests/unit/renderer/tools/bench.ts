import type { CanvasModel } from '../../../../renderer/state/canvas-model.ts';
import { siteOn } from '../../../../shared-types/rules/new-plan.ts';
import { boardWith, modelOf, part } from '../canvas/sample.ts';

/** A target in the middle with a site on it, three small parts, a thermocouple: enough for every gesture. */
export function benchModel(rest: Partial<CanvasModel> = {}): CanvasModel {
  const target = part('U1', 50, 30, 10, 10);
  const board = boardWith([
    target,
    part('C1', 20, 20, 2, 2),
    part('C2', 26, 20, 2, 2),
    part('C3', 20, 40, 2, 2),
    part('U2', 80, 30, 8, 8),
  ]);
  const watch = {
    id: 'tag-9',
    kind: 'watchPoint' as const,
    order: null,
    note: '',
    name: 'W1',
    side: 'top' as const,
    x: 65,
    y: 45,
    refdes: null,
  };
  return modelOf(board, { sites: [siteOn(target, 'site-1')], tags: [watch] }, rest);
}
