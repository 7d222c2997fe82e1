import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { drawnLog } from './calibration-truth.ts';

/** A drawn log as a logger writes it: semicolons, decimal comma, Fahrenheit in one column, gaps; the run begins at 30 s. */
export function logText(board: Board, plan: Plan, seed = 3): string {
  const { points } = drawnLog(board, plan, seed);
  const comma = (value: number) => value.toFixed(1).replace('.', ',');
  const rows = points[0]!.samples.map(({ atS }, row) => {
    const cells = points.map(({ samples }, point) => {
      const { celsius } = samples[row]!;
      if (row % 17 === point) return '---';
      return comma(point === 2 ? celsius * 1.8 + 32 : celsius);
    });
    return [comma(atS + 30), ...cells].join(';');
  });
  return ['Logger', 'Time (s);TC 1;TC 2;TC 3 (°F);TC 4;TC 5', '0,0;25;25;77;25;25', ...rows].join('\n');
}
