import { emptyBoard, type Part } from '../../../../shared-types/board.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { emptyPlan } from '../../../../shared-types/rules/new-plan.ts';

/** A part of a made-up board. */
export function part(refdes: string, x: number, y: number, more: Partial<Part> = {}): Part {
  return {
    refdes,
    side: 'top',
    x,
    y,
    turn: 0,
    package: { name: 'test', shape: 'rectangle', lengthMm: 2, widthMm: 1, heightMm: 1 },
    class: 'chip',
    classGuessed: true,
    value: '',
    fitted: true,
    alloy: 'unknown',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...more,
  };
}

/** A board of five parts, one of them below and one position empty, and a plan with nothing decided. */
export function smallDocument(): TicketDocument {
  const array = { name: 'array', shape: 'rectangle', lengthMm: 14, widthMm: 14, heightMm: 1.2 } as const;
  return {
    board: {
      ...emptyBoard('Test board', 80, 60),
      parts: [
        part('U1', 40, 30, { package: array, class: 'bga' }),
        part('C1', 50, 30),
        part('C2', 30, 30, { side: 'bottom' }),
        part('R1', 10, 10, { fitted: false }),
        part('U2', 60, 45, { package: array, class: 'bga' }),
      ],
    },
    plan: emptyPlan('T-1'),
  };
}
